// A calculator's answer as plain data: to keep on the device, to print, to send as text.

import { handed } from "./address.js";
import { given } from "./shown.js";

const text = (calculator, selector) => calculator.querySelector(selector)?.textContent.trim() ?? "";
const texts = (calculator, selector) =>
  [...calculator.querySelectorAll(selector)].map((each) => each.textContent.trim());

/** Whether the answer shown is that of what the fields hold now. */
export function isCurrent(calculator) {
  if (["stale", "error"].includes(calculator.dataset.state)) return false;
  if (calculator.answered) return calculator.answered === calculator.link();
  // Not answered in this page yet: the built answer is that of the built fields.
  const fields = [...calculator.querySelectorAll("input")];
  return fields.every((each) => each.value === each.defaultValue && each.checked === each.defaultChecked);
}

/** The inputs as label and value; signs that nobody looked for are left out. */
function inputs(calculator) {
  const { declared } = calculator;
  const values = calculator.read().inputs;
  return declared.inputs
    .filter(({ name }) => ![null, undefined, "", "not_looked"].includes(values[name]))
    .map((item) => [item.label, given(declared, item, values)]);
}

/** Method and sources in one line; how each was read stands in brackets. */
function method(calculator) {
  const line = calculator.querySelector(".salt-method details > p:last-of-type").cloneNode(true);
  for (const tag of line.querySelectorAll(".tag")) tag.textContent = `(${tag.textContent})`;
  return line.textContent;
}

/** The answer as it stands. */
export function record(calculator) {
  const picture = calculator.querySelector(".salt-picture svg");
  return {
    id: calculator.declared.id,
    question: text(calculator, "form > h2"),
    example: text(calculator, ".salt-example:not(.salt-gone) > span"),
    inputs: inputs(calculator),
    verdict: text(calculator, ".salt-say"),
    number: text(calculator, ".salt-number"),
    reason: text(calculator, ".salt-why"),
    steps: texts(calculator, ".salt-steps li"),
    warnings: texts(calculator, ".salt-warnings li"),
    unseen: texts(calculator, ".salt-unseen li"),
    method: method(calculator),
    picture: picture ? new XMLSerializer().serializeToString(picture) : "",
    link: handed(calculator.link()),
    date: new Date().toISOString(),
  };
}

/** A day as people write it: 25 November 2026. */
export const day = (date) =>
  new Date(date).toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });

const ASCII = [
  [/[\u00a0\u2007\u2009\u202f]/g, " "],
  [/[‘’]/g, "'"],
  [/[“”]/g, '"'],
  [/[–—−]/g, "-"],
  [/[µμ]/g, "u"],
  [/°(?=[A-Za-z])/g, "deg "],
  [/°/g, " deg"],
  [/×/g, "x"],
  [/…/g, "..."],
  [/≤/g, "<="],
  [/≥/g, ">="],
];

/** Text that any mail program keeps as it is: no signs beyond ASCII. */
export function mailSafe(words) {
  for (const [sign, plain] of ASCII) words = words.replace(sign, plain);
  return words.normalize("NFKD").replace(/[^\n -~]/g, "");
}

/** An answer as text for a message. */
export function summary({ question, example, inputs: list, verdict, number, reason, steps, warnings, ...more }) {
  const blocks = [
    [question, example],
    list.map(([label, value]) => `- ${label}: ${value}`),
    [verdict, number, reason],
    steps.map((step, at) => `${at + 1}. ${step}`),
    warnings.map((warning) => `! ${warning}`),
    ["Open it with these numbers:", more.link],
    [`Saltline, ${day(more.date)}`],
  ];
  const lines = blocks.map((block) => block.filter(Boolean).join("\n"));
  return mailSafe(lines.filter(Boolean).join("\n\n"));
}
