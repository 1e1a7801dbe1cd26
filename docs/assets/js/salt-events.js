// A log as a list of sentences: add to it, change, move and remove. The text under the fold is the
// only store. Each change is written into it, and whatever else changes it is shown here.

import { word } from "./log.js";
import { make } from "./make.js";
import { define } from "./parsed.js";

const button = (text, onclick, kind = "") =>
  make("button", { type: "button", class: kind, onclick }, text);

class SaltEvents extends HTMLElement {
  connectedCallback() {
    if (this.calculator) return;
    this.calculator = this.closest("salt-calc");
    // The calculator may be defined later in this turn.
    customElements.whenDefined("salt-calc").then(() => setTimeout(() => this.begin()));
  }

  begin() {
    const { inputs } = this.calculator.declared;
    this.declared = inputs.find(({ name }) => name === this.dataset.for);
    this.field = this.querySelector(`input[name="${this.dataset.for}"]`);
    this.list = this.querySelector("ol");
    this.note = this.querySelector("[role=status]");
    for (const add of this.querySelectorAll("[data-word]")) {
      const kind = this.declared.kinds.find((each) => each.word === add.dataset.word);
      add.addEventListener("click", () => this.edit(this.words.length, kind, {}));
    }
    this.field.addEventListener("input", () => this.refresh());
    const changed = new MutationObserver(() => this.refresh());
    changed.observe(this.calculator, { attributeFilter: ["data-state"] });
    this.refresh();
  }

  get words() {
    return this.field.value.split(/[,;\s]+/).filter(Boolean);
  }

  /** What a word says: its kind and figures, or null where it is none of ours. */
  parsed(text) {
    const [name, ...cells] = text.split(":");
    const kind = this.declared.kinds.find((each) => each.word === name);
    const figures = cells.map((cell) => (cell === "" ? NaN : Number(cell)));
    if (!kind || figures.length < kind.least || figures.length > kind.parts.length) return null;
    if (!figures.every(Number.isFinite)) return null;
    return { kind, values: Object.fromEntries(kind.parts.map((part, at) => [part, figures[at] ?? null])) };
  }

  /** A word as a sentence; the other half is calculators/saltline_pages/fields.py. */
  said(text) {
    const event = this.parsed(text);
    if (!event) return `“${text}” says nothing here: mend it as text`;
    const { kind, values } = event;
    const whole = values[kind.parts.at(-1)] !== null;
    return this.calculator.inWords(kind.said + (whole ? kind.tail ?? "" : ""), this.declared.parts, values);
  }

  /** Draw what has changed: the text, or the reader's units. */
  refresh() {
    if (this.text !== this.field.value) {
      this.text = this.field.value;
      this.editor = null;
      this.note.replaceChildren();
    }
    const sentences = this.words.map((text) => this.said(text));
    const drawn = sentences.join();
    if (drawn !== this.drawn || this.editor !== this.placed) this.draw(sentences);
    [this.drawn, this.placed] = [drawn, this.editor];
  }

  draw(sentences) {
    const { activeElement } = document;
    const rows = sentences.map((text, at) =>
      make("li", {}, button(text, () => this.open(at), "salt-event")),
    );
    if (this.editor) rows.splice(this.editor.at, 1, this.editor.box);
    this.list.replaceChildren(...rows);
    if (this.editor?.box.contains(activeElement)) activeElement.focus();
  }

  open(at) {
    const event = this.parsed(this.words[at]);
    if (event) return this.edit(at, event.kind, event.values);
    this.field.closest("details").open = true;
    this.field.focus();
  }

  /** The fields of one event, in its place or, where it is new, at the end. */
  edit(at, kind, values) {
    const isNew = at === this.words.length;
    const parts = kind.parts.map((name, place) => {
      const part = this.declared.parts.find((each) => each.name === name);
      return place < kind.least ? part : { ...part, optional: true };
    });
    const fields = parts.map(({ name }) =>
      this.querySelector(`template[data-part="${name}"]`).content.cloneNode(true),
    );
    const last = this.words.length - 1;
    const buttons = isNew
      ? [button("Add it", () => this.take(at), "salt-main"), button("Leave it", () => this.close())]
      : [
          button("Done", () => this.take(at), "salt-main"),
          button("Remove", () => this.remove(at)),
          at > 0 ? button("Earlier", () => this.take(at, -1)) : null,
          at < last ? button("Later", () => this.take(at, 1)) : null,
        ];
    const group = make("div", { role: "group", ariaLabel: kind.label },
      make("b", {}, kind.label),
      kind.hint ? make("p", { class: "salt-hint" }, kind.hint) : null,
      ...fields,
      make("div", { class: "salt-actions" }, ...buttons),
    );
    const box = make("li", { class: "salt-editing" }, group);
    // The calculator's own fields are elsewhere; a unit chosen here holds everywhere.
    box.addEventListener("input", (event) => {
      if (!event.target.matches("select")) event.stopPropagation();
    });
    box.addEventListener("keydown", (event) => {
      if (event.key !== "Enter" || !event.target.matches("input")) return;
      event.preventDefault();
      this.take(at);
    });
    this.editor = { at, kind, parts, box };
    this.refresh();
    this.calculator.units();
    for (const part of parts) this.calculator.enter(part, values[part.name]);
    box.querySelector("input").focus();
  }

  /** Write the event that the fields hold, and move it by `step`. */
  take(at, step = 0) {
    const { kind, parts } = this.editor;
    const { inputs, problems } = this.calculator.read(parts);
    for (const part of parts) this.calculator.mark(part, "");
    for (const { item, text } of problems) this.calculator.mark(item, text);
    if (problems.length) return this.calculator.focusOn(problems[0].item);
    const words = this.words;
    words.splice(at, 1);
    words.splice(at + step, 0, word(kind.word, ...parts.map(({ name }) => inputs[name])));
    this.write(words);
    if (step) this.open(at + step);
    this.focusOn(at + step, step);
  }

  /** Back to the row; after a move to the button that moves further, as long as there is one. */
  focusOn(at, step = 0) {
    const row = this.list.children[at];
    const further = step < 0 ? "Earlier" : "Later";
    const all = [...row.querySelectorAll("button")];
    (all.find((each) => step && each.textContent === further) ?? all[0]).focus();
  }

  close() {
    const { word: name } = this.editor.kind;
    this.editor = null;
    this.refresh();
    this.querySelector(`[data-word="${name}"]`).focus();
  }

  remove(at) {
    const { words } = this;
    const sentence = this.said(words[at]);
    this.write(words.filter((_, place) => place !== at));
    const undo = button("Undo", () => {
      this.write(words);
      this.focusOn(at);
    }, "salt-plain-button");
    this.note.replaceChildren(`Removed: ${sentence}. `, undo);
    undo.focus();
  }

  write(words) {
    this.editor = null; // though nothing may have changed
    this.field.value = words.join(", ");
    this.field.dispatchEvent(new Event("input", { bubbles: true }));
  }
}

define("salt-events", SaltEvents);
