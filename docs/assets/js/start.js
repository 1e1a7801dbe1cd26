// Inlined at the top of the head: begins to load the light engine at once, all three parts together,
// before any style is read. The addresses are filled in by the build.

import { compiled, science } from "./fetched.js";

const parts = __ENGINE__;
const at = (path) => new URL(path, document.baseURI).href;

let loading = null; // kept for a second worker, should the first one stop
const load = () => {
  loading ??= Promise.all([compiled(at(parts.wasm)), science(at(parts.science))]).catch((failure) => {
    loading = null;
    throw failure;
  });
  return loading;
};

const start = (asked) => {
  if (typeof WebAssembly !== "object") throw new Error("no WebAssembly");
  const first = parts.first && JSON.parse(parts.first).function;
  const more = parts.more && at(parts.more);
  // Where all is kept on the device the worker can find it alone. Its name tells it how and what to
  // answer: a message would only be passed on between other work of the page, which is being laid out.
  const kept = navigator.serviceWorker?.controller;
  const alone = { first, more, wasm: at(parts.wasm), texts: at(parts.science), asked };
  const worker = new Worker(at(parts.worker), { name: kept ? JSON.stringify(alone) : "" });
  worker.onerror = (event) => {
    event.preventDefault(); // or the page would take it for a fault of its own scripts
    // The next question starts another.
    if (shared.worker === worker) shared.worker = shared.first = null;
  };
  if (kept) return worker;
  const give = (what) => worker.postMessage({ first, more, ...what });
  load().then(
    ([module, texts]) => give({ module, texts }),
    (failure) => give({ failure: String(failure) }),
  );
  if (asked) worker.postMessage(asked);
  return worker;
};

// `worker`: the running one; `begun`: not so before a touch where the reader saves data; `first`: what
// it was asked before our scripts came, and `heard`, what it said to that.
const shared = { start, worker: null, begun: false, first: null, heard: [] };
document[Symbol.for("saltline")] = shared;
if (!navigator.connection?.saveData && !matchMedia("(prefers-reduced-data: reduce)").matches) {
  shared.begun = true;
  try {
    // The page opens with the first calculator's example: its answer need not wait for the page.
    if (parts.first && !location.hash) shared.first = { id: -1, question: parts.first };
    shared.worker = start(shared.first);
    shared.worker.onmessage = ({ data }) => shared.heard.push(data);
  } catch {
    // Told to the first question, which tries again.
  }
}

// Nothing is drawn before the first calculator is whole: half a title or half a menu would jump, and
// a page that is kept here, and comes all at once, would be drawn twice. A page that is slow to come
// is drawn as far as it has come.
if (parts.last) {
  const wait = document.createElement("link");
  document.head.append(Object.assign(wait, { rel: "expect", href: parts.last, blocking: "render" }));
  setTimeout(() => wait.remove(), 1500); // milliseconds
}
