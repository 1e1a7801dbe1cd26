// Answers questions in the full engine (Pyodide): standard input holds {wheel, questions} as JSON,
// standard output the list of replies.
import { readFileSync } from "node:fs";
import { loadPyodide } from "pyodide";

const { wheel, questions } = JSON.parse(readFileSync(0, "utf8"));
const engine = await loadPyodide();
engine.unpackArchive(new Uint8Array(readFileSync(wheel)), "wheel");
const answer = engine.pyimport("saltline.answering").answer;
const replies = questions.map((question) => {
  try {
    return JSON.parse(answer(question));
  } catch (failure) {
    return { crashed: String(failure) };
  }
});
process.stdout.write(JSON.stringify(replies));
