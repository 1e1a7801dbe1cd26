// An answer on paper: the question, what was put in, the answer, its picture, sources, link and code.

import { code } from "./code.js";
import { make } from "./make.js";
import { day } from "./record.js";

const PARTS = new Set("svg defs pattern g path circle text".split(" "));
const SAID = new Set(
  "id class x y r cx cy d fill width height viewBox role aria-label text-anchor patternUnits".split(" "),
);
let drawings = 0;

/** A kept picture as an element: nothing but lines and words, under ids of its own. */
export function drawing(text) {
  const found = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  if (found.localName !== "svg") return null;
  const own = `-${++drawings}`;
  for (const each of [found, ...found.querySelectorAll("*")]) {
    if (!PARTS.has(each.localName)) each.remove();
    for (const { name, value } of [...each.attributes]) {
      if (!SAID.has(name)) each.removeAttribute(name);
      else if (name === "id") each.id = value + own;
      else if (name === "fill") each.setAttribute(name, value.replace(/^url\(#([\w-]+)\)$/, `url(#$1${own})`));
    }
  }
  return document.importNode(found, true);
}

const paragraph = (text, name) => (text ? make("p", { class: name }, text) : "");
const list = (kind, name, texts) =>
  texts.length ? make(kind, { class: name }, ...texts.map((text) => make("li", {}, text))) : "";

/** The code of a link, or nothing where the link is too long for one. */
function square(link) {
  try {
    return code(link);
  } catch {
    return "";
  }
}

/** The answer as an article. */
export function paper(kept, heading = "h2") {
  const drawn = kept.picture && drawing(kept.picture);
  const rows = kept.inputs.map(([label, value]) =>
    make("div", {}, make("dt", {}, label), make("dd", {}, value)),
  );
  return make(
    "article",
    { class: "salt-paper" },
    make(heading, {}, kept.question),
    paragraph(kept.example, "salt-hint"),
    rows.length ? make("dl", {}, ...rows) : "",
    paragraph(kept.verdict, "salt-say"),
    paragraph(kept.number, "salt-number"),
    paragraph(kept.reason, "salt-why"),
    list("ol", "salt-steps", kept.steps),
    list("ul", "salt-warnings", kept.warnings),
    make(
      "div",
      { class: "salt-beside" },
      drawn ? make("div", { class: "salt-picture" }, drawn) : "",
      kept.unseen.length ? make("p", { class: "salt-hint" }, `Cannot see: ${kept.unseen.join(" ")}`) : "",
    ),
    make(
      "footer",
      {},
      square(kept.link),
      make("p", {}, `Saltline, ${day(kept.date)}. ${kept.method} `, make("a", { href: kept.link }, kept.link)),
    ),
  );
}

/** Print this element, and nothing else of the page. */
export function printAlone(element) {
  const { classList } = document.body;
  document.body.append(element);
  classList.add("salt-alone");
  addEventListener(
    "afterprint",
    () => {
      classList.remove("salt-alone");
      element.remove();
    },
    { once: true },
  );
  print();
}
