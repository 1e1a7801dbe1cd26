// Which two inputs would move the answer most: calculator.py says it in the same words.

import { given, result } from "./shown.js";

export const MOVES = "What would change this?";

/**
 * What to ask of the engine: the place of the result to look at, and each number a little higher (a
 * tenth, 2 degrees, or one more), or lower at its bound. Null where no result is a number.
 */
export function toMove({ inputs: items, results, main = 0 }, inputs, value) {
  const isNumber = (place) => results[place].kind === "number" && typeof value[place] === "number";
  const at = [main, ...results.keys()].find(isNumber);
  if (at === undefined) return null;
  const changed = items.flatMap((item) => {
    const now = inputs[item.name];
    if (item.kind !== "number" || now === null) return [];
    const step = item.whole ? 1 : item.unit === "c" ? 2 : now * 0.1;
    if (!step) return [];
    return [[item.name, now + step <= item.high ? now + step : now - step]];
  });
  return { at, changed };
}

/** The result as it is, and a line for each input that would show another one. */
export function moved(form, inputs, value, { at, changed }, moves) {
  const write = (number) => result(form, form.results[at], number);
  const now = write(value[at]);
  const lines = moves
    .filter(([, next]) => write(next) !== now)
    .map(([name, next]) => {
      const item = form.inputs.find((each) => each.name === name);
      const other = { ...inputs, [name]: Object.fromEntries(changed)[name] };
      const [then, before] = [other, inputs].map((each) => given(form, item, each));
      return `${write(next)} if “${item.label}” were ${then} instead of ${before}`;
    });
  const { label } = form.results[at];
  const colon = /at (least|most)$/.test(label) ? "" : ":";
  return [`${label}${colon} ${now}. It would be`, lines];
}
