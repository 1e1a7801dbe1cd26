// Times answers in the light engine: standard input holds {files, questions} as JSON, standard
// output the milliseconds of this process for each question, the quicker of two runs.
import { readFileSync } from "node:fs";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";

const { files, questions } = JSON.parse(readFileSync(0, "utf8"));
const engine = await loadMicroPython({ heapsize: 4 * 1024 * 1024 });
for (const [path, text] of Object.entries(files)) {
  engine.FS.mkdirTree("/lib/" + path.split("/").slice(0, -1).join("/"));
  engine.FS.writeFile("/lib/" + path, text);
}
engine.runPython("import sys\nsys.path.append('/lib')");
const { answer } = engine.pyimport("saltline.answering");
const timed = (question) => {
  const before = process.cpuUsage();
  answer(question);
  return process.cpuUsage(before).user / 1000;
};
const times = questions.map((question) => Math.min(timed(question), timed(question)));
process.stdout.write(JSON.stringify(times));
