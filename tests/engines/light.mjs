// Answers questions in the light engine: standard input holds {wasm, parts, questions} as JSON,
// standard output the list of replies. Later parts of the science arrive after the first question.
import { readFileSync } from "node:fs";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";
import { add, begin } from "../../docs/assets/js/science.js";

const { wasm, parts, questions } = JSON.parse(readFileSync(0, "utf8"));
const engine = await loadMicroPython({ heapsize: 4 * 1024 * 1024, url: wasm });
const [first, ...later] = parts;
const answer = begin(engine, first);
const replies = questions.map((question, at) => {
  if (at === 1) for (const part of later) add(engine, part);
  try {
    return JSON.parse(answer(question));
  } catch (failure) {
    return { crashed: String(failure) };
  }
});
process.stdout.write(JSON.stringify(replies));
