// What flush day asks the science: how much to pour, what the readings of a pot say, when to stop.

import { ask } from "./engine.js";
import { question } from "./question.js";
import { NIGHT_H } from "./session.js";
import { fill } from "./shown.js";

const xml = (text) => text.replace(/[&<>"]/g, (sign) => `&#${sign.codePointAt(0)};`);
const ended = (text) => text[0].toUpperCase() + text.slice(1) + (text.endsWith(".") ? "" : ".");

/** All inputs of a calculator: what is known, and the usual value of the rest. */
const filled = ({ inputs }, known) =>
  Object.fromEntries(
    inputs.map(({ name, default: usual = null }) => [name, known[name] ?? usual]),
  );

/** A pot with how much to pour on it, or with why it stands aside. */
export async function planned({ "flush-plan": form }, pot) {
  const inputs = filled(form, { ...pot, rinse_ms_cm: 0.2 });
  const silent = { words: null, picture: null, table: null };
  const reply = await ask(question(form, inputs, silent));
  if (reply.refused) return { ...pot, aside: `${reply.refused} ${reply.instead}` };
  const at = form.results.findIndex(({ name }) => name === "each_ml");
  return { ...pot, each_ml: reply.value[at] };
}

/** What the readings of a pot say is left, and at which reading to stop. */
async function learned({ "flush-learn": form }, pot, rinse) {
  const inputs = filled(form, { ...pot, rinse_ms_cm: rinse });
  const reply = await ask(question(form, inputs));
  if (!reply.value) {
    return { said: reply.bad ?? `${reply.refused} ${reply.instead}`, picture: null, stop: null };
  }
  const values = Object.fromEntries(form.results.map(({ name }, at) => [name, reply.value[at]]));
  const put = (text, escape) => fill(text, form, inputs, values, escape);
  return {
    said: reply.words.map((text) => put(text)).filter(Boolean).map(ended).join(" "),
    picture: reply.picture && put(reply.picture, xml),
    stop: values.stop_ms_cm,
  };
}

/** A pot with what its readings say and, after a night of `rest` hours, whether to go on. */
export async function judged(forms, pot, rinse, rest = 0) {
  const { said, picture, stop } = await learned(forms, pot, rinse);
  const known = { ...pot, said, picture };
  // Drips read too soon say nothing of the granules, so they decide nothing.
  if (rest < NIGHT_H) return known;
  const reply = await ask(
    JSON.stringify({
      function: "saltline.stopping.stopping",
      arguments: { readings: pot.drips, rinse_ms_cm: rinse, stop_ms_cm: stop },
    }),
  );
  const [action, verdict] = reply.value;
  return { ...known, verdict, done: action !== "go_on" };
}
