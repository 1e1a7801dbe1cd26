// Inlined at the top of the head: begins to load the light engine at once, all three parts together,
// before any style is read. The addresses are filled in by the build.

const parts = __ENGINE__;
const at = (path) => new URL(path, document.baseURI).href;

const fetched = async (path) => {
  const reply = await fetch(at(path));
  if (!reply.ok) throw new Error(`${reply.status} ${path}`);
  return reply;
};

const compiled = async () => {
  const reply = await fetched(parts.wasm);
  const spare = reply.clone(); // for hosts and browsers that cannot stream it
  try {
    return await WebAssembly.compileStreaming(reply);
  } catch {
    return WebAssembly.compile(await spare.arrayBuffer());
  }
};

const science = async () => (await fetched(parts.science)).text();

let loading = null; // kept for a second worker, should the first one stop
const load = () => {
  loading ??= Promise.all([compiled(), science()]).catch((failure) => {
    loading = null;
    throw failure;
  });
  return loading;
};

const start = () => {
  if (typeof WebAssembly !== "object") throw new Error("no WebAssembly");
  const worker = new Worker(at(parts.worker));
  worker.onerror = (event) => {
    event.preventDefault(); // or the page would take it for a fault of its own scripts
    if (shared.worker === worker) shared.worker = null; // the next question starts another
  };
  load().then(
    ([module, text]) => worker.postMessage({ module, science: text }),
    (failure) => worker.postMessage({ failure: String(failure) }),
  );
  return worker;
};

// `worker`: the running one; `begun`: not so before a touch where the reader saves data.
const shared = { start, worker: null, begun: false };
document[Symbol.for("saltline")] = shared;
if (!navigator.connection?.saveData && !matchMedia("(prefers-reduced-data: reduce)").matches) {
  shared.begun = true;
  try {
    shared.worker = start();
  } catch {
    // Told to the first question, which tries again.
  }
}
