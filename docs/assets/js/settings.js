// A club's settings: what its link carries, and what they set on the reader's device.

import { fragment } from "./link.js";
import { keep, recall } from "./store.js";

/** A pen's scale -> which of the ways of writing mS/cm it is (the order of declare.py). */
const SCALES = { ms_cm: 0, us_cm: 1, ppm500: 2, ppm640: 3, ppm700: 4, cf: 0 };
/** Systems of units -> which of the ways of writing each unit. */
const UNITS = { metric: { c: 0, ml: 0, l: 0, mm: 0 }, us: { c: 1, ml: 2, l: 2, mm: 2 } };
const WORDS = {
  scale: { ms_cm: "mS/cm", us_cm: "µS/cm", ppm500: "ppm (500)", ppm640: "ppm (640)", ppm700: "ppm (700)", cf: "cF" },
  units: { metric: "metric units", us: "US units" },
  hemisphere: { north: "northern hemisphere", south: "southern hemisphere" },
};
const NAMES = ["name", "tap_ms_cm", "scale", "units", "hemisphere"];
const LONGEST = 60;
const SALTIEST = 5; // mS/cm of a tap

/** A name as plain words: no control signs, none that turn the line around. */
const tidy = (name) =>
  name.replace(/[\p{Cc}\p{Cf}\p{Co}\p{Zl}\p{Zp}]/gu, " ").replace(/\s+/g, " ").trim().slice(0, LONGEST);

/** What of a link's values can be used. */
export function usable(values) {
  const found = {};
  const name = tidy(values.name ?? "");
  if (name) found.name = name;
  const tap = /^\d{1,2}(\.\d{1,6})?$/.test(values.tap_ms_cm ?? "") ? Number(values.tap_ms_cm) : NaN;
  if (tap <= SALTIEST) found.tap_ms_cm = tap;
  for (const each of ["scale", "units", "hemisphere"]) {
    if (Object.hasOwn(WORDS[each], values[each] ?? "")) found[each] = values[each];
  }
  return found;
}

/** The fragment of a club's link. */
export const toFragment = (settings) =>
  fragment({ id: "club", version: 1, inputs: NAMES.map((name) => ({ name })) }, settings);

/** The settings in words. */
export function inWords({ tap_ms_cm: tap, ...settings }) {
  const words = ["scale", "units", "hemisphere"]
    .filter((each) => settings[each])
    .map((each) => (each === "scale" ? "pens in " : "") + WORDS[each][settings[each]]);
  return [...(tap === undefined ? [] : [`tap ${tap} mS/cm`]), ...words].join(", ");
}

/** Set the site for this reader; false where the device keeps nothing. */
export function set(settings) {
  const before = { facts: recall("facts"), units: recall("units"), club: recall("club")?.settings };
  const { tap_ms_cm, scale, hemisphere, units } = settings;
  const facts = Object.entries({ tap_ms_cm, scale, hemisphere }).filter(([, value]) => value !== undefined);
  const ways = { ...UNITS[units], ...(scale ? { ms_cm: SCALES[scale] } : {}) };
  return (
    keep("club", { settings, before }) &&
    keep("facts", { ...before.facts, ...Object.fromEntries(facts) }) &&
    keep("units", { ...before.units, ...ways })
  );
}

/** As it was before. */
export function undo() {
  const { before } = recall("club");
  keep("facts", before.facts ?? {});
  keep("units", before.units ?? {});
  keep("club", before.club && { settings: before.club, before: {} });
}
