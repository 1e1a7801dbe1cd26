// Inlined at the top of the head: begins to load the light engine at once, all three parts together,
// before any style is read. The addresses are filled in by the build.

const parts = __ENGINE__;
const at = (path) => new URL(path, document.baseURI).href;
const text = async (path) => {
  const got = await fetch(at(path));
  if (!got.ok) throw new Error(`${got.status} ${path}`);
  return got.text();
};

const start = () => {
  const worker = new Worker(at(parts.worker), { type: "module" });
  const fail = (failure) => worker.postMessage({ failure: String(failure) });
  WebAssembly.compileStreaming(fetch(at(parts.wasm)))
    .catch(async () => WebAssembly.compile(await (await fetch(at(parts.wasm))).arrayBuffer()))
    .then((module) => worker.postMessage({ module }), fail);
  text(parts.science).then((science) => worker.postMessage({ science }), fail);
  return worker;
};

const shared = { start, worker: null };
document[Symbol.for("saltline")] = shared;
if (!navigator.connection?.saveData && !matchMedia("(prefers-reduced-data: reduce)").matches) {
  try {
    shared.worker = start();
  } catch {
    // No worker or no WebAssembly here: the page keeps the answers it was built with.
  }
}
