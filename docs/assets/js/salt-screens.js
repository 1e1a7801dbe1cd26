// A form's questions one at a time. The fields are the calculator's own, and stay filled in: this
// shows the section in turn, and writes the ready values that a reader chooses.

import { make } from "./make.js";
import { define } from "./parsed.js";

class SaltScreens extends HTMLElement {
  connectedCallback() {
    if (this.calculator) return;
    this.calculator = this.closest("salt-calc");
    this.sections = [...this.querySelectorAll(":scope > section")];
    this.back = this.querySelector("[data-do=back]");
    this.next = this.querySelector("[data-do=next]");
    this.back.addEventListener("click", () => this.show(this.at - 1));
    // The first button that submits: Enter in a field goes on too.
    this.next.addEventListener("click", (event) => this.forward(event));
    this.addEventListener("input", ({ target }) => {
      if (target.dataset.values) this.fill(target);
      else if (!target.matches("select")) {
        target.closest("section").querySelector("[role=status]")?.replaceChildren();
      }
    });
    // The link of an error leads to its field, which must be in sight by then.
    this.calculator.addEventListener("click", ({ target }) => this.reveal(target), true);
    const changed = new MutationObserver(() => this.match());
    changed.observe(this.calculator, { attributeFilter: ["data-state"] });
  }

  get at() {
    return this.sections.findIndex((section) => section.matches(".salt-now"));
  }

  get last() {
    return this.sections.length - 1;
  }

  show(at) {
    this.sections.forEach((section, place) => section.classList.toggle("salt-now", place === at));
    this.back.hidden = at === 0;
    this.next.hidden = at === this.last;
    this.toggleAttribute("data-last", at === this.last);
    const heading = this.sections[at].querySelector("h3");
    heading.focus({ preventScroll: true });
    heading.scrollIntoView({ block: "nearest" });
  }

  /** On, unless a field in sight cannot be read; on the last question the form answers. */
  forward(event) {
    const { at, calculator } = this;
    if (at === this.last) return;
    event.preventDefault();
    const here = ({ item }) => this.sections[at].querySelector(`[name="${item.name}"]`);
    const problems = calculator.read().problems.filter(here);
    calculator.complain(problems);
    if (!problems.length) this.show(at + 1);
  }

  reveal(target) {
    const link = target.closest(".salt-summary a");
    const field = link && document.getElementById(link.hash.slice(1));
    const at = this.sections.findIndex((section) => section.contains(field));
    if (at >= 0) this.show(at);
  }

  /** Ready values into the fields; numbers of the reader's own can be had back. */
  fill(way) {
    const { calculator } = this;
    const section = way.closest("section");
    const values = JSON.parse(way.dataset.values);
    const items = calculator.declared.inputs.filter(({ name }) => name in values);
    const own = !this.held(section) && items.map((item) => [calculator.reading(item), calculator.typed(item)]);
    for (const item of items) calculator.enter(item, values[item.name]);
    if (own) this.offer(section, items, own);
  }

  offer(section, items, own) {
    const { calculator } = this;
    const back = () => {
      items.forEach((item, at) => {
        const [{ value }, text] = own[at];
        const [field] = calculator.controls(item);
        if (value === undefined) field.value = text;
        else calculator.enter(item, value);
      });
      const [field] = calculator.controls(items[0]);
      field.dispatchEvent(new Event("input", { bubbles: true }));
      this.match();
      field.focus();
    };
    const undo = make("button", { type: "button", class: "salt-plain-button", onclick: back }, "Undo");
    section.querySelector("[role=status]").replaceChildren("Your own numbers gave way to these. ", undo);
  }

  /** The choice whose values stand in the fields. */
  held(section) {
    const { inputs } = this.calculator.read();
    return [...section.querySelectorAll("[data-values]")].find((way) =>
      Object.entries(JSON.parse(way.dataset.values)).every(([name, value]) => inputs[name] === value),
    );
  }

  /** Mark that choice; where there is none, show the fields. */
  match() {
    for (const section of this.sections) {
      const held = this.held(section);
      const ways = section.querySelectorAll("[data-values]");
      for (const way of ways) way.checked = way === held;
      if (ways.length && !held) section.querySelector("details").open = true;
    }
  }
}

define("salt-screens", SaltScreens);
