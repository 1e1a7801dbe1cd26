// Small parts of flush day's screens: buttons, fields with the reader's units, what a pot has said.

import { make } from "./make.js";
import { field, sentence } from "./read.js";
import { number, unit } from "./shown.js";
import { keep, recall } from "./store.js";

/** A button that waits for what it began; what fails is said beside it, and nothing is lost. */
export function button(text, act, kind = "") {
  const made = make("button", { type: "button", class: kind }, text);
  made.addEventListener("click", async () => {
    made.disabled = true;
    try {
      await act(made);
    } catch (failure) {
      made.after(make("p", { class: "salt-error", role: "alert" }, failure.message));
    }
    made.disabled = false;
  });
  return made;
}

export const main = (text, act) => button(text, act, "salt-main");
export const quiet = (text, act) => button(text, act, "salt-plain-button");
export const actions = (...buttons) => make("div", { class: "salt-actions" }, ...buttons);
export const say = (text, kind) => make("p", kind ? { class: kind } : {}, text);

/** A field with its label, and what stands between them. */
export const boxed = (label, [input, ...beside], ...between) =>
  make(
    "div",
    { class: "salt-field" },
    make("label", { for: input.id }, label),
    ...between,
    make("div", { class: "salt-box" }, input, ...beside),
  );

/** The menu of a unit's ways, or its one sign. */
function signs({ ways, sign }, at) {
  if (ways.length < 2) {
    return sign && make("span", { class: "salt-unit", "aria-hidden": "true" }, sign);
  }
  const options = ways.map(([each], way) =>
    make("option", { value: way, selected: way === at }, each),
  );
  return make("select", { class: "salt-unit", "aria-label": "Unit" }, ...options);
}

/** A number field; `value()` is undefined while it cannot be used, and says why beside it. */
export function numberField(form, item, text = "") {
  const written = unit(form, item.unit);
  const { ways } = written;
  const kept = Math.min(recall("units")?.[item.unit] ?? 0, ways.length - 1);
  const id = `session-${item.name}`;
  const menu = signs(written, kept);
  const input = make("input", { id, inputmode: "decimal", autocomplete: "off", value: text });
  const error = make("p", { class: "salt-error", id: `${id}-error`, hidden: true });
  input.setAttribute("aria-describedby", error.id);
  const hint = item.hint ? say(item.hint, "salt-hint") : null;
  const value = () => {
    const outcome = field(item, input.value, { ways, at: Number(menu?.value ?? 0) });
    const fine = "value" in outcome;
    error.textContent = fine ? "" : sentence(item, outcome);
    error.hidden = fine;
    if (!fine) input.focus();
    else if (menu?.value) keep("units", { ...recall("units"), [item.unit]: Number(menu.value) });
    return outcome.value;
  };
  return { box: boxed(item.label, [input, menu], hint, error), input, value };
}

const PEN = { kind: "number", unit: "ms_cm", low: 0, high: 30 };

/** A field for what the pen shows. */
export const reading = (form, name, label, hint, optional = false) =>
  numberField(form, { ...PEN, name, label, hint, optional });

function shown(form, value) {
  const { ways, at, sign } = unit(form, "ms_cm");
  return `${number(value * ways[at][1] + ways[at][2], 2)} ${sign}`;
}

/** What is known of each pot, with its picture. */
export function told(form, pots, all = false) {
  return pots
    .filter((each) => each.said || each.verdict || (all && each.aside))
    .map(({ name, verdict, said, aside, drips, picture }) => {
      const drawn = picture && new DOMParser().parseFromString(picture, "image/svg+xml");
      const read = drips.map((value) => shown(form, value)).join(", ");
      return make(
        "section",
        { class: "salt-answer salt-known" },
        make("h4", {}, name),
        verdict ? say(verdict, "salt-say") : null,
        said ? say(said) : null,
        aside ? say(aside) : null,
        read ? say(`First drips: ${read}`, "salt-hint") : null,
        drawn
          ? make("div", { class: "salt-picture" }, document.importNode(drawn.documentElement, true))
          : null,
      );
    });
}
