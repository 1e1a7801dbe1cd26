// A form's questions one at a time. The fields are the calculator's own, and stay filled in: this
// shows the section in turn, and writes the ready values that a reader chooses.

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
      if (target.dataset.values) this.fill(JSON.parse(target.dataset.values));
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

  fill(values) {
    for (const item of this.calculator.declared.inputs) {
      if (item.name in values) this.calculator.enter(item, values[item.name]);
    }
  }

  /** The choice whose values stand in the fields; where none does, the fields themselves. */
  match() {
    const { inputs } = this.calculator.read();
    for (const section of this.sections) {
      const ways = [...section.querySelectorAll("[data-values]")];
      for (const way of ways) {
        const values = Object.entries(JSON.parse(way.dataset.values));
        way.checked = values.every(([name, value]) => inputs[name] === value);
      }
      if (ways.length && !ways.some((way) => way.checked)) section.querySelector("details").open = true;
    }
  }
}

define("salt-screens", SaltScreens);
