// Flush day's first screen: which pots take part, and the water they are flushed with.

import { make } from "./make.js";
import { planned } from "./session-asked.js";
import { actions, boxed, button, main, numberField, quiet, reading } from "./session-parts.js";
import * as step from "./session.js";
import { recall } from "./store.js";

/** The pots so far, a form for one more, and the way on. */
export function choosing(day) {
  const { pots, rinse } = day.session;
  const form = day.forms["flush-plan"];
  const water = reading(form, "rinse", "Water you flush with", "read it today with the same pen");
  if (rinse !== null) water.input.value = String(rinse);
  const go = () => {
    const value = water.value();
    if (value !== undefined) day.change({ rinse: value, phase: "evening" });
  };
  const ready = step.active(day.session).length > 0;
  day.put(
    pots.length ? "Another pot?" : "Which pots?",
    pots.length
      ? make("ul", { class: "salt-pots" }, ...pots.map((each) => entered(day, each)))
      : day.aside("words", "pots"),
    pots.length < step.MOST_POTS && potForm(day, form),
    ready && water.box,
    ready && actions(main("These are all: begin", go)),
    pots.length && day.foot(),
  );
}

function entered(day, pot) {
  const remove = () => day.change({ pots: day.session.pots.filter((other) => other !== pot) });
  const part = pot.aside ? ` stands aside. ${pot.aside}` : " takes part";
  return make("li", {}, make("b", {}, pot.name), part, " ", quiet("Remove", remove));
}

function potForm(day, { inputs }) {
  const { pots } = day.session;
  // The next pot is mostly like the last one.
  const facts = pots.at(-1) ?? recall("facts") ?? {};
  const fields = ["pot_l", "grain_mm"].map((name) =>
    numberField(
      day.forms["flush-plan"],
      inputs.find((item) => item.name === name),
      facts[name] ? String(facts[name]) : "",
    ),
  );
  const name = make("input", { id: "session-name", maxlength: "60", autocomplete: "off" });
  const choices = ["stage", "kind"].map((each) => {
    const choice = day.aside("choice", each);
    const like = choice.querySelector(`input[value="${facts[each] ?? ""}"]`);
    if (like) like.checked = true;
    return choice;
  });
  const note = make("p", { class: "salt-error", role: "status" });
  const made = make("div", { class: "salt-pot-form" }, boxed("Name of the pot", [name]));
  const chosen = (group) => made.querySelector(`input[name=${group}]:checked`)?.value;
  const add = async () => {
    const [pot_l, grain_mm] = fields.map((each) => each.value());
    if (pot_l === undefined || grain_mm === undefined) return;
    const stage = chosen("stage");
    if (!stage) {
      note.textContent = "Choose what the plant is doing";
      return made.querySelector("input[name=stage]").focus();
    }
    const called = name.value.trim() || `Pot ${pots.length + 1}`;
    const kind = chosen("kind") ?? "unknown";
    const pot = step.pot({ name: called, pot_l, grain_mm, stage, kind });
    const one = await planned(day.forms, pot);
    day.change({ pots: [...day.session.pots, one] });
  };
  const adding = button("Add this pot", add, pots.length ? "" : "salt-main");
  made.append(...fields.map(({ box }) => box), ...choices, note, actions(adding));
  return made;
}
