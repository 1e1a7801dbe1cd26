// Shortens scripts: a list of texts as JSON on standard input, the same without what nothing in them
// uses, inside functions too, on standard output.
import { readFileSync } from "node:fs";
import { minify } from "terser";

const short = [];
for (const text of JSON.parse(readFileSync(0, "utf8"))) {
  const { code } = await minify(text, { compress: { passes: 2 }, format: { comments: false } });
  short.push(code);
}
process.stdout.write(JSON.stringify(short));
