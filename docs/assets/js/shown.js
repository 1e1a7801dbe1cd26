// Numbers and sentences as a reader sees them: the other half is calculators/saltline_pages/shown.py,
// and tests/vectors/shown.json holds the two together.

const NO_BREAK = "\u00a0";
const PLACEHOLDER = /\{(in:)?([a-z0-9_]+)(?:\.\.([a-z0-9_]+))?\}/g;

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

const scaled = (value, unit) => (unit === "share" ? value * 100 : value);

const withUnit = (text, sign) =>
  sign === "°" ? text + sign : sign ? text + NO_BREAK + sign : text;

/** One result with its unit; words as they are; a dash for what does not exist. */
export function result(form, item, value) {
  if (value === null) return "–";
  if (Array.isArray(value)) return value.map((part) => result(form, item, part)).join(", ");
  if (typeof value === "string") return value;
  return withUnit(number(scaled(value, item.unit), item.digits), form.units[item.unit]);
}

/** How the unit of a numeric input is written; some follow another input (a pen's scale). */
export function unitOf(form, item, inputs) {
  if (!item.unit_from) return form.units[item.unit] ?? "";
  const options = form.inputs.find((other) => other.name === item.unit_from).options;
  return (options.find(([value]) => value === inputs[item.unit_from]) ?? ["", ""])[1];
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
export function entry(item, value) {
  if (value === null || value === undefined) return "";
  if (Array.isArray(value)) return value.map((part) => entry(item, part)).join(", ");
  if (typeof value !== "number") return value;
  return plain(item.unit === "share" ? Number((value * 100).toPrecision(15)) : value);
}

/** An input's value in a sentence, with its unit. */
export function given(form, item, inputs) {
  const value = inputs[item.name];
  if (item.kind === "choice") {
    return (item.options.find(([option]) => option === value) ?? ["", "–"])[1];
  }
  if (value === null || value === undefined) return "–";
  const sign = item.kind === "words" ? "" : unitOf(form, item, inputs);
  return entry(item, value) + (sign ? NO_BREAK + sign : "");
}

function range(form, item, low, high) {
  if (low === null || high === null) {
    return `${result(form, item, low)} to ${result(form, item, high)}`;
  }
  const [first, last] = [low, high].map((v) => number(scaled(v, item.unit), item.digits));
  return withUnit(first === last ? first : `${first} to ${last}`, form.units[item.unit]);
}

/** A sentence or drawing with its placeholders filled in. */
export function fill(template, form, inputs, values, escape = String) {
  const named = (list, name) => list.find((item) => item.name === name);
  return template.replace(PLACEHOLDER, (_, isInput, name, last) => {
    if (isInput) return escape(given(form, named(form.inputs, name), inputs));
    const item = named(form.results, name);
    if (last) return escape(range(form, item, values[name], values[last]));
    return escape(result(form, item, values[name]));
  });
}
