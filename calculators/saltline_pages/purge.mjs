// Keeps the rules of a style sheet that some page uses: {css, pages} as JSON on standard input, the
// kept rules on standard output. What the theme's own script adds later is styled by the whole
// sheet, which follows after the first answer.
import { readFileSync } from "node:fs";
import { PurgeCSS } from "purgecss";

const { css, pages } = JSON.parse(readFileSync(0, "utf8"));
const [{ css: kept }] = await new PurgeCSS().purge({
  content: pages.map((raw) => ({ raw, extension: "html" })),
  css: [{ raw: css }],
  fontFace: true,
  keyframes: true,
  variables: true,
  // Classes that the theme's one inline script sets before the first paint.
  safelist: { standard: ["js", "no-js"], greedy: [/data-md-color-scheme/] },
});
process.stdout.write(kept);
