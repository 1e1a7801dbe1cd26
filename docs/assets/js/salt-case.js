// A case to ask the club: what the damage key was told and says, with readings, as a card and a link.
// What is typed here stays on this device until the reader shares it.

import { fragment, parse } from "./link.js";
import { make } from "./make.js";
import { define } from "./parsed.js";
import { field } from "./read.js";
import { shareLink } from "./share.js";
import { given, number } from "./shown.js";
import { keep, recall } from "./store.js";

const MARK = "case_"; // begins our names in a link, which the calculator leaves to us
const READING = { kind: "number", unit: "ms_cm", low: 0, high: 200 };
const DATES = { read_on: "read on", fed_on: "last fed on", repotted_on: "last repotted on" };

const small = (text) => text[0].toLowerCase() + text.slice(1);

/** A title and what belongs to it, in one paragraph; nothing where there is nothing. */
function line(title, texts) {
  const said = (texts || []).filter(Boolean);
  return said.length ? [make("p", {}, make("b", {}, `${title}: `), `${said.join("; ")}.`)] : [];
}

class SaltCase extends HTMLElement {
  connectedCallback() {
    if (this.calculator) return;
    this.calculator = document.querySelector(`salt-calc[name="${this.dataset.form}"]`);
    this.form = this.querySelector("form");
    this.ways = JSON.parse(this.dataset.ways);
    this.form.addEventListener("submit", (event) => event.preventDefault());
    this.form.addEventListener("input", () => {
      keep("case", this.typed);
      this.draw();
    });
    this.on("link", () => this.share());
    this.on("print", () => this.print());
    this.on("text", () => this.copy());
    this.on("forget", () => this.forget());
    document.addEventListener("salt:answer", ({ detail }) => {
      if (detail.id === this.dataset.form) this.draw();
    });
    this.fill(recall("case") ?? {});
    this.open();
    if (this.calculator.dataset.state === "live") this.draw();
    addEventListener("hashchange", () => this.open());
  }

  on(name, act) {
    this.querySelector(`[data-do=${name}]`).addEventListener("click", act);
  }

  say(text) {
    this.querySelector(".salt-note").textContent = text;
  }

  get typed() {
    return Object.fromEntries([...this.form.elements].map(({ name, value }) => [name, value.trim()]));
  }

  fill(values) {
    for (const control of this.form.elements) {
      const value = values[control.name];
      if (typeof value === "string") control.value = value.slice(0, 60);
    }
  }

  /** A link may bring the case along. */
  open() {
    const link = parse(location.hash);
    const ours = Object.entries(link?.values ?? {}).filter(([name]) => name.startsWith(MARK));
    if (link?.id !== this.dataset.form || !ours.length) return;
    this.form.reset();
    this.fill(Object.fromEntries(ours.map(([name, value]) => [name.slice(MARK.length), value])));
    this.say("This case came with the link. It is kept on this device only if you change it.");
  }

  /** The calculator's answers as it holds them, without the signs that nobody looked for. */
  get answers() {
    const { inputs } = this.calculator.read();
    return Object.fromEntries(Object.entries(inputs).filter(([, value]) => value !== "not_looked"));
  }

  /** Its results in words, by name. */
  said(name) {
    return this.calculator.querySelector(`output[name="${name}"]`).textContent;
  }

  /** One reading in mS/cm and in ppm with its scale; empty where it cannot be read. */
  reading(name) {
    const { [name]: text, unit } = this.typed;
    const at = Number(unit);
    const { value } = text ? field(READING, text, { ways: this.ways, at }) : {};
    if (value === undefined || value === null) return "";
    const [sign, factor] = this.ways[at];
    const [other, times] = sign.startsWith("ppm") ? [sign, factor] : this.ways[2];
    return `${number(value, 3)} mS/cm, which is ${number(value * times, 3)} ${other}`;
  }

  draw() {
    const { declared } = this.calculator;
    if (!this.calculator.querySelector(".salt-example.salt-gone")) return;
    const { medium, method, ...typed } = this.typed;
    const { stage, kind, ...signs } = this.answers;
    const item = (name) => declared.inputs.find((each) => each.name === name);
    const those = (wanted) =>
      Object.keys(signs).filter((name) => signs[name] === wanted).map((name) => small(item(name).label));
    const [doing, drops] = ["stage", "kind"].map((name) => given(declared, item(name), { stage, kind }));
    const dated = (name) => typed[name] && `${DATES[name]} ${typed[name]}`;
    const pot = this.reading("reading");
    this.querySelector(".salt-card").replaceChildren(
      make("h3", {}, "What did this to the roots?"),
      ...line("Plant", [doing, `drops all its leaves? ${drops}`, medium, dated("fed_on"), dated("repotted_on")]),
      ...line("Seen", those("yes")),
      ...line("Looked for, not found", those("no")),
      ...line("Pot", pot && [pot, method, dated("read_on")]),
      ...line("Feed", [this.reading("feed")]),
      ...line("Tap or rain", [this.reading("tap")]),
      ...line("Likeliest", this.likeliest()),
      ...line("Test still missing", [small(this.said("next_test"))].filter((text) => text !== "–")),
      make("p", {}, "Nothing else was looked at. What would you look at next, and what would you do?"),
      make("p", { class: "salt-hint" }, "Made with Saltline's damage key; its weights are an estimate."),
    );
  }

  /** The two likeliest causes; while none fits, the two that lead. */
  likeliest() {
    const unsure = this.calculator.querySelector('output[name="fits_best"]').dataset.value === "unsure";
    const best = unsure ? [] : [this.said("fits_best")];
    const others = this.calculator.querySelector('output[name="also_fits"]').dataset.value;
    return [...best, ...(others ? this.said("also_fits").split(", ") : [])].slice(0, 2);
  }

  get link() {
    const { id, version } = this.calculator.declared;
    const typed = Object.entries(this.typed).filter(([, value]) => value);
    const ours = Object.fromEntries(typed.map(([name, value]) => [MARK + name, value]));
    const values = { ...this.answers, ...ours };
    const inputs = Object.keys(values).map((name) => ({ name }));
    return new URL(fragment({ id, version, inputs }, values), location.href).href;
  }

  async share() {
    this.say(await shareLink("What did this to the roots?", this.link));
  }

  async copy() {
    const text = this.querySelector(".salt-card").innerText.replace(/\n{2,}/g, "\n");
    try {
      await navigator.clipboard.writeText(`${text}\n${this.link}`);
      this.say("The card is copied as text, with its link.");
    } catch {
      this.say("This browser does not let a page copy. Share the link instead.");
    }
  }

  /** Print the card alone, on A5. */
  print() {
    const sheet = this.querySelector(".salt-card").cloneNode(true);
    const page = document.documentElement;
    document.body.append(sheet);
    page.classList.add("salt-print-card");
    addEventListener("afterprint", () => {
      page.classList.remove("salt-print-card");
      sheet.remove();
    }, { once: true });
    print();
  }

  forget() {
    keep("case", {});
    this.form.reset();
    this.draw();
    this.say("Forgotten. The answers at the top are still there.");
  }
}

define("salt-case", SaltCase);
