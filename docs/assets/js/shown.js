// Numbers and sentences as a reader sees them: the other half is calculators/saltline_pages/shown.py,
// and tests/vectors/shown.json holds the two together.

const NO_BREAK = "\u00a0";
const PLACEHOLDER = /\{(in:)?([a-z0-9_]+)(?:\.\.([a-z0-9_]+))?\}/g;
// A number that only a drawing has, and its unit's sign: {0.5:ms_cm} {:ms_cm}.
const DRAWN = /\{([0-9.]*):([a-z0-9_]*)\}/g;

/** A number with so many significant digits, no exponent, five figures and more grouped. */
export function number(value, digits) {
  if (value === 0) return "0";
  let [mantissa, exponent] = Math.abs(value).toExponential(digits - 1).split("e");
  mantissa = mantissa.replace(".", "");
  const point = Number(exponent) + 1; // figures before the point
  let text;
  if (point <= 0) text = "0." + "0".repeat(-point) + mantissa;
  else if (point >= mantissa.length) text = mantissa.padEnd(point, "0");
  else text = mantissa.slice(0, point) + "." + mantissa.slice(point);
  if (text.includes(".")) text = text.replace(/\.?0+$/, "");
  let [whole, rest] = text.split(".");
  if (whole.length > 4) whole = whole.replace(/(?<=\d)(?=(\d{3})+$)/g, NO_BREAK);
  return (value < 0 ? "−" : "") + whole + (rest ? "." + rest : "");
}

// Which way of writing each unit the reader has chosen; the first one where none is.
const chosen = {};

/** Write a unit the way that has this place in its declaration (0 is the usual one). */
export const choose = (key, at) => (chosen[key] = at);

/** All ways of writing a unit: `[sign, factor, offset]`, and which one is chosen. */
export function unit(form, key) {
  const ways = form.units[key] ?? [["", 1, 0]];
  const at = ways[chosen[key]] ? chosen[key] : 0;
  return { ways, at, sign: ways[at][0] };
}

/** A value in the unit it is shown in; a share becomes percent. */
function scaled(form, value, key) {
  const { ways, at } = unit(form, key);
  return value * ways[at][1] + ways[at][2];
}

// A figure that a sentence holds, and its unit: they stay in one line.
const LOOSE = /(\d) (?=[°%]|(?:mS|ppm|mm|cm|mL|L|g|mg|mol|min|minutes|h|hours|days)\b)/g;

/** A sentence whose figures stay with their units. */
export const bound = (text) => text.replace(LOOSE, `$1${NO_BREAK}`);

/** A figure with its unit, which stays in its line. */
export const withUnit = (text, sign) =>
  sign === "°" ? text + sign : sign ? text + NO_BREAK + sign : text;

const measure = (form, item, value) => number(scaled(form, value, item.unit), item.digits);

/** One result with its unit; words as they are; a dash for what does not exist. */
export function result(form, item, value) {
  if (value === null) return "–";
  if (Array.isArray(value)) return value.map((part) => result(form, item, part)).join(", ");
  if (typeof value === "string") return labelled(item, value);
  return withUnit(measure(form, item, value), unit(form, item.unit).sign);
}

/** Words as they are; ids that have labels (one, or a comma list) as their labels. */
const labelled = ({ labels }, value) =>
  labels ? value.split(",").map((one) => labels[one] ?? one).join(", ") : value;

/** How a numeric input is written: its unit's ways; some follow another input (a pen's scale). */
export function unitOf(form, item, inputs) {
  if (item.kind === "choice" || item.kind === "words") return { ways: [["", 1, 0]], at: 0, sign: "" };
  if (!item.unit_from) return unit(form, item.unit);
  const options = form.inputs.find((other) => other.name === item.unit_from).options;
  const sign = (options.find(([value]) => value === inputs[item.unit_from]) ?? ["", ""])[1];
  return { ways: [[sign, 1, 0]], at: 0, sign };
}

/** A number as it stands in a field: all its figures, no exponent, no grouping. */
export function plain(value) {
  const text = String(value);
  if (!text.includes("e")) return text;
  const [mantissa, exponent] = text.split("e").map(Number);
  return exponent < 0
    ? value.toFixed(Math.min(100, -exponent + String(mantissa).replace(/\D/g, "").length - 1))
    : BigInt(value).toString();
}

/** An input's value as it stands in its field, without the unit. */
export function entry(form, item, value, inputs = {}) {
  if (value === null || value === undefined) return "";
  if (Array.isArray(value)) return value.map((part) => entry(form, item, part, inputs)).join(", ");
  if (typeof value !== "number") return value;
  const { ways, at } = unitOf(form, item, inputs);
  const [, factor, offset] = ways[at];
  // A converted value is shown to five figures; as it was typed, to all of them.
  return plain(Number((value * factor + offset).toPrecision(at ? 5 : 15)));
}

/** An input's value in a sentence, with its unit. */
export function given(form, item, inputs) {
  const value = inputs[item.name];
  if (item.options) {
    const said = item.options.filter(([option]) => [value].flat().includes(option));
    return said.map(([, label]) => label).join(", ") || "–";
  }
  if (value === null || value === undefined) return "–";
  const { sign } = unitOf(form, item, inputs);
  return entry(form, item, value, inputs) + (sign ? NO_BREAK + sign : "");
}

function range(form, item, low, high) {
  if (low === null || high === null) {
    return `${result(form, item, low)} to ${result(form, item, high)}`;
  }
  const [first, last] = [low, high].map((value) => measure(form, item, value));
  return withUnit(first === last ? first : `${first} to ${last}`, unit(form, item.unit).sign);
}

/** A sentence or drawing with its placeholders filled in. */
export function fill(template, form, inputs, values, escape = String) {
  const named = (list, name) => list.find((item) => item.name === name);
  const drawn = template.replace(DRAWN, (_, value, key) =>
    escape(value ? measure(form, { unit: key, digits: 3 }, Number(value)) : unit(form, key).sign),
  );
  return drawn.replace(PLACEHOLDER, (_, isInput, name, last) => {
    if (isInput) return escape(given(form, named(form.inputs, name), inputs));
    const item = named(form.results, name);
    if (last) return escape(range(form, item, values[name], values[last]));
    return escape(result(form, item, values[name]));
  });
}
