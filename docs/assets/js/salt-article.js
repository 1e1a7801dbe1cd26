// Texts for a newsletter: one tap copies a text with its credit line and sources, another saves the
// drawing or the code as a picture. The address is the site's own where the build knew it.

import { define } from "./parsed.js";
import "./print.js";
import { handedTo } from "./address.js";
import { code } from "./code.js";
import { make } from "./make.js";

const WIDE = 945; // dots of a saved picture: 8 cm at 300 to the inch

/** What a newsletter calls a text: the month's own line, or the heading above the article. */
function title(block, article) {
  const line = block.closest(".salt-month")?.querySelector("summary") ?? article.previousElementSibling;
  return line.firstChild.textContent.trim();
}

/** A text as plain words: its marks for sources are taken out and listed at its end. */
function plain(block, heading, credit) {
  const copy = block.cloneNode(true);
  const cited = new Set();
  for (const mark of copy.querySelectorAll(".salt-cite")) {
    const level = mark.querySelector(".tag");
    level.remove();
    cited.add(`${mark.textContent.trim()} (${level.textContent})`);
    mark.remove();
  }
  const tidy = (text) => text.replace(/\s+/g, " ").replace(/ ([.,;:])/g, "$1").trim();
  const paragraphs = [...copy.querySelectorAll("p")].map((each) => tidy(each.textContent));
  const sources = cited.size ? [`Sources, in brackets how each was read: ${[...cited].join("; ")}.`] : [];
  return [heading, ...paragraphs, credit, ...sources].join("\n\n");
}

/** Save a drawing as a picture that every word processor takes. */
async function save(svg, name) {
  const { width, height } = svg.viewBox.baseVal;
  const high = Math.round((WIDE * height) / width);
  const copy = svg.cloneNode(true);
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("width", WIDE);
  copy.setAttribute("height", high);
  const image = make("img", { src: `data:image/svg+xml,${encodeURIComponent(copy.outerHTML)}` });
  await image.decode();
  const canvas = make("canvas", { width: WIDE, height: high });
  canvas.getContext("2d").drawImage(image, 0, 0);
  make("a", { href: canvas.toDataURL(), download: `saltline-${name}.png` }).click();
}

class SaltArticle extends HTMLElement {
  connectedCallback() {
    if (this.querySelector("button")) return;
    const short = this.querySelector(".salt-credit a");
    const name = short.getAttribute("href").replace(/[./]*(.*)\/$/, "$1").replaceAll("/", "-");
    const address = handedTo(short.getAttribute("href"));
    short.textContent = address;
    this.status = make("p", { class: "salt-note", role: "status" });
    for (const block of this.querySelectorAll(".salt-words")) block.append(this.copier(block));
    const square = make("figure", { class: "salt-drawing" }, code(address));
    const drawing = this.querySelector(".salt-drawing svg");
    const pictures = [
      this.button("Save the code", () => save(square.firstChild, `${name}-code`)),
      drawing ? this.button("Save the drawing", () => save(drawing, name)) : "",
    ];
    this.append(make("div", { class: "salt-keep" }, square, make("div", {}, ...pictures)));
  }

  /** A button that does something and says what came of it. */
  button(label, act) {
    const made = make("button", { type: "button" }, label);
    made.addEventListener("click", async () => {
      made.after(this.status);
      this.status.textContent = (await act()) ?? "Saved: set it 8 cm wide.";
    });
    return made;
  }

  copier(block) {
    return this.button("Copy the text", () => {
      const credit = this.querySelector(".salt-credit").textContent.trim();
      return navigator.clipboard.writeText(plain(block, title(block, this), credit)).then(
        () => "The text is copied, with credit line and sources.",
        () => "This browser does not let a page copy: select the text by hand.",
      );
    });
  }
}

define("salt-article", SaltArticle);
