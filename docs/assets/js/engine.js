// The one file that knows about the engine: a worker that runs the light engine, asked one question
// at a time. `start` (inlined in the page's head as start.js) may have begun to load it already.

const KEY = Symbol.for("saltline");
const SLOW = 2000; // milliseconds after which the reader may stop an answer
const LIMIT = 20_000; // milliseconds for one answer
const GRACE = 1000; // milliseconds for an answer that others wait behind, or nobody waits for
const ARRIVAL = 120_000; // milliseconds for the engine to load

/** Why there is no answer, as a sentence for the reader. */
const BLOCKED = "This browser cannot run the calculator.";
const LOST = "The calculator did not arrive. Press “Work it out” when there is a network.";
const LONG = "These numbers took too long, so the calculator was stopped.";
const BROKEN = "The calculator stopped on these numbers.";

const shared = document[KEY];
const waiting = [];
let running = null;
let next = 1;
let announced = false;

function post() {
  running = waiting.shift() ?? null;
  if (!running) return;
  try {
    if (!shared?.start) throw new Error("no engine on this page");
    shared.worker ??= shared.start();
  } catch (failure) {
    return fail(BLOCKED, failure);
  }
  const { worker, first, heard } = shared;
  worker.onmessage = ({ data }) => hear(data);
  worker.onerror = (event) => {
    event.preventDefault();
    again(event.message || "the worker stopped");
  };
  running.clock = setTimeout(fail, ARRIVAL, LOST);
  shared.first = null;
  const { id, question } = running;
  if (question !== first?.question) return worker.postMessage({ id, question });
  running.id = first.id; // start.js has asked it
  heard.forEach(hear);
}

function hear({ id, begun, reply, failure, lost }) {
  if (id !== running?.id) return;
  if (begun) {
    clearTimeout(running.clock);
    running.begun = true;
    running.clock = setTimeout(fail, running.hurried ? GRACE : LIMIT, LONG);
    if (!running.hurried) running.slow = setTimeout(running.onSlow, SLOW);
  } else if (lost) fail(LOST, lost);
  else if (failure) again(failure);
  else {
    const { resolve } = settle();
    if (!announced) {
      announced = true;
      document.dispatchEvent(new CustomEvent("salt:ready", { detail: { engine: "light" } }));
    }
    resolve(JSON.parse(reply));
    setTimeout(() => running ?? post()); // the answer is shown before more is asked
  }
}

/** The running question is over. */
function settle() {
  const done = running;
  running = null;
  clearTimeout(done.clock);
  clearTimeout(done.slow);
  return done;
}

function stop() {
  shared?.worker?.terminate();
  if (shared) shared.worker = null;
}

/** Once more in a fresh engine, which has all its memory; then give up. */
function again(failure) {
  stop();
  if (!running) return;
  if (running.again) return fail(running.begun ? BROKEN : LOST, failure);
  const asked = settle();
  asked.again = true;
  waiting.unshift(asked);
  post();
}

function fail(sentence, cause) {
  stop();
  settle().reject(Object.assign(new Error(sentence), { cause }));
  post();
}

/** Nobody waits for this answer any more. */
function drop(asked) {
  asked.reject(new DOMException("dropped", "AbortError"));
  if (waiting.includes(asked)) waiting.splice(waiting.indexOf(asked), 1);
  if (asked === running) hurry();
}

/** What runs may end by itself for a moment, no longer. */
function hurry() {
  const { begun, hurried } = running;
  running.hurried = true;
  if (!begun || hurried) return;
  clearTimeout(running.slow);
  clearTimeout(running.clock);
  running.clock = setTimeout(fail, GRACE, LONG);
}

/**
 * Ask the engine; `question` is the JSON text of calculators/saltline/answering.py. An aborted
 * `signal` takes the question back; `onSlow` is called where the answer takes long. A `spare` answer
 * lets all others go first.
 */
export function ask(question, { signal, onSlow = () => {}, spare = false } = {}) {
  return new Promise((resolve, reject) => {
    const asked = { id: next++, question, onSlow, spare, resolve, reject };
    signal?.addEventListener("abort", () => drop(asked), { once: true });
    const at = spare ? -1 : waiting.findIndex((other) => other.spare);
    waiting.splice(at < 0 ? waiting.length : at, 0, asked);
    if (!running) post();
    else if (!spare && running.spare) hurry();
  });
}

/** Whether the engine was told to load: not so where the reader saves data, before a touch. */
export const begun = () => Boolean(shared?.begun || shared?.worker);
