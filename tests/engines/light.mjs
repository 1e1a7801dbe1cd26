// Answers questions in the light engine: standard input holds {wasm, files, questions} as JSON,
// standard output the list of replies.
import { readFileSync } from "node:fs";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";

const { wasm, files, questions } = JSON.parse(readFileSync(0, "utf8"));
const engine = await loadMicroPython({ heapsize: 4 * 1024 * 1024, url: wasm });
const made = new Set();
for (const [path, text] of Object.entries(files)) {
  const parts = path.split("/").slice(0, -1);
  parts.forEach((_, depth) => {
    const folder = "/lib/" + parts.slice(0, depth + 1).join("/");
    if (!made.has(folder)) engine.FS.mkdirTree(folder);
    made.add(folder);
  });
  engine.FS.writeFile("/lib/" + path, text);
}
engine.runPython("import sys\nsys.path.append('/lib')");
const { answer } = engine.pyimport("saltline.answering");
const replies = questions.map((question) => {
  try {
    return JSON.parse(answer(question));
  } catch (failure) {
    return { crashed: String(failure) };
  }
});
process.stdout.write(JSON.stringify(replies));
