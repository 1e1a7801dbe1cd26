// Keeps the rules of a style sheet that some page uses: {css, pages, never, first} as JSON on
// standard input, the kept rules on standard output. `never` are patterns of selectors that stay
// out anyway; `first` leaves out what a page can do without until it answers: the rules of paper, of
// a pointer above something, and of soft changes.
import { readFileSync } from "node:fs";
import postcss from "postcss";
import { PurgeCSS } from "purgecss";

// Words count where they can be classes, names or attributes: inside a tag, not in the text.
const words = (html) => (html.match(/<[a-z][^>]*>/g) ?? []).join(" ").match(/[\w-]+/g) ?? [];

const { css, pages, never, first } = JSON.parse(readFileSync(0, "utf8"));
const sheet = postcss.parse(css);
const ofPaper = ({ name, params }) => name === "page" || (name === "media" && params === "print");
const out = never.map((pattern) => new RegExp(pattern));
if (first) {
  sheet.walkAtRules((rule) => {
    if (ofPaper(rule)) rule.remove();
  });
  sheet.walkDecls(/^transition/, (declaration) => declaration.remove());
  out.push(/:hover/);
}
sheet.walkRules((rule) => {
  const stay = rule.selectors.filter((selector) => !out.some((pattern) => pattern.test(selector)));
  if (stay.length) rule.selectors = stay;
  else rule.remove();
});
const [{ css: kept }] = await new PurgeCSS().purge({
  content: pages.map((raw) => ({ raw, extension: "html" })),
  defaultExtractor: words,
  css: [{ raw: sheet.toString() }],
  fontFace: true,
  keyframes: true,
  variables: true,
  // Classes that the theme's one inline script sets before the first paint.
  safelist: { standard: ["js", "no-js"], greedy: [/data-md-color-scheme/] },
});
process.stdout.write(kept);
