// The one file that knows about the engine: a worker that runs the light engine.
// `start` (inlined in the page's head as start.js) may have begun to load it already.

const KEY = Symbol.for("saltline");
const PATIENCE = 20_000; // milliseconds before an answer counts as lost

let waiting = new Map();
let next = 1;
let failures = 0;
let announced = false;

function worker() {
  const shared = document[KEY];
  if (!shared?.start) throw new Error("no engine on this page");
  shared.worker ??= shared.start();
  if (!shared.worker.onmessage) {
    shared.worker.onmessage = ({ data }) => settle(data);
    shared.worker.onerror = () => restart();
  }
  return shared.worker;
}

function settle({ id, reply, failure }) {
  const asked = waiting.get(id);
  if (!asked) return;
  waiting.delete(id);
  clearTimeout(asked.clock);
  if (failure) return asked.reject(new Error(failure));
  if (!announced) {
    announced = true;
    document.dispatchEvent(new CustomEvent("salt:ready", { detail: { engine: "light" } }));
  }
  failures = 0;
  asked.resolve(JSON.parse(reply));
}

/** Ends the worker; the questions it held are lost, the next one starts a new worker. */
function restart() {
  const shared = document[KEY];
  shared.worker?.terminate();
  shared.worker = null;
  failures += 1;
  const lost = waiting;
  waiting = new Map();
  for (const { reject, clock } of lost.values()) {
    clearTimeout(clock);
    reject(new Error("the engine stopped"));
  }
}

/** Ask the engine; `question` is the JSON text of calculators/saltline/answering.py. */
export function ask(question) {
  return new Promise((resolve, reject) => {
    if (failures > 2) return reject(new Error("the engine keeps stopping"));
    const id = next++;
    try {
      worker().postMessage({ id, question });
    } catch (failure) {
      return reject(failure);
    }
    waiting.set(id, { resolve, reject, clock: setTimeout(restart, PATIENCE) });
  });
}

/** Whether the engine has begun to load (it has not where the reader saves data). */
export const begun = () => Boolean(document[KEY]?.worker);
