// What a reader typed, as a value the science takes, or as a sentence that says what to mend.

import { plain } from "./shown.js";

const SPACES = /[\s\u00a0\u2007\u2009\u202f']/g;

/** The number in a text with comma or point, spaces, a unit behind it, or a Unicode minus. */
export function number(text, unit = "") {
  let bare = text.trim().replace(/[\u2212\u2012\u2013\uff0d]/g, "-");
  bare = withoutUnit(bare, unit).replace(SPACES, "");
  const comma = bare.lastIndexOf(",");
  const point = bare.lastIndexOf(".");
  if (comma >= 0 && point >= 0) {
    // Both: the last one is the decimal sign, the other groups thousands.
    bare = bare.replaceAll(comma > point ? "." : ",", "");
  } else if (/^-?[1-9]\d{0,2},\d{3}$/.test(bare)) {
    const [with_, without] = [bare.replace(",", "."), bare.replace(",", "")];
    return { tail: `could be ${without} or ${plain(Number(with_))}: write it without the comma` };
  } else if ((bare.match(/,/g) ?? []).length > 1) {
    bare = bare.replaceAll(",", "");
  }
  bare = bare.replace(",", ".");
  if (!/^[-+]?(\d+\.?\d*|\.\d+)(e-?\d{1,3})?$/i.test(bare)) return { tail: null };
  const value = Number(bare);
  return Number.isFinite(value) ? { value } : { tail: null };
}

function withoutUnit(text, unit) {
  const fold = (s) => s.toLowerCase().replace(/[\u03bc\u00b5]/g, "u").replace(/[\s\u00a0.]/g, "");
  const match = text.match(/^(.*?\d[.,]?)\s*([^\d\s.,][^\d]*)$/);
  if (!match) return text;
  const typed = fold(match[2]);
  const known = fold(unit);
  const same = known && (typed === known || known.startsWith(typed) || typed.startsWith(known));
  return same ? match[1] : text;
}

/** One field's value, or `{tail}`: how the sentence about it goes on after the field's label. */
export function field(item, text, unit) {
  const typed = text.trim();
  if (typed === "") {
    if ("default" in item) return { value: item.default };
    return item.optional ? { value: null } : { missing: true };
  }
  if (item.kind === "choice") return { value: typed };
  if (item.kind === "number") return bounded(item, typed, unit);
  const parts = typed.split(item.kind === "words" ? /[,;\s]+/ : /[;\s]+|,\s+|,(?=\S*,)/);
  const found = [];
  for (const part of parts.filter(Boolean)) {
    const one = item.kind === "words" ? word(item, part) : bounded(item, part, unit);
    if (!("value" in one)) return one;
    found.push(one.value);
  }
  if (found.length < item.least || found.length > item.most) {
    return { tail: `must hold ${item.least} to ${item.most} values` };
  }
  return { value: found };
}

function word(item, text) {
  const known = !item.options || item.options.some(([value]) => value === text);
  return known && new RegExp(`^(?:${item.pattern})$`).test(text)
    ? { value: text }
    : { tail: `does not know “${text}”` };
}

function bounded(item, text, unit) {
  const read = number(text, unit);
  if (!("value" in read)) return { tail: read.tail ?? `must be a number, like ${like(item)}` };
  const factor = item.unit === "share" ? 100 : 1;
  const value = read.value / factor;
  const sign = unit ? " " + unit : "";
  if (value < item.low) return { tail: `must be ${plain(item.low * factor)}${sign} or more` };
  if (value > item.high) return { tail: `must be ${plain(item.high * factor)}${sign} or less` };
  if (item.whole && !Number.isInteger(value)) return { tail: "must be a whole number" };
  return { value };
}

/** A number to show as a pattern: the default, else something small within the bounds. */
function like(item) {
  if (typeof item.default === "number") return plain(item.default);
  return plain(item.whole ? Math.max(item.low, 3) : Math.min(item.high, Math.max(item.low, 1.5)));
}

/** "Enter the soak volume": what is said of an empty field. */
export function ask(item) {
  const label = item.label;
  if (label.endsWith("?")) return `Answer: ${label}`;
  const lower = /^[A-Z][a-z]/.test(label) ? label[0].toLowerCase() + label.slice(1) : label;
  const article = /^(your|the|how|what) /.test(lower) ? "" : "the ";
  return (item.kind === "choice" ? "Choose " : "Enter ") + article + lower;
}

/** The whole sentence about a field. */
export const sentence = (item, outcome) =>
  outcome.missing ? ask(item) : `${item.label} ${outcome.tail}`;
