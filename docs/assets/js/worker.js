// The light engine in a worker: takes the compiled module and the science from the page, then
// answers questions one by one. It knows nothing of calculators.

import { loadMicroPython } from "micropython";

const parts = {};
let give;
const ready = new Promise((resolve, reject) => {
  give = (part) => {
    if (part.failure) reject(new Error(part.failure));
    Object.assign(parts, part);
    if (parts.module && parts.science) resolve(boot(parts));
  };
});
ready.catch(() => {}); // told to whoever asks

async function boot({ module, science }) {
  const engine = await loadMicroPython({
    heapsize: 4 * 1024 * 1024,
    instantiateWasm: (imports, done) => {
      WebAssembly.instantiate(module, imports).then((instance) => done(instance, module));
      return {};
    },
  });
  for (const [path, text] of Object.entries(JSON.parse(science))) {
    engine.FS.mkdirTree("/lib/" + path.slice(0, path.lastIndexOf("/")));
    engine.FS.writeFile("/lib/" + path, text);
  }
  engine.runPython("import sys\nsys.path.append('/lib')");
  return engine.pyimport("saltline.answering").answer;
}

self.onmessage = async ({ data }) => {
  const { id, question } = data;
  if (!id) return give(data);
  let answer;
  try {
    answer = await ready;
  } catch (failure) {
    return self.postMessage({ id, lost: String(failure) });
  }
  self.postMessage({ id, begun: true });
  try {
    self.postMessage({ id, reply: answer(question) });
  } catch (failure) {
    self.postMessage({ id, failure: String(failure?.message ?? failure) });
  }
};
