// The reader's sheet: answers kept on this device, in the order they are to be printed in.

import { make } from "./make.js";
import { paper, printAlone } from "./paper.js";
import { define } from "./parsed.js";
import { day } from "./record.js";
import { answers, keep, keepAnswers, recall } from "./store.js";

class SaltHandout extends HTMLElement {
  connectedCallback() {
    this.form = this.querySelector("form");
    this.place = this.querySelector(".salt-collected");
    const { club } = this.form.elements;
    club.value = recall("handout")?.club ?? recall("club")?.settings?.name ?? "";
    this.form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.print();
    });
    club.addEventListener("input", () => keep("handout", { club: club.value }));
    this.querySelector("[data-do=clear]").addEventListener("click", () => this.clear());
    addEventListener("storage", () => this.draw()); // an answer was added in another tab
    this.draw();
  }

  say(text, ...more) {
    this.querySelector(".salt-note").replaceChildren(text, ...more);
  }

  draw() {
    const list = answers();
    this.place.replaceChildren(...list.map((kept, at) => this.entry(kept, at, list.length)));
    for (const button of this.form.querySelectorAll("button")) button.disabled = !list.length;
    if (!list.length) this.say("Nothing is on the sheet yet: press “Share or keep” under an answer.");
  }

  entry(kept, at, count) {
    const action = (label, to, disabled) => {
      const button = make("button", { type: "button", disabled }, label);
      button.setAttribute("aria-label", `${label}: ${kept.question}`);
      button.addEventListener("click", () => this.change(at, to, label));
      return button;
    };
    const ways = make("div", { class: "salt-kept" });
    ways.append(
      action("Up", at - 1, at === 0),
      action("Down", at + 1, at === count - 1),
      action("Take off", null, false),
    );
    return make("section", { "aria-label": kept.question }, ways, paper(kept));
  }

  /** Move an answer to another place, or take it off; the focus goes along. */
  change(at, to, label) {
    const list = answers();
    const [moved] = list.splice(at, 1);
    if (to !== null) list.splice(to, 0, moved);
    keepAnswers(list);
    this.draw();
    if (!list.length) return this.querySelector("#sheet-club").focus();
    const place = this.place.children[Math.min(to ?? at, list.length - 1)];
    const buttons = [...place.querySelectorAll(".salt-kept button:not(:disabled)")];
    (buttons.find(({ textContent }) => textContent === label) ?? buttons[0]).focus();
    this.say(to === null ? `Taken off: ${moved.question}` : `Place ${to + 1} of ${list.length}: ${moved.question}`);
  }

  clear() {
    const before = answers();
    keepAnswers([]);
    this.draw();
    const back = make("button", { type: "button" }, "Put them back");
    back.addEventListener("click", () => {
      keepAnswers(before);
      this.say("");
      this.draw();
    });
    this.say("The sheet is empty. ", back);
    back.focus();
  }

  print() {
    const { club, size } = this.form.elements;
    const head = make("header", {}, make("b", {}, club.value.trim()), ` ${day(new Date())}`);
    printAlone(
      make("div", { class: `salt-collected salt-${size.value}` }, head, ...answers().map((kept) => paper(kept))),
    );
  }
}

define("salt-handout", SaltHandout);
