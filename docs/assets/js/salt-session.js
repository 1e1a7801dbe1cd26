// Flush day, step by step: one screen at a time, kept on the device until it is finished. What comes
// next is decided in session.js and by the science; this file draws it.

import { ask } from "./engine.js";
import { parse } from "./link.js";
import { question } from "./question.js";
import { field, sentence } from "./read.js";
import * as step from "./session.js";
import { shareLink } from "./share.js";
import { fill, number, unit } from "./shown.js";
import { keep, recall } from "./store.js";


const ended = (text) => text[0].toUpperCase() + text.slice(1) + (text.endsWith(".") ? "" : ".");

/** An element with attributes, text or children. */
function make(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") made.addEventListener(name, value);
    else if (value !== null && value !== false) made.setAttribute(name, value === true ? "" : value);
  }
  made.append(...children.filter((child) => child !== null));
  return made;
}

/** A button that waits for what it began; what fails is said beside it, and nothing is lost. */
function button(text, act, kind = "") {
  const made = make("button", { type: "button", class: kind }, text);
  made.addEventListener("click", async (event) => {
    made.disabled = true;
    try {
      await act(event);
    } catch (failure) {
      made.after(make("p", { class: "salt-error", role: "alert" }, failure.message));
    }
    made.disabled = false;
  });
  return made;
}

class SaltSession extends HTMLElement {
  connectedCallback() {
    this.forms = JSON.parse(this.querySelector(":scope > script").textContent);
    this.screen = this.querySelector(".salt-screen");
    this.session = recall("session") ?? step.fresh();
    addEventListener("hashchange", () => this.open());
    document.addEventListener("visibilitychange", () => this.tick());
    this.ticking = setInterval(() => this.tick(), 1000);
    if (!this.open()) this.draw();
  }

  disconnectedCallback() {
    clearInterval(this.ticking);
  }

  /** A link's session is shown beside the reader's own, never in its place unasked. */
  open() {
    const link = parse(location.hash);
    const found = link && step.fromLink(link);
    if (!found) return false;
    const own = this.session.pots.length > 0;
    this.put(
      this.heading("A flush session from a link"),
      make("p", {}, found.pots.map((each) => each.name).join(", ")),
      make("p", {}, own ? "You have a session of your own here. Opening this one replaces it." : ""),
      this.actions(
        button("Open it", () => this.go(found), "salt-main"),
        button("Leave it", () => this.draw()),
      ),
    );
    return true;
  }

  go(session) {
    this.session = session;
    this.kept = keep("session", session);
    this.draw();
  }

  change(more) {
    this.go({ ...this.session, ...more });
  }

  replace(pot, now) {
    const pots = this.session.pots.map((each) => (each === pot ? now : each));
    this.session = { ...this.session, pots };
    return now;
  }

  // Drawing

  put(...parts) {
    this.screen.replaceChildren(...parts.filter(Boolean));
    if (this.kept === false) {
      this.screen.append(make("p", { class: "salt-note" }, "This browser keeps nothing: leave this page open until you are done."));
    }
    this.drawn = true;
  }

  heading(text) {
    const made = make("h3", { tabindex: "-1" }, text);
    if (this.drawn) queueMicrotask(() => made.focus({ preventScroll: false }));
    return made;
  }

  actions(...buttons) {
    return make("div", { class: "salt-actions" }, ...buttons);
  }

  draw() {
    ({
      pots: () => this.choosing(),
      evening: () => this.evening(),
      night: () => this.night(),
      drips: () => this.drips(),
      pours: () => this.pours(),
      done: () => this.done(),
    })[this.session.phase]();
  }

  foot() {
    return make(
      "p",
      { class: "salt-foot" },
      button("Share or keep", async (event) => {
        const url = new URL(step.toLink(this.session), location.href).href;
        const note = make("span", { role: "status" }, await shareLink("Flush day", url));
        event.target.after(note);
      }, "salt-plain-button"),
      button("Print", () => print(), "salt-plain-button"),
      button("Start again", (event) => {
        const sure = button("Yes, forget this session", () => this.go(step.fresh()), "salt-plain-button");
        event.target.replaceWith(sure);
        sure.focus();
      }, "salt-plain-button"),
    );
  }

  /** A number field with the reader's units; `value()` is null while it cannot be used. */
  number(item, text = "") {
    const ways = unit(this.forms["flush-plan"], item.unit);
    const at = Math.min(recall("units")?.[item.unit] ?? 0, ways.ways.length - 1);
    const id = `session-${item.name}`;
    const menu = ways.ways.length > 1
      ? make("select", { class: "salt-unit", "aria-label": "Unit" },
          ...ways.ways.map(([sign], way) => make("option", { value: way, selected: way === at }, sign)))
      : ways.sign && make("span", { class: "salt-unit", "aria-hidden": "true" }, ways.sign);
    const input = make("input", { id, inputmode: "decimal", autocomplete: "off", value: text });
    const error = make("p", { class: "salt-error", id: `${id}-error`, hidden: true });
    input.setAttribute("aria-describedby", error.id);
    const box = make("div", { class: "salt-field" },
      make("label", { for: id }, item.label),
      item.hint ? make("p", { class: "salt-hint" }, item.hint) : null,
      error,
      make("div", { class: "salt-box" }, input, menu));
    const value = () => {
      const outcome = field(item, input.value, { ways: ways.ways, at: Number(menu?.value ?? 0) });
      const fine = "value" in outcome;
      error.textContent = fine ? "" : sentence(item, outcome);
      error.hidden = fine;
      if (!fine) input.focus();
      else if (menu?.value) keep("units", { ...recall("units"), [item.unit]: Number(menu.value) });
      return fine ? outcome.value : undefined;
    };
    return { box, input, value };
  }

  ec(name, label, hint, optional = false) {
    return this.number({ name, label, hint, kind: "number", unit: "ms_cm", low: 0, high: 30, optional });
  }

  given(value) {
    const { ways, at, sign } = unit(this.forms["flush-plan"], "ms_cm");
    return `${number(value * ways[at][1] + ways[at][2], 2)} ${sign}`;
  }

  // 1. Which pots

  choosing() {
    const { pots, rinse } = this.session;
    const list = make("ul", { class: "salt-pots" }, ...pots.map((each) =>
      make("li", {}, make("b", {}, each.name), each.aside ? ` stands aside. ${each.aside}` : " takes part", " ",
        button("Remove", () => this.change({ pots: pots.filter((other) => other !== each) }), "salt-plain-button"))));
    const water = this.ec("rinse", "Water you flush with", "read it today with the same pen", false);
    if (rinse !== null) water.input.value = String(rinse);
    const go = () => {
      const value = water.value();
      if (value !== undefined) this.change({ rinse: value, phase: "evening" });
    };
    const ready = step.active(this.session).length > 0;
    this.put(
      this.heading(pots.length ? "Another pot?" : "Which pots?"),
      pots.length ? list : make("p", {}, "One pot to a dozen. Enter the healthy ones first and doubtful ones last; sick ones get no flush."),
      pots.length < step.MOST_POTS ? this.potForm() : null,
      ready ? water.box : null,
      ready ? this.actions(button("These are all: begin", go, "salt-main")) : null,
      pots.length ? this.foot() : null,
    );
  }

  potForm() {
    const { inputs } = this.forms["flush-plan"];
    // The next pot is mostly like the last one.
    const facts = this.session.pots.at(-1) ?? recall("facts") ?? {};
    const fields = ["pot_l", "grain_mm"].map((name) =>
      this.number(inputs.find((item) => item.name === name), facts[name] ? String(facts[name]) : ""));
    const name = make("input", { id: "session-name", maxlength: "60", autocomplete: "off" });
    const choices = ["stage", "kind"].map((each) =>
      this.querySelector(`template[data-choice=${each}]`).content.cloneNode(true));
    for (const [at, each] of ["stage", "kind"].entries()) {
      const like = choices[at].querySelector(`input[value="${facts[each] ?? ""}"]`);
      if (like) like.checked = true;
    }
    const note = make("p", { class: "salt-error", role: "status" });
    const form = make("div", { class: "salt-pot-form" },
      make("div", { class: "salt-field" }, make("label", { for: name.id }, "Name of the pot"),
        make("div", { class: "salt-box" }, name)),
      ...fields.map((each) => each.box), ...choices, note);
    const chosen = (group) => form.querySelector(`input[name=${group}]:checked`)?.value;
    const add = async () => {
      const [pot_l, grain_mm] = fields.map((each) => each.value());
      if (pot_l === undefined || grain_mm === undefined) return;
      const stage = chosen("stage");
      if (!stage) {
        note.textContent = "Choose what the plant is doing";
        return form.querySelector("input[name=stage]").focus();
      }
      const made = step.pot({
        name: name.value.trim() || `Pot ${this.session.pots.length + 1}`,
        pot_l, grain_mm, stage, kind: chosen("kind") ?? "unknown",
      });
      await this.plan(made);
      this.change({ pots: [...this.session.pots, made] });
    };
    form.append(this.actions(button("Add this pot", add, this.session.pots.length ? "" : "salt-main")));
    return form;
  }

  /** The stage gate, and how much to pour. */
  async plan(pot) {
    const form = this.forms["flush-plan"];
    const known = { ...pot, rinse_ms_cm: 0.2 };
    const inputs = Object.fromEntries(form.inputs.map(({ name, default: usual = null }) => [name, known[name] ?? usual]));
    const reply = await ask(question(form, inputs, { words: null, picture: null, table: null }));
    if (reply.refused) pot.aside = `${reply.refused} ${reply.instead}`;
    else pot.each_ml = reply.value[form.results.findIndex(({ name }) => name === "each_ml")];
  }

  // 2. Evening and night

  evening() {
    const tasks = [
      "Put the pen in a bottle of standard (1.413 mS/cm). Then read your water.",
      "Lift out slow-release beads that lie on top; brush crust into the bin. Empty the saucers.",
      "Water each pot slowly with clear water until it runs out below.",
      "Let them drain for 15 minutes, each in its own basin.",
      "Stand them apart in the shade, at 18 °C or more. Cover the pots, not the leaves.",
    ];
    this.put(
      this.heading("This evening: half an hour"),
      make("ul", { class: "salt-tasks" }, ...tasks.map((text, at) =>
        make("li", {}, make("label", {}, make("input", { type: "checkbox", name: `task${at}` }), make("span", {}, text))))),
      this.actions(button("They are covered now", () => this.change({ phase: "drips", covered: Date.now() }), "salt-main")),
      this.foot(),
    );
  }

  night() {
    this.put(
      this.heading("Done for today"),
      make("p", {}, "Let the pots drain and stand airy. Before the night cover them again, out of the cold, and take the cover off before the sun."),
      this.actions(button("They are covered now", () => this.change({ phase: "drips", covered: Date.now() }), "salt-main")),
      ...this.pictures(),
      this.foot(),
    );
  }

  // 3. Morning: the first drips, pot by pot

  drips() {
    const { covered } = this.session;
    const waiting = step.active(this.session).find((each) => !(each.read >= (covered ?? 0) && each.read));
    if (!waiting) return this.go(step.advance(this.session, Date.now()));
    const stood = covered ? (Date.now() - covered) / 3_600_000 : null;
    const reading = this.ec("drip", `First drips of ${waiting.name}`,
      "pour 10 mL at a time over the whole top until the drips cover the pen");
    const hours = this.number({ name: "hours", label: "Hours it stood covered", kind: "number", unit: "", low: 0, high: 336 },
      stood === null ? "12" : String(Math.max(0, Math.round(stood * 10) / 10)));
    const take = async () => {
      const [value, rest] = [reading.value(), hours.value()];
      if (value === undefined || rest === undefined) return;
      const now = Date.now();
      const read = this.replace(waiting, { ...step.drip(waiting, value, now, rest), read: now });
      await this.judge(read, rest);
      this.go(this.session);
    };
    this.put(
      this.heading(`Morning: read ${waiting.name}`),
      stood !== null && stood < step.NIGHT_H
        ? make("p", { class: "salt-warnings" }, `Covered for ${stood < 1 ? "less than an hour" : `${number(stood, 2)} h`} so far. Before 8 h the drips read the water between the granules, not the granules: come back in the morning, this page waits for you.`)
        : null,
      reading.box,
      hours.box,
      this.actions(button("Take this reading", take, "salt-main"),
        button("Leave this pot out", () => { this.replace(waiting, { ...waiting, done: true, verdict: "left out" }); this.go(this.session); })),
      ...this.pictures(),
      this.foot(),
    );
  }

  /** What the readings say is left, and whether to go on. */
  async judge(pot, rest) {
    const learned = await this.learn(pot);
    const stop = learned?.values?.stop_ms_cm ?? null;
    let made = { ...pot, said: learned?.said ?? null, picture: learned?.picture ?? null };
    // Drips read too soon say nothing of the granules, so they decide nothing.
    if (rest >= step.NIGHT_H) {
      const reply = await ask(JSON.stringify({
        function: "saltline.stopping.stopping",
        arguments: { readings: pot.drips, rinse_ms_cm: this.session.rinse, stop_ms_cm: stop },
      }));
      const [action, why] = reply.value;
      made = { ...made, verdict: why, done: action !== "go_on" };
    }
    return this.replace(pot, made);
  }

  async learn(pot) {
    const form = this.forms["flush-learn"];
    const known = { ...pot, rinse_ms_cm: this.session.rinse };
    const inputs = Object.fromEntries(form.inputs.map(({ name, default: usual = null }) => [name, known[name] ?? usual]));
    const reply = await ask(question(form, inputs));
    if (!reply.value) return { said: reply.bad ?? `${reply.refused} ${reply.instead}` };
    const values = Object.fromEntries(form.results.map((item, at) => [item.name, reply.value[at]]));
    const put = (text) => fill(text, form, inputs, values);
    const escaped = (text) => fill(text, form, inputs, values, (s) => s.replace(/[&<>"]/g, (c) => `&#${c.codePointAt(0)};`));
    return { values, said: reply.words.map(put).filter(Boolean).map(ended).join(" "), picture: reply.picture && escaped(reply.picture) };
  }

  // 4. Pours

  pours() {
    const { round, until } = this.session;
    if (until && until > Date.now()) return this.resting();
    const waiting = step.active(this.session).find((each) => (each.poured ?? 0) < round + (each.before ?? 0));
    if (!waiting) return this.go(this.counted(step.advance(this.session, this.roundStart ?? Date.now())));
    const ml = waiting.each_ml ?? waiting.pot_l * 150;
    const reading = this.ec("ran", "What ran out reads", "the last of it; leave it empty if you like", true);
    const timer = make("p", { class: "salt-clock", role: "timer" });
    const done = async () => {
      const value = reading.value();
      if (value === undefined) return;
      const now = Date.now();
      if (!this.roundStart || waiting === step.active(this.session)[0]) this.roundStart = now;
      const poured = { ...step.pour(waiting, ml, value, now), poured: (waiting.poured ?? 0) + 1 };
      const read = this.replace(waiting, poured);
      const learned = await this.learn(read);
      this.replace(read, { ...read, said: learned?.said, picture: learned?.picture });
      this.go(this.session);
    };
    this.put(
      this.heading(`Pour ${round} of ${step.POURS}: ${waiting.name}`),
      make("p", { class: "salt-number" }, `${number(ml, 2)} mL, slowly, over the whole top`),
      make("p", {}, "Take some three minutes, at 20 to 25 °C, turning the pot over its own basin. Throw that water away. Crown and new shoots stay dry."),
      this.actions(button("Start three minutes", () => { this.count = { until: Date.now() + 180_000, timer }; this.tick(); }),
        button("Poured", done, "salt-main")),
      timer,
      reading.box,
      make("p", {}, button("Sour smell, or it turned cold: stop this pot", () => {
        this.replace(waiting, { ...waiting, done: true, verdict: "Stopped at a sour smell or in the cold. Look inside before any more water." });
        this.go(this.session);
      }, "salt-plain-button")),
      ...this.pictures(),
      this.foot(),
    );
  }

  /** A new morning starts its count of pours from where the pot stands, and judges anew. */
  counted(session) {
    this.roundStart = null;
    if (session.phase !== "night") return session;
    const pots = session.pots.map((each) => ({
      ...each,
      before: each.poured ?? 0,
      verdict: each.done ? each.verdict : null,
    }));
    return { ...session, pots };
  }

  resting() {
    const timer = make("p", { class: "salt-clock", role: "timer" });
    this.count = { until: this.session.until, timer, then: () => this.draw() };
    this.put(
      this.heading("Rest"),
      make("p", {}, "Leave the pots drained and airy. The granules let go of their salt meanwhile; rest is free, soaking is not."),
      timer,
      this.actions(button("Go on now", () => this.change({ until: null }))),
      ...this.pictures(),
      this.foot(),
    );
    this.tick();
  }

  /** The clock on the wall decides, so that a dark screen does not stop the time. */
  tick() {
    const { count } = this;
    if (!count?.timer.isConnected) return;
    const now = Date.now();
    if (now < count.until) {
      count.timer.textContent = step.clock(count.until, now);
      return;
    }
    count.timer.textContent = "Time is up";
    this.count = null;
    navigator.vibrate?.(400);
    count.then?.();
  }

  // 5. The end

  done() {
    const { pots } = this.session;
    this.put(
      this.heading("This flush is done"),
      ...this.pictures(true),
      make("p", {}, "Now a normal dry-down for each pot, then weak feed. Read the first drips once more in two weeks: a rise means slow granules or beads."),
      make("p", {}, "What this cannot see: the line where roots meet air. Clear drips say nothing about it."),
      pots.length ? this.actions(button("Finish and forget", () => this.go(step.fresh()))) : null,
      this.foot(),
    );
  }

  /** What is known of each pot, with its picture. */
  pictures(all = false) {
    return this.session.pots
      .filter((each) => each.said || each.verdict || (all && each.aside))
      .map((each) => {
        const drawn = each.picture && new DOMParser().parseFromString(each.picture, "image/svg+xml");
        return make("section", { class: "salt-answer salt-known" },
          make("h4", {}, each.name),
          each.verdict ? make("p", { class: "salt-say" }, each.verdict) : null,
          each.said ? make("p", {}, each.said) : null,
          each.aside ? make("p", {}, each.aside) : null,
          each.drips.length ? make("p", { class: "salt-hint" }, `First drips: ${each.drips.map((value) => this.given(value)).join(", ")}`) : null,
          drawn ? make("div", { class: "salt-picture" }, document.importNode(drawn.documentElement, true)) : null);
      });
  }
}

customElements.define("salt-session", SaltSession);
