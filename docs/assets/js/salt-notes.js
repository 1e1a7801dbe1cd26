// This pot's notes: the last ten readings and the day to look again, kept on this device only.

import { define } from "./parsed.js";
import { field } from "./read.js";
import { number } from "./shown.js";
import { keep, recall } from "./store.js";

const MOST = 10;
const WAYS = [["mS/cm", 1, 0], ["µS/cm", 1000, 0], ["ppm (500)", 500, 0], ["ppm (640)", 640, 0], ["ppm (700)", 700, 0]];
const READING = { label: "Reading", kind: "number", unit: "ms_cm", low: 0, high: 200 };
const today = () => new Date().toLocaleDateString("sv"); // 2026-11-25, in the reader's own day

class SaltNotes extends HTMLElement {
  connectedCallback() {
    this.form = this.querySelector("form");
    this.form.elements.date.value = today();
    this.form.elements.pot.value = recall("pot") ?? "";
    this.form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.add();
    });
    this.form.elements.pot.addEventListener("change", () => this.draw());
    this.form.elements.look.addEventListener("change", () => this.change({}));
    this.querySelector("[data-do=forget]").addEventListener("click", () => this.forget());
    this.draw();
  }

  get pot() {
    return this.form.elements.pot.value.trim().slice(0, 60) || "My pot";
  }

  get notes() {
    return recall("pots")?.[this.pot] ?? { readings: [], look: "" };
  }

  say(text) {
    this.querySelector(".salt-note").textContent = text;
  }

  change(more) {
    const notes = { ...this.notes, look: this.form.elements.look.value, ...more };
    const kept = keep("pots", { ...recall("pots"), [this.pot]: notes }) && keep("pot", this.pot);
    if (!kept) this.say("This browser keeps nothing between visits, so the note could not be kept.");
    this.draw();
    return kept;
  }

  add() {
    const { reading, unit, method, date } = this.form.elements;
    const at = Number(unit.value);
    const outcome = field(READING, reading.value, { ways: WAYS, at });
    if (!("value" in outcome)) {
      this.say(outcome.missing ? "Enter the reading" : `Reading ${outcome.tail}`);
      return reading.focus();
    }
    const made = { date: date.value || today(), method: method.value, ms_cm: outcome.value };
    const readings = [...this.notes.readings, made]
      .sort((a, b) => a.date.localeCompare(b.date))
      .slice(-MOST);
    if (this.change({ readings })) {
      reading.value = "";
      this.say("Kept on this device.");
    }
  }

  forget() {
    const { [this.pot]: gone, ...rest } = recall("pots") ?? {};
    keep("pots", rest);
    this.draw();
    this.say(gone ? `The notes on ${this.pot} are gone.` : "There was nothing to forget.");
  }

  draw() {
    const { readings, look } = this.notes;
    this.form.elements.look.value = look;
    this.querySelector("datalist").replaceChildren(
      ...Object.keys(recall("pots") ?? {}).map((name) => new Option(name, name)),
    );
    this.querySelector("tbody").replaceChildren(
      ...readings.map(({ date, method, ms_cm }) => {
        const line = document.createElement("tr");
        const cells = { Date: date, How: method, Reading: `${number(ms_cm, 3)} mS/cm` };
        for (const [label, text] of Object.entries(cells)) {
          const cell = document.createElement("td");
          cell.dataset.label = label;
          cell.textContent = text;
          line.append(cell);
        }
        return line;
      }),
    );
    this.querySelector("table").hidden = !readings.length;
    const due = this.querySelector(".salt-due");
    due.textContent = look && look <= today() ? `It is time to look at ${this.pot} again.` : "";
  }
}

define("salt-notes", SaltNotes);
