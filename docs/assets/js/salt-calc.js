// One calculator in the page: the element around a real form. What it knows comes from its
// declaration; what it answers comes from the engine.

import { ask, begun } from "./engine.js";
import { fragment, parse } from "./link.js";
import { MOVES, moved, toMove } from "./moves.js";
import { parsed } from "./parsed.js";
import "./print.js";
import { question } from "./question.js";
import { field, sentence } from "./read.js";
import { bound, choose, entry, fill, given, result, unit, unitOf } from "./shown.js";
import { byName, fact, factName, forgetFacts, keep, keepFacts, recall } from "./store.js";

const STANDS = "The example and the worked-out cases still stand.";
const PAUSE = 300; // milliseconds
const BEFORE = "The answer below is still the one from before.";

function inSight(element) {
  const { top } = element.getBoundingClientRect();
  if (top < 0 || top > innerHeight / 2) element.scrollIntoView();
}

const unread = [];
parsed(() => unread.forEach((element) => element.connectedCallback()));

class SaltCalc extends HTMLElement {
  connectedCallback() {
    if (this.form) return;
    if (document.readyState === "loading" && !this.nextSibling) this.arrive();
    else if (this === document.querySelector("salt-calc")) this.begin();
    else setTimeout(() => this.begin()); // the answer of the first may go before
  }

  begin() {
    if (this.form) return;
    this.form = this.querySelector("form");
    this.declared = JSON.parse(this.querySelector("script").textContent);
    // Looked up once, in one walk: a form looks through all its controls for each name.
    this.found = new Map(this.declared.inputs.map(({ name }) => [name, []]));
    for (const control of this.form.elements) this.found.get(control.name)?.push(control);
    this.turn = 0;
    this.said = new Set(); // inputs that the reader gave
    this.form.addEventListener("input", ({ target }) => {
      if (target.matches("select.salt-unit")) this.rewrite(target);
      else this.edited(target.name);
    });
    this.form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.settle(true);
    });
    this.part("[data-do=share]").addEventListener("click", ({ target }) => this.share(target));
    addEventListener("hashchange", () => this.open(location.hash));
    const linked = this.open(location.hash);
    this.units();
    if (!linked) this.offer();
    // Data savers: nothing is loaded before the first touch.
    if (!linked && begun()) this.settle(false);
  }

  /** While the page is still being read, an element is whole once something follows it. */
  arrive() {
    unread.push(this);
    const follows = (changes, observer) => {
      if (!this.nextSibling) return;
      observer.disconnect();
      this.connectedCallback();
    };
    new MutationObserver(follows).observe(this.parentNode, { childList: true });
  }

  part(selector) {
    return this.querySelector(selector);
  }

  set state(state) {
    this.dataset.state = state;
  }

  /** The controls of an input: one text box, or a group of radio buttons or ticks. */
  controls({ name }) {
    return this.found.get(name) ?? [this.form.elements[name]]; // the parts of an event come and go
  }

  /** What stands in them. */
  typed(item) {
    const controls = this.controls(item);
    if (!item.options) return controls[0].value;
    const ticked = controls.filter((control) => control.checked);
    return ticked.map((control) => control.value).join(",");
  }

  /** Everything that has a field: the inputs, and the parts of those that are lists of events. */
  get items() {
    return this.declared.inputs.flatMap((item) => [item, ...(item.parts ?? [])]);
  }

  /** All values, and what is wrong with those that cannot be read. */
  read(items = this.declared.inputs) {
    const inputs = {};
    const problems = [];
    for (const item of items) {
      const outcome = this.reading(item);
      if ("value" in outcome) inputs[item.name] = outcome.value;
      else problems.push({ item, missing: outcome.missing, text: sentence(item, outcome) });
    }
    return { inputs, problems };
  }

  /** The value in a field. One that we wrote ourselves, in any unit, is taken back exactly. */
  reading(item) {
    const [box] = this.controls(item);
    const { dataset, value } = box;
    if (value && dataset.text === value) return { value: JSON.parse(dataset.exact) };
    const unit = unitOf(this.declared, item, this.choices(item));
    // While units are being rewritten, a field still holds the unit that its own menu shows.
    const menu = box.nextElementSibling;
    const at = menu?.matches("select.salt-unit") ? Number(menu.value) : unit.at;
    const like = Number(box.defaultValue); // the example's
    return field({ ...item, like }, this.typed(item), { ...unit, at });
  }

  /** The choice that says an item's unit, where one does. */
  choices({ unit_from: name }) {
    const choice = this.declared.inputs.find((item) => item.name === name);
    return choice ? { [name]: this.typed(choice) } : {};
  }

  edited(name) {
    this.touched = true;
    this.said.add(name);
    this.part(".salt-example").classList.add("salt-gone");
    this.units();
    this.settle(false);
  }

  /** Each field's unit: the reader's way of writing it, or what another field says. */
  units() {
    const kept = recall("units");
    for (const item of this.items) {
      const sign = this.controls(item)[0]?.nextElementSibling;
      if (sign?.matches("select.salt-unit")) {
        sign.disabled = false;
        const at = kept?.[item.unit] ?? 0;
        if (Number(sign.value) !== at) this.convert(item, sign, at);
      } else if (item.unit_from) {
        sign.textContent = unitOf(this.declared, item, this.choices(item)).sign;
      }
    }
  }

  /** The reader wants this unit written another way, here and everywhere. */
  rewrite(menu) {
    const name = menu.previousElementSibling.name;
    const { unit: key } = this.items.find((item) => item.name === name);
    keep("units", { ...recall("units"), [key]: Number(menu.value) });
    menu.value = String(unit(this.declared, key).at);
    for (const calculator of document.querySelectorAll("salt-calc")) {
      if (!calculator.form) continue; // it will begin with the new unit
      calculator.units();
      calculator.settle(false);
    }
  }

  /** Write what stands in a field in another unit; what cannot be read stays as it is. */
  convert(item, menu, at) {
    const before = this.reading(item);
    choose(item.unit, at);
    menu.value = String(at);
    if ("value" in before && before.value !== null && this.typed(item)) this.enter(item, before.value);
  }

  /** Offer what the reader gave on another page, in place of the line that says "an example". */
  offer() {
    const known = this.declared.inputs.filter((item) => fact(item.name) !== undefined);
    if (!known.length) return;
    const line = this.part(".salt-example");
    const written = (item) => given(this.declared, item, { [item.name]: fact(item.name) });
    const use = () => {
      for (const item of known) this.enter(item, fact(item.name));
      const notes = known.map((item) => `${item.label} ${written(item)}`);
      line.classList.add("salt-gone");
      this.units();
      this.settle(false).then(() => this.note(`From before: ${notes.join("; ")}.`));
    };
    const forget = () => {
      forgetFacts();
      line.classList.add("salt-gone");
    };
    const [first, ...more] = known.sort(byName);
    const others = more.length ? ` and ${more.length} more` : "";
    line.firstElementChild.classList.add("salt-aloud");
    line.append(
      button(`Use my ${factName(first.name)}: ${written(first)}${others}`, use),
      button("Forget", forget),
    );
  }

  /** Read the fields and answer. Errors are only shown when `asked` for (Enter or the button). */
  async settle(asked) {
    const turn = ++this.turn;
    this.asking?.abort(); // nobody waits for the earlier answer any more
    const { inputs, problems } = this.read();
    if (problems.length) return asked ? this.complain(problems) : this.wait(problems);
    const { signal } = (this.asking = new AbortController());
    let reply;
    try {
      reply = await ask(question(this.declared, inputs), { signal, onSlow: () => this.slow() });
    } catch (failure) {
      if (turn === this.turn && !signal.aborted) this.stopped(failure);
      return;
    }
    if (turn !== this.turn) return; // a later edit is on its way
    if (reply.bad) {
      const problem = this.blame(reply.bad);
      return asked ? this.complain([problem]) : this.wait([problem]);
    }
    this.complain([]);
    this.answered = this.link(inputs); // the fields that the answer shown belongs to
    if (reply.refused) this.refuse(inputs, reply);
    else this.show(inputs, reply);
    if (asked) this.lead();
    if (this.touched) this.remember(inputs);
    if (reply.value) this.move(turn, inputs, reply.value);
  }

  /** To the answer, where it is out of sight. */
  lead() {
    inSight(this.part(".salt-say"));
  }

  /** Say which two inputs would move the answer most. */
  async move(turn, inputs, value) {
    const moves = toMove(this.declared, inputs, value);
    const part = this.part(".salt-moves");
    if (!moves) return part.replaceChildren();
    const text = question(this.declared, inputs, { words: null, picture: null, table: null, moves });
    const { signal } = this.asking;
    const other = this.part(".salt-example.salt-gone"); // then it speaks of an answer before
    part.classList.toggle("salt-late", Boolean(other));
    await new Promise((done) => setTimeout(done, PAUSE)); // the next key may be on its way
    if (turn !== this.turn) return;
    const reply = await ask(text, { signal, spare: true }).catch(() => {});
    if (turn !== this.turn) return;
    part.classList.remove("salt-late");
    if (!reply?.moves) {
      if (other) part.replaceChildren();
      return;
    }
    const [now, lines] = moved(this.declared, inputs, value, moves, reply.moves);
    if (!lines.length) return part.replaceChildren();
    const title = document.createElement("p");
    title.append(Object.assign(document.createElement("b"), { textContent: MOVES }), ` ${bound(now)}`);
    const list = document.createElement("ul");
    list.append(...lines.map((line) => item(line)));
    part.replaceChildren(title, list);
  }

  /** A sentence from the science, which starts with an argument's name. */
  blame(text) {
    const item = this.declared.inputs.find(({ name }) => text.startsWith(name + " "));
    if (!item) return { item: this.declared.inputs[0], text };
    return { item, text: sentence(item, { tail: text.slice(item.name.length + 1) }) };
  }

  wait(problems) {
    this.state = "stale";
    this.note(`Waiting: ${problems[0].text}`);
  }

  note(text) {
    const note = this.part(".salt-note");
    note.textContent = text;
    note.hidden = !text;
  }

  /** A sentence about inputs, in the reader's units. */
  inWords(text, inputs, values) {
    return fill(text, { ...this.declared, inputs }, values, {});
  }

  /** The summary of errors, which takes the focus, and the same words at each field. */
  complain(problems) {
    const summary = this.part(".salt-summary");
    for (const item of this.declared.inputs) this.mark(item, "");
    for (const { item, text } of problems) this.mark(item, text);
    summary.replaceChildren(
      ...problems.map(({ item, text }) => {
        const link = document.createElement("a");
        link.href = `#${this.declared.id}-${item.name}`;
        link.textContent = text;
        link.addEventListener("click", (event) => {
          event.preventDefault();
          this.focusOn(item);
        });
        const line = document.createElement("p");
        line.append(link);
        return line;
      }),
    );
    summary.hidden = !problems.length;
    this.note(problems.length ? BEFORE : "");
    if (!problems.length) return;
    this.state = "error";
    summary.focus();
  }

  mark(item, text) {
    const error = document.getElementById(`${this.declared.id}-${item.name}-error`);
    error.textContent = text;
    error.hidden = !text;
    const control = document.getElementById(`${this.declared.id}-${item.name}`);
    if (text) control.setAttribute("aria-invalid", "true");
    else control.removeAttribute("aria-invalid");
  }

  focusOn(item) {
    const control = document.getElementById(`${this.declared.id}-${item.name}`);
    const folded = control.closest("details");
    if (folded) folded.open = true;
    control.closest(".salt-field").scrollIntoView({ block: "start" });
    (control.querySelector?.("input") ?? control).focus();
  }

  refuse(inputs, { refused, instead }) {
    this.say([refused, "", instead], [], "");
    this.twin([]);
    for (const item of this.declared.results) this.figure(item, null);
    this.state = "refused";
    this.announce(inputs, {});
  }

  show(inputs, { value, words, picture, table = [] }) {
    const { results } = this.declared;
    const values = Object.fromEntries(results.map((item, at) => [item.name, value[at]]));
    const put = (text, escape) => fill(text, this.declared, inputs, values, escape);
    const drawn = picture ? put(picture, xml) : "";
    this.say(words.map((text) => put(text)), value[results.length], drawn);
    this.twin(table.map((cells) => cells.map((text) => put(text))));
    for (const item of results) this.figure(item, values[item.name]);
    for (const line of this.querySelectorAll("[data-template]")) {
      line.textContent = bound(put(line.dataset.template));
    }
    this.follow({ ...values, ...inputs });
    this.state = "live";
    this.announce(inputs, values);
  }

  /** Links to calculators that go on from this answer. */
  follow(known) {
    for (const link of this.querySelectorAll("a.salt-next")) {
      const carry = Object.entries(JSON.parse(link.dataset.carry));
      const form = {
        id: link.dataset.id,
        version: link.dataset.version,
        inputs: carry.map(([name]) => ({ name })),
      };
      const values = Object.fromEntries(carry.map(([name, from]) => [name, known[from]]));
      link.hash = fragment(form, values);
    }
  }

  say([verdict, number, reason], warnings, picture) {
    this.part(".salt-say").textContent = bound(verdict);
    this.part(".salt-number").textContent = bound(number);
    this.part(".salt-why").textContent = bound(reason);
    const list = this.part(".salt-warnings");
    list.replaceChildren(...warnings.map((text) => item(text)));
    list.hidden = !warnings.length;
    const frame = this.part(".salt-picture");
    const drawn = picture && new DOMParser().parseFromString(picture, "image/svg+xml");
    frame.replaceChildren(...(drawn ? [document.importNode(drawn.documentElement, true)] : []));
  }

  /** The picture's curve as a table: heads first, the first cell of each row names it. */
  twin([heads, ...rows]) {
    const part = this.part(".salt-twin");
    if (!part) return;
    part.hidden = !heads;
    const line = (cells, kind) => {
      const row = document.createElement("tr");
      row.append(...cells.map((text, at) => cell(kind ?? (at ? "td" : "th"), text, kind)));
      return row;
    };
    part.querySelector("thead").replaceChildren(...(heads ? [line(heads, "th")] : []));
    part.querySelector("tbody").replaceChildren(...rows.map((cells) => line(cells)));
  }

  figure(declared, value) {
    const output = this.part(`output[name="${declared.name}"]`);
    output.textContent = bound(result(this.declared, declared, value));
    output.dataset.value =
      value === null ? "" : Array.isArray(value) ? JSON.stringify(value) : String(value);
    const list = this.part(`[data-list="${declared.name}"]`);
    if (list) list.replaceChildren(...(value ?? []).map((text) => item(text)));
  }

  announce(inputs, results) {
    const detail = { id: this.declared.id, inputs, results };
    document.dispatchEvent(new CustomEvent("salt:answer", { detail }));
  }

  stopped(failure) {
    this.state = "error";
    this.note(`${failure.message} ${STANDS}`);
    console.warn("saltline:", failure.cause ?? failure);
  }

  /** An answer that takes long can be stopped; the last one stays, greyed. */
  slow() {
    this.state = "stale";
    this.note("Still working it out.");
    const stop = button("Stop", () => {
      this.asking.abort();
      this.note("Stopped. The figures below are from before.");
    });
    this.part(".salt-note").append(" ", stop);
  }

  /** Put the inputs into the address, without a step in the Back history. */
  remember(inputs) {
    keepFacts(Object.fromEntries(Object.entries(inputs).filter(([name]) => this.said.has(name))));
    clearTimeout(this.writing);
    this.writing = setTimeout(() => {
      history.replaceState(history.state, "", this.fragment(inputs));
    }, 300);
  }

  /** A link's fragment; without the signs that nobody looked for, which keeps it short. */
  fragment(inputs) {
    const told = Object.entries(inputs).filter(([, value]) => value !== "not_looked");
    return fragment(this.declared, Object.fromEntries(told));
  }

  link(inputs = this.read().inputs) {
    return new URL(this.fragment(inputs), location.href).href;
  }

  async share(opener) {
    try {
      const { togglePanel } = await import("./share-panel.js");
      togglePanel(this, opener);
    } catch (failure) {
      this.note("This part did not arrive. The address of this page holds your numbers: copy it.");
      console.warn("saltline:", failure);
    }
  }

  /** Fill the form from a link's fragment, if it speaks of this calculator. */
  open(hash) {
    const link = parse(hash);
    if (!link || link.id !== this.declared.id) return false;
    const notes = link.dropped.length ? ["A part of this link could not be read."] : [];
    if (link.version !== this.declared.version) {
      notes.push("This link was made with another version of the method: the answer may differ.");
    }
    for (const item of this.declared.inputs) {
      const text = link.values[item.name];
      delete link.values[item.name];
      this.enter(item, this.received(item, text, notes));
    }
    // Names that begin with case_ belong to the card beside the damage key.
    const unknown = Object.keys(link.values).filter((name) => !name.startsWith("case_"));
    if (unknown.length) notes.push(`Not known here, left out: ${unknown.join(", ")}.`);
    this.part(".salt-example").classList.add("salt-gone");
    this.units();
    this.opened(notes);
    inSight(this); // a page may hold several, and the link is for this one
    return true;
  }

  /** A link's text for one input as a value; what cannot be used gives way to the default. */
  received(item, text, notes) {
    const usual = item.default ?? null;
    if (text === undefined) return usual;
    const options = item.kind === "choice" && item.options.map(([value]) => value);
    // A link's numbers have a point, and commas stand between those of a list.
    const outcome = field(item, item.kind === "numbers" ? text.replaceAll(",", " ") : text);
    if ("value" in outcome && (!options || options.includes(outcome.value))) return outcome.value;
    notes.push(`${item.label}: “${text.slice(0, 40)}” could not be used.`);
    return usual;
  }

  enter(item, value) {
    for (const control of this.controls(item)) {
      if (item.options) {
        control.checked = [value].flat().includes(control.value);
        continue;
      }
      control.value = entry(this.declared, item, value, this.choices(item));
      control.dataset.text = control.value;
      control.dataset.exact = JSON.stringify(value);
    }
  }

  async opened(notes) {
    const { problems } = this.read();
    if (problems.length) {
      this.turn += 1;
      const [{ text }] = problems;
      this.say([`Not worked out yet. ${text}${text.endsWith("?") ? "" : "."}`, "", ""], [], "");
      this.twin([]);
      for (const each of this.declared.results) this.figure(each, null);
      this.state = "refused";
    } else await this.settle(false);
    if (notes.length) this.note(notes.join(" "));
  }
}

function item(text) {
  const line = document.createElement("li");
  line.textContent = bound(text);
  return line;
}

function cell(kind, text, head) {
  const made = document.createElement(kind);
  if (kind === "th") made.scope = head ? "col" : "row";
  made.textContent = bound(text);
  return made;
}

function button(text, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  made.addEventListener("click", act);
  return made;
}

const xml = (text) =>
  text.replace(/[&<>"]/g, (sign) => `&#${sign.codePointAt(0)};`);

customElements.define("salt-calc", SaltCalc);
