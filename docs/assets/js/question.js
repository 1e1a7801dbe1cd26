// A calculator's question as the engine takes it: the JSON text of calculators/saltline/answering.py.

function value(item, given) {
  if (Array.isArray(given)) return `[${given.map((part) => value(item, part)).join()}]`;
  if (typeof given !== "number" || item.whole) return JSON.stringify(given);
  // A number that is not a count is written with its point, so that it stays one.
  return Number.isInteger(given) && Math.abs(given) < 1e15 ? given + ".0" : String(given);
}

/** The question of a declared calculator for these inputs; `more` is added to it. */
export function question(form, inputs, more = {}) {
  const pairs = form.inputs.map(
    (item) => `${JSON.stringify(item.name)}:${value(item, inputs[item.name])}`,
  );
  const { function: path, words, picture, table } = form;
  const rest = JSON.stringify({ function: path, words, picture, table, ...more });
  return `${rest.slice(0, -1)},"arguments":{${pairs.join()}}}`;
}
