// The light engine in a worker: takes the compiled module and the science from the page, or where to
// find them from its own name, then answers questions one by one. It knows nothing of calculators.

import { loadMicroPython } from "micropython";
import { compiled, science } from "./fetched.js";
import { add, begin } from "./science.js";

const HEAP = 4 * 1024 * 1024; // bytes

let give;
const given = new Promise((resolve) => {
  give = resolve;
});
const ready = given.then(boot);
ready.catch(() => {}); // told to whoever asks

async function boot({ failure, module, wasm, texts, more, first }) {
  if (failure) throw new Error(failure);
  const [code, files] = await Promise.all([
    module ?? compiled(wasm),
    typeof texts === "string" ? science(texts) : texts,
  ]);
  const engine = await loadMicroPython({
    heapsize: HEAP,
    instantiateWasm: (imports, done) => {
      WebAssembly.instantiate(code, imports).then((instance) => done(instance, code));
      return {};
    },
  });
  const answer = begin(engine, files);
  // What only later questions need is fetched for them.
  let rest = more ? null : Promise.resolve();
  const whole = () => {
    rest ??= science(more).then(
      (files) => add(engine, files),
      (failure) => {
        rest = null;
        throw failure;
      },
    );
    return rest;
  };
  return { answer, whole, first };
}

async function hear({ data }) {
  const { id, question } = data;
  if (!id) return give(data);
  let engine;
  try {
    engine = await ready;
    if (JSON.parse(question).function !== engine.first) await engine.whole();
  } catch (failure) {
    return self.postMessage({ id, lost: String(failure) });
  }
  self.postMessage({ id, begun: true });
  try {
    self.postMessage({ id, reply: engine.answer(question) });
  } catch (failure) {
    self.postMessage({ id, failure: String(failure?.message ?? failure) });
  }
}

self.onmessage = hear;
if (self.name) {
  const { asked, ...alone } = JSON.parse(self.name);
  give(alone);
  if (asked) hear({ data: asked });
}
