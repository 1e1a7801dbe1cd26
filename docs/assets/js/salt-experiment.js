// One measured pot beside the model: the sheet as lines of text, kept on this device, and what the
// science reads in them. Lines it cannot take are named; the rest are taken.

import { ask, begun } from "./engine.js";
import { make } from "./make.js";
import { define } from "./parsed.js";
import { number } from "./read.js";
import { bound, fill } from "./shown.js";
import { keep, recall } from "./store.js";

const HEAD = "date,event,volume_ml,minutes,reading,scale,sample_c,weight_g,grain_mm,note";
const PAUSE = 600; // milliseconds without a key before a sheet is read
const today = () => new Date().toLocaleDateString("sv"); // 2026-11-25, in the reader's own day
const xml = (text) => text.replace(/[&<>"]/g, (sign) => `&#${sign.codePointAt(0)};`);
// A spreadsheet must never take a cell for a formula.
const harmless = (text) => text.replace(/(^|[,;\t"])(?=[=+@]|-(?![\d.]))/gm, "$1'");
const quoted = (cell) => (/[",;\t]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/** A picture from its text. */
function drawn(text) {
  const { documentElement } = new DOMParser().parseFromString(text, "image/svg+xml");
  return document.importNode(documentElement, true);
}

class SaltExperiment extends HTMLElement {
  connectedCallback() {
    if (this.form) return;
    this.form = this.querySelector("form");
    Object.assign(this, JSON.parse(this.querySelector("script").textContent));
    this.turn = 0;
    const { sheet, event } = this.form.elements;
    this.sheet = sheet;
    const kept = recall("experiment");
    if (kept) this.put(kept);
    sheet.addEventListener("input", () => {
      this.keep();
      clearTimeout(this.waiting);
      this.waiting = setTimeout(() => this.settle(), PAUSE);
    });
    event.addEventListener("change", () => this.choose());
    this.form.addEventListener("submit", (submitted) => {
      submitted.preventDefault();
      this.settle();
    });
    const file = this.querySelector("input[type=file]");
    file.addEventListener("change", () => this.open(file));
    this.act("add", () => this.add());
    this.act("save", () => this.save());
    this.act("open", () => file.click());
    this.act("empty", () => this.replace(HEAD + "\n", "The sheet is empty."));
    this.choose();
    if (begun()) this.settle();
  }

  act(name, run) {
    this.querySelector(`[data-do=${name}]`).addEventListener("click", run);
  }

  part(selector) {
    return this.querySelector(selector);
  }

  say(text, ...more) {
    this.part(".salt-note").replaceChildren(text, ...more);
  }

  put(text) {
    this.sheet.value = text;
    this.part(".salt-example").classList.add("salt-gone");
  }

  keep() {
    this.part(".salt-example").classList.add("salt-gone");
    const kept = keep("experiment", this.sheet.value);
    this.say(kept ? "" : "This browser keeps nothing: save the sheet as a file before you leave.");
  }

  /** Another sheet in the place of this one, which can be put back. */
  replace(text, done) {
    const before = this.sheet.value;
    this.put(text);
    this.keep();
    const back = make("button", { type: "button", class: "salt-plain-button" }, "Put it back");
    back.addEventListener("click", () => {
      this.put(before);
      this.keep();
      this.settle();
    });
    this.say(`${done} `, back);
    this.settle();
  }

  async open(input) {
    const [file] = input.files;
    if (!file) return;
    if (file.size > this.sheet.maxLength) this.say("That file is too long for the sheet of one pot.");
    else this.replace((await file.text()).replace(/\r\n?/g, "\n"), "The file stands in the sheet.");
    input.value = "";
  }

  save() {
    const text = harmless(this.sheet.value.trim()).replaceAll("\n", "\r\n") + "\r\n";
    const link = make("a", { download: "saltline-pot.csv" });
    link.href = URL.createObjectURL(new Blob([text], { type: "text/csv" }));
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  }

  /** Only the figures that this kind of line can hold. */
  choose() {
    const asked = this.needs[this.form.elements.event.value];
    for (const field of this.querySelectorAll("[data-for]")) field.hidden = !asked.includes(field.dataset.for);
  }

  /** The line under construction, put below the others. */
  add() {
    const { event, scale, note } = this.form.elements;
    const cells = { date: today(), event: event.value, note: note.value.trim() };
    for (const name of this.needs[event.value]) {
      const box = this.form.elements[name];
      if (!box.value.trim()) continue;
      const read = number(box.value);
      if (!("value" in read)) {
        const { textContent } = box.closest(".salt-field").querySelector("label");
        this.say(`${textContent} ${read.tail ?? "must be a number, like 150"}`);
        return box.focus();
      }
      cells[name] = String(read.value);
      if (name === "reading") cells.scale = scale.value;
    }
    const [head, ...lines] = this.sheet.value.trim().split("\n");
    const first = /\bevent\b/i.test(head) ? head : [HEAD, head].join("\n").trim();
    const top = first.split("\n")[0];
    const sign = [",", ";", "\t"].reduce((a, b) => (top.split(b).length > top.split(a).length ? b : a));
    const line = top.split(sign).map((name) => quoted(cells[name.trim().toLowerCase()] ?? "")).join(sign);
    this.sheet.value = [first, ...lines, line].join("\n") + "\n";
    this.keep();
    for (const name of [...this.needs[event.value], "note"]) this.form.elements[name].value = "";
    this.say(`Added: ${line}`);
    this.settle();
  }

  /** Ask the science about the lines as they stand. */
  async settle() {
    const turn = ++this.turn;
    clearTimeout(this.waiting);
    this.asking?.abort();
    const { signal } = (this.asking = new AbortController());
    this.dataset.state = "stale";
    try {
      const question = JSON.stringify({ ...this.asked, arguments: { sheet: this.sheet.value } });
      const reply = await ask(question, { signal });
      if (turn !== this.turn) return;
      this.show(reply);
      this.dataset.state = "live";
    } catch (failure) {
      if (turn !== this.turn || signal.aborted) return;
      this.dataset.state = "error";
      this.say(`${failure.message} Your lines are kept.`);
    }
  }

  show({ value, words, picture, table: [heads, ...rows] }) {
    const form = { units: this.units, inputs: [], results: [] };
    const put = (text, escape) => fill(text, form, {}, {}, escape);
    const [verdict, figure, why] = words.map(bound);
    this.part(".salt-say").textContent = verdict;
    this.part(".salt-number").textContent = figure;
    this.part(".salt-why").textContent = why;
    this.part(".salt-picture").replaceChildren(...(rows.length ? [drawn(put(picture, xml))] : []));
    this.part("tbody").replaceChildren(
      ...rows.map((cells) => {
        const cell = (text, at) => make("td", { "data-label": heads[at] }, bound(put(text)));
        return make("tr", {}, ...cells.map(cell));
      }),
    );
    this.part("table").hidden = !rows.length;
    this.refused(value[1]);
  }

  /** The lines that were not taken, each with its reason. */
  refused(list) {
    const lines = this.sheet.value.split("\n");
    const items = list.map(([at, reason]) =>
      make("li", {}, make("b", {}, `Line ${at}`), ` ${reason} `, make("code", {}, lines[at - 1] ?? "")),
    );
    const section = this.part(".salt-refused");
    section.hidden = !items.length;
    section.querySelector("ul").replaceChildren(...items);
  }
}

define("salt-experiment", SaltExperiment);
