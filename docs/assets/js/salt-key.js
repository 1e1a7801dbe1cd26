// The damage key, one question a screen. The walk fills in the form of the calculator below it; what
// to ask next and what the answers mean comes from the engine.

import { ask } from "./engine.js";
import { parse } from "./link.js";
import { listed, make } from "./make.js";
import { define } from "./parsed.js";

const PACE = 4; // signs asked for between two answers
const OPENING = 3; // stage, kind and the first sign
const NOT_LOOKED = "not_looked";
const PLACE = ["question", "check", "fits", "firm", "test", "verdict", "do", "notNow", "also", "leader", "speaksFor",
  "speaksAgainst", "provisos"];

class SaltKey extends HTMLElement {
  turn = 0; // counts screens and questions to the engine: a reply to an earlier one comes too late

  connectedCallback() {
    if (this.calculator) return;
    this.calculator = document.querySelector(`salt-calc[name="${this.dataset.form}"]`);
    this.first = JSON.parse(this.dataset.first);
    this.start();
    const linked = () => parse(location.hash)?.id === this.dataset.form;
    if (linked()) this.opened();
    addEventListener("hashchange", () => linked() && this.opened());
    document.addEventListener("salt:answer", ({ detail }) => {
      if (detail.id === this.dataset.form && this.view === "result") this.result(false);
    });
    for (const button of this.querySelectorAll(".salt-options button")) {
      button.addEventListener("click", () => this.stage(button.value));
    }
  }

  start() {
    this.trail = []; // what Back goes back to
    this.passed = []; // signs that were not looked for
    this.skipped = []; // signs to ask for later
    this.due = PACE; // signs to ask for before the answer
    this.asked = 0;
    this.view = "";
  }

  /** A link or the form gave the answers. */
  opened() {
    this.start();
    this.result(false);
  }

  get signs() {
    return this.calculator.declared.inputs.filter(({ name }) => name !== "stage" && name !== "kind");
  }

  /** Write answers into the form, which then answers by itself. */
  enter(values) {
    const { inputs } = this.calculator.declared;
    for (const item of inputs) {
      if (item.name in values) this.calculator.enter(item, values[item.name]);
    }
    for (const name of Object.keys(values)) this.calculator.said.add(name);
    this.calculator.edited(Object.keys(values)[0]);
  }

  /** Remember where we are, so that Back leads here again. */
  mark() {
    const { view, passed, skipped, due, asked } = this;
    const values = this.calculator.read().inputs;
    this.trail.push({ view, values, passed: [...passed], skipped: [...skipped], due, asked });
  }

  back() {
    const { view, values, ...rest } = this.trail.pop();
    Object.assign(this, rest);
    this.enter(values);
    if (view === "result") this.result(true);
    else if (view in this.screens) this.screens[view]();
    else this.sign(view);
  }

  screens = {
    stage: () => this.showStage(),
    kind: () => this.showKind(),
    sideways: () => this.showSideways(),
    first: () => this.showFirst(),
  };

  // --- the opening

  showStage() {
    const { label, options } = this.calculator.declared.inputs.find(({ name }) => name === "stage");
    const rows = options.map(([value, text]) => button(text, () => this.stage(value)));
    this.show("stage", label, make("div", { class: "salt-options" }, ...rows));
  }

  stage(stage) {
    // The example is not this reader's plant; what they ticked themselves is.
    const blank = this.trail.length || this.calculator.touched ? [] : this.signs;
    this.mark();
    const cleared = Object.fromEntries(blank.map(({ name }) => [name, NOT_LOOKED]));
    this.enter({ stage, ...cleared });
    this.showKind();
  }

  showKind() {
    const { label } = this.calculator.declared.inputs.find(({ name }) => name === "kind");
    this.show("kind", label, make("div", { class: "salt-options" },
      button("Yes, it drops them all", () => this.kind("deciduous")),
      button("No", () => {
        this.mark();
        this.showSideways();
      }),
      button("I do not know", () => this.kind("unknown")),
    ));
  }

  showSideways() {
    this.show("sideways", "Does it grow sideways or straight up?",
      make("div", { class: "salt-options" },
        button("Sideways, shoot after shoot", () => this.kind("evergreen")),
        button("Straight up from one stem", () => this.kind("monopodial")),
        button("I do not know", () => this.kind("unknown")),
      ));
  }

  kind(kind) {
    this.mark();
    this.enter({ kind });
    this.showFirst();
  }

  showFirst() {
    const rows = this.first.flatMap(([title, names]) => [
      make("h3", {}, title),
      ...names.map((name) => {
        const row = button("", () => this.begin({ [name]: "yes" }));
        row.append(this.sketch(name), this.label(name));
        return row;
      }),
    ]);
    this.show("first", "What strikes you most?",
      make("p", { class: "salt-hint" }, "Tap the one that comes nearest. More questions follow."),
      make("div", { class: "salt-options salt-drawn" }, ...rows,
        button("None of these", () => this.begin({}))),
    );
  }

  begin(values) {
    this.mark();
    if (Object.keys(values).length) this.enter(values);
    this.next();
  }

  // --- sign by sign

  item(name) {
    return this.signs.find((each) => each.name === name);
  }

  label(name) {
    return this.item(name).label;
  }

  sketch(name) {
    const drawn = this.field(name).querySelector(".salt-sketch");
    return drawn ? drawn.cloneNode(true) : "";
  }

  field(name) {
    return document.getElementById(`${this.dataset.form}-${name}`);
  }

  hint(name) {
    return this.field(name).querySelector(".salt-hint")?.textContent ?? "";
  }

  /** What the engine says; nothing where the reader has gone on or back meanwhile. */
  async answer() {
    const turn = ++this.turn;
    const { stage, kind, ...signs } = this.calculator.read().inputs;
    const question = {
      function: this.calculator.declared.step,
      arguments: { stage, kind, signs, passed: [...this.passed, ...this.skipped] },
    };
    try {
      const { value } = await ask(JSON.stringify(question));
      return turn === this.turn && Object.fromEntries(PLACE.map((name, at) => [name, value[at]]));
    } catch (failure) {
      return turn === this.turn && this.stopped(failure);
    }
  }

  /** The next question, or the answer: where it is firm, where nothing is left, or now and then. */
  async next() {
    const reply = await this.answer();
    if (!reply) return;
    const over = reply.firm === "yes" || !reply.question || this.asked >= this.due;
    // Rot is asked for before an answer that it would forbid.
    const ask = over ? reply.check : reply.question;
    if (ask) this.sign(ask);
    else this.tell(reply, true);
  }

  sign(name) {
    const take = (given) => {
      this.mark();
      this.asked += 1;
      if (given) this.enter({ [name]: given });
      if (given === NOT_LOOKED) this.passed.push(name);
      if (!given) this.skipped.push(name);
      this.next();
    };
    const answers = [["Yes", "yes"], ["No", "no"], ["Not looked", NOT_LOOKED]];
    this.ways = [
      button("Skip", () => take(null)),
      button("What fits so far?", () => {
        this.mark();
        this.result(true);
      }),
    ];
    this.show(name, `${this.label(name)}?`,
      make("div", { class: "salt-drawing" }, this.sketch(name),
        make("p", { class: "salt-hint" }, this.hint(name))),
      make("div", { class: "salt-three" },
        ...answers.map(([text, given]) => button(text, () => take(given)))),
    );
  }

  // --- the answer

  async result(moved) {
    const reply = await this.answer();
    if (reply) this.tell(reply, moved);
  }

  tell(reply, moved) {
    const { verdict, also, leader, speaksFor, speaksAgainst, provisos } = reply;
    this.show("result", verdict,
      make("p", { class: "salt-do" }, make("b", {}, "Now: "), reply.do),
      make("p", {}, make("b", {}, "Not now: "), reply.notNow),
      ...listed(reply.fits === "unsure" ? "It may be" : "Also fits", also),
      ...listed(`Speaks for ${leader}`, speaksFor),
      ...listed("Speaks against it", speaksAgainst),
      ...this.test(reply.check ?? reply.test, reply.firm === "yes" && !reply.check),
      ...listed("What this does not prove", provisos),
      make("div", { class: "salt-options" }, this.stageLink(), ...this.more(reply),
        button("Start again", () => {
          this.start();
          this.calculator.touched = false;
          this.showStage();
        })),
    );
    if (moved) this.bring();
  }

  test(name, firm) {
    if (!name) return [];
    return [
      make("h3", {}, firm ? "Still worth a look" : "The test to do next"),
      make("div", { class: "salt-drawing" }, this.sketch(name),
        make("p", {}, make("b", {}, this.label(name) + ". "), this.hint(name))),
      button("I have looked: answer it", () => {
        this.mark();
        this.due = this.asked + 1;
        this.sign(name);
      }),
    ];
  }

  more({ question }) {
    if (!question) return [];
    return [button("Ask me more", () => {
      this.mark();
      this.due = this.asked + PACE;
      this.skipped = [];
      this.sign(question);
    })];
  }

  /** The calculator's own link to the action by stage, which carries this answer. */
  stageLink() {
    const link = this.calculator.querySelector("a.salt-next");
    return make("a", { class: "salt-next", href: link.href }, link.textContent);
  }

  stopped({ message }) {
    this.show("stopped", "The questions have stopped.",
      make("p", {}, `${message} Every sign stands in the list below.`));
    return null;
  }

  // --- a screen

  show(view, title, ...parts) {
    this.turn += 1;
    const moved = this.view !== view;
    this.view = view;
    const asked = this.trail.map((step) => step.view).filter((each) => each !== "result");
    const at = asked.length + 1;
    const about = Math.max(at, OPENING + this.due + asked.includes("sideways"));
    const asking = view !== "result" && view !== "stopped";
    const count = asking ? `Question ${at} of about ${about}` : "What your answers say";
    const back = this.trail.length ? [button("Back", () => this.back())] : [];
    const ways = this.ways ?? [];
    this.ways = null;
    this.replaceChildren(
      make("p", { class: "salt-count", id: "salt-count" }, count),
      make("h2", { class: "salt-asked", tabIndex: -1, "aria-describedby": "salt-count" }, title),
      ...parts,
      make("div", { class: "salt-ways" }, ...back, ...ways),
    );
    if (moved && view !== "result") this.bring();
  }

  /** The question at the top of the screen, and the focus on it. */
  bring() {
    this.scrollIntoView({ block: "start" });
    this.querySelector(".salt-asked").focus({ preventScroll: true });
  }
}

const button = (text, act) => {
  const made = make("button", { type: "button" }, text);
  made.addEventListener("click", act);
  return made;
};

define("salt-key", SaltKey);
