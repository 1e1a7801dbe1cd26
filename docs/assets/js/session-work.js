// Flush day's screens once the pots are chosen: the night, the first drips, the pours, the end.

import { make } from "./make.js";
import { judged } from "./session-asked.js";
import { actions, button, main, numberField, quiet, reading, say, told } from "./session-parts.js";
import * as step from "./session.js";
import { number } from "./shown.js";

const SOUR = "Stopped at a sour smell or in the cold. Look inside before any more water.";

const form = (day) => day.forms["flush-plan"];
const pictures = (day, all) => told(form(day), day.session.pots, all);
const covered = (day) =>
  actions(
    main("They are covered now", () => day.change({ phase: "drips", covered: Date.now() })),
  );

export function evening(day) {
  day.put("This evening: half an hour", day.aside("words", "evening"), covered(day), day.foot());
}

export function night(day) {
  const words = day.aside("words", "night");
  day.put("Done for today", words, covered(day), ...pictures(day), day.foot());
}

/** Morning: the first drips, pot by pot. */
export function drips(day) {
  const { session } = day;
  const since = session.covered;
  const waiting = step.active(session).find(({ read }) => !(read && read >= (since ?? 0)));
  if (!waiting) return day.go(step.advance(session, Date.now()));
  const stood = since ? (Date.now() - since) / 3_600_000 : null;
  const drip = reading(
    form(day),
    "drip",
    `First drips of ${waiting.name}`,
    "pour 10 mL at a time over the whole top until the drips cover the pen",
  );
  const hours = numberField(
    form(day),
    { name: "hours", label: "Hours it stood covered", kind: "number", unit: "", low: 0, high: 336 },
    stood === null ? "12" : String(Math.max(0, Math.round(stood * 10) / 10)),
  );
  const take = async () => {
    const [value, rest] = [drip.value(), hours.value()];
    if (value === undefined || rest === undefined) return;
    const now = Date.now();
    const read = { ...step.drip(waiting, value, now, rest), read: now };
    await day.learn(waiting, read, rest);
  };
  const leave = () => day.replace(waiting, { ...waiting, done: true, verdict: "left out" });
  day.put(
    `Morning: read ${waiting.name}`,
    stood !== null && stood < step.NIGHT_H && say(early(stood), "salt-warnings"),
    drip.box,
    hours.box,
    actions(main("Take this reading", take), button("Leave this pot out", leave)),
    ...pictures(day),
    day.foot(),
  );
}

function early(stood) {
  const time = stood < 1 ? "less than an hour" : `${number(stood, 2)} h`;
  return (
    `Covered for ${time} so far. Before 8 h the drips read the water between the granules, not the ` +
    "granules: come back in the morning, this page waits for you."
  );
}

export function pours(day) {
  const { session } = day;
  const { round, until } = session;
  if (until && until > Date.now()) return resting(day);
  const turns = step.active(session);
  const waiting = turns.find(({ poured = 0, before = 0 }) => poured < round + before);
  if (!waiting) return day.go(counted(day, step.advance(session, day.roundStart ?? Date.now())));
  const ml = waiting.each_ml ?? waiting.pot_l * 150;
  const hint = "the last of it; leave it empty if you like";
  const ran = reading(form(day), "ran", "What ran out reads", hint, true);
  const timer = clock();
  const start = () => day.wait(Date.now() + 180_000, timer);
  const done = async () => {
    const value = ran.value();
    if (value === undefined) return;
    const now = Date.now();
    if (!day.roundStart || waiting === turns[0]) day.roundStart = now;
    const poured = (waiting.poured ?? 0) + 1;
    await day.learn(waiting, { ...step.pour(waiting, ml, value, now), poured });
  };
  const sour = () => day.replace(waiting, { ...waiting, done: true, verdict: SOUR });
  day.put(
    `Pour ${round} of ${step.POURS}: ${waiting.name}`,
    say(`${number(ml, 2)} mL, slowly, over the whole top`, "salt-number"),
    day.aside("words", "pours"),
    actions(button("Start three minutes", start), main("Poured", done)),
    timer,
    ran.box,
    make("p", {}, quiet("Sour smell, or it turned cold: stop this pot", sour)),
    ...pictures(day),
    day.foot(),
  );
}

const clock = () => make("p", { class: "salt-clock", role: "timer" });

/** A new morning starts its count of pours from where the pot stands, and judges anew. */
function counted(day, session) {
  day.roundStart = null;
  if (session.phase !== "night") return session;
  const pots = session.pots.map((each) => ({
    ...each,
    before: each.poured ?? 0,
    verdict: each.done ? each.verdict : null,
  }));
  return { ...session, pots };
}

function resting(day) {
  const timer = clock();
  day.put(
    "Rest",
    day.aside("words", "rest"),
    timer,
    actions(button("Go on now", () => day.change({ until: null }))),
    ...pictures(day),
    day.foot(),
  );
  day.wait(day.session.until, timer, () => day.draw());
}

export function done(day) {
  day.put(
    "This flush is done",
    ...pictures(day, true),
    day.aside("words", "done"),
    day.session.pots.length && actions(button("Finish and forget", () => day.go(step.fresh()))),
    day.foot(),
  );
}
