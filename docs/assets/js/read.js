// What a reader typed, as a value the science takes, or as a sentence that says what to mend.

import { plain, withUnit } from "./shown.js";

const SPACES = /[\s\u00a0\u2007\u2009\u202f']/g;

/**
 * The number in a text with comma or point, spaces, a unit behind it, or a Unicode minus.
 * `signs` are the units it may carry; `sign` tells which one stood there.
 */
export function number(text, signs = []) {
  const [digits, sign] = withoutUnit(text.trim().replace(/[\u2212\u2012\u2013\uff0d]/g, "-"), signs);
  let bare = digits.replace(SPACES, "");
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
  if (!Number.isFinite(value)) return { tail: null };
  return sign < 0 ? { value } : { value, sign };
}

const fold = (sign) => sign.toLowerCase().replace(/[\u03bc\u00b5]/g, "u").replace(/[\s\u00a0.()]/g, "");

/** The text without the unit behind the number, and which of `signs` that was (-1: none). */
function withoutUnit(text, signs) {
  const match = text.match(/^(.*?\d[.,]?)\s*([^\d\s.,][^\d]*(?: ?\(\d+\))?)$/);
  if (!match) return [text, -1];
  const typed = fold(match[2]);
  const folded = signs.map(fold);
  let at = folded.indexOf(typed);
  // "500 uS" for µS/cm, "350 ppm" on a ppm scale; the first that fits is the field's own unit.
  if (at < 0) at = folded.findIndex((known) => known && known.startsWith(typed));
  return at < 0 ? [text, -1] : [match[1], at];
}

/**
 * One field's value, or `{tail}`: how the sentence about it goes on after the field's label.
 * `unit` holds the ways its unit may be written and which one the field shows (see shown.js).
 */
export function field(item, text, unit = { ways: [["", 1, 0]], at: 0 }) {
  const typed = text.trim();
  if (typed === "") {
    if ("default" in item) return { value: item.default };
    return item.optional ? { value: null } : { missing: true };
  }
  if (item.kind === "choice") return { value: typed };
  if (item.kind === "number") return bounded(item, typed, unit);
  const found = [];
  for (const part of typed.split(item.kind === "words" ? /[,;\s]+/ : between(typed)).filter(Boolean)) {
    const one = item.kind === "words" ? word(item, part) : bounded(item, part, unit);
    if (!("value" in one)) return one;
    found.push(one.value);
  }
  if (found.length < item.least || found.length > item.most) {
    return { tail: `must hold ${item.least} to ${item.most} values` };
  }
  return { value: found };
}

/** What stands between the numbers of a list: a comma may be that, or the decimal sign. */
function between(text) {
  if (text.includes(".")) return /[,;\s]+/;
  if (/,\s/.test(text)) return /;\s*|,\s+/;
  if (/[;\s]/.test(text)) return /[;\s]+/;
  return text.indexOf(",") === text.lastIndexOf(",") ? /;/ : /,/;
}

function word(item, text) {
  const known = !item.options || item.options.some(([value]) => value === text);
  return known && new RegExp(`^(?:${item.pattern})$`).test(text)
    ? { value: text }
    : { tail: `does not know “${text}”` };
}

function bounded(item, text, { ways, at }) {
  // The field's own unit first, so that "ppm" means the ppm it shows.
  const order = [at, ...ways.keys()].filter((way, place, all) => all.indexOf(way) === place);
  const read = number(text, order.map((way) => ways[way][0]));
  const own = ways[at];
  const shown = (value) => plain(Number((value * own[1] + own[2]).toPrecision(at ? 4 : 15)));
  if (!("value" in read)) return { tail: read.tail ?? unread(item, text, shown) };
  const [, factor, offset] = ways[order[read.sign ?? 0]];
  const value = (read.value - offset) / factor;
  const bound = (edge) => withUnit(shown(edge), item.whole ? "" : own[0]);
  if (value < item.low) return { tail: `must be ${bound(item.low)} or more` };
  if (value > item.high) return { tail: `must be ${bound(item.high)} or less` };
  if (item.whole && !Number.isInteger(value)) return { tail: "must be a whole number" };
  return { value };
}

/** What is said of a text that is no number; in a long list it has to be found. */
const unread = (item, text, shown) =>
  item.kind === "numbers"
    ? `must be a list of numbers: “${text}” is not one`
    : `must be a number, like ${like(item, shown)}`;

/** A number to show as a pattern: the example, the default, else something small within bounds. */
function like(item, shown) {
  if (item.like || item.default) return shown(item.like || item.default);
  return shown(item.whole ? Math.max(item.low, 3) : Math.min(item.high, Math.max(item.low, 1.5)));
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
  outcome.missing
    ? ask(item)
    : `${item.label}${item.label.endsWith("?") ? " It" : ""} ${outcome.tail}`;
