// A flush session as data: which pots, what was done and read, what comes next. No page, no clock of
// its own: every function takes the time. Times are milliseconds since 1970.

import { fragment } from "./link.js";
import { word } from "./log.js";

export const MOST_POTS = 12;
const HOUR = 3_600_000;
export const POURS = 3; // a morning
export const REST_MS = HOUR; // drained, between two pours
export const NIGHT_H = 8; // covered hours after which a drip reads the whole pot

/** A session that has not begun. */
export const fresh = () => ({ rinse: null, pots: [], phase: "pots", round: 0, covered: null });

/** A pot that takes part, or stands aside with the reason. */
export const pot = (facts) => ({ ...facts, log: [], last: null, drips: [], verdict: null, done: false });

/** The pots still to be worked on, healthy ones first (they were entered in that order). */
export const active = (session) => session.pots.filter((each) => !each.done && !each.aside);

/** Hours since the last event of a pot, to a tenth. */
const hours = (each, now) => Math.round(((now - each.last) / HOUR) * 10) / 10;

function rested(each, now, rest = hours(each, now)) {
  return each.log.length && rest >= 0.1 ? [...each.log, word("rest", Math.min(rest, 336))] : each.log;
}

/** Morning: the first drips of a pot that stood covered for so many hours. */
export function drip(each, reading, now, covered) {
  const log = [...rested(each, now, covered), word("drip", reading)];
  return { ...each, log, last: now, drips: [...each.drips, reading] };
}

/** One slow pour; the reading of what ran out is worth having, but can be left out. */
export function pour(each, ml, reading, now) {
  return { ...each, log: [...rested(each, now), word("pour", ml, reading)], last: now };
}

/** After every pot's turn: the next round, or the night when the morning's pours are done. */
export function advance(session, now) {
  if (!active(session).length) return { ...session, phase: "done", until: null };
  if (session.phase === "drips") return { ...session, phase: "pours", round: 1, until: null };
  if (session.round < POURS) {
    return { ...session, round: session.round + 1, until: now + REST_MS };
  }
  return { ...session, phase: "night", round: 0, until: null };
}

/** What is left of a countdown, as 59:09, never below zero. */
export function clock(until, now) {
  const left = Math.max(0, Math.ceil((until - now) / 1000));
  const pad = (part) => String(part).padStart(2, "0");
  const [h, m, s] = [Math.floor(left / 3600), Math.floor(left / 60) % 60, left % 60];
  return (h ? `${h}:${pad(m)}` : `${m}`) + `:${pad(s)}`;
}

const FACTS = ["name", "pot_l", "grain_mm", "stage", "kind"];

/** The session as a link's fragment. */
export function toLink(session) {
  const inputs = { rinse: session.rinse };
  session.pots.forEach((each, at) => {
    for (const fact of FACTS) inputs[`${fact}${at + 1}`] = each[fact];
    if (each.log.length) inputs[`log${at + 1}`] = each.log;
  });
  const names = Object.keys(inputs).map((name) => ({ name }));
  return fragment({ id: "session", version: 1, inputs: names }, inputs);
}

const EVENT = /^(drip:\d+(\.\d+)?|pour:\d+(\.\d+)?(:\d+(\.\d+)?)?|rest:\d+(\.\d+)?)$/;

/** A session from a parsed link, or null where it holds none; what cannot be read is left out. */
export function fromLink({ id, values }) {
  if (id !== "session") return null;
  const session = { ...fresh(), rinse: positive(values.rinse), phase: "drips" };
  for (let at = 1; at <= MOST_POTS; at++) {
    const pot_l = positive(values[`pot_l${at}`]);
    const grain_mm = positive(values[`grain_mm${at}`]);
    if (pot_l === null || grain_mm === null) continue;
    const name = (values[`name${at}`] ?? `Pot ${at}`).slice(0, 60);
    const [stage, kind] = ["stage", "kind"].map((fact) =>
      (values[fact + at] ?? "").replace(/[^a-z_]/g, ""),
    );
    const log = (values[`log${at}`] ?? "").split(",").filter((word) => EVENT.test(word));
    const drips = log.filter((word) => word.startsWith("drip:")).map((word) => Number(word.slice(5)));
    session.pots.push({ ...pot({ name, pot_l, grain_mm, stage, kind }), log, drips });
  }
  return session.pots.length && session.rinse !== null ? session : null;
}

function positive(text) {
  const value = Number(text);
  return text && Number.isFinite(value) && value >= 0 && value < 1e5 ? value : null;
}
