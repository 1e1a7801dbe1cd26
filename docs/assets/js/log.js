// The words of a flush's log, as calculators/saltline/flush_log.py reads them.

/** A figure as the log takes it. */
const figure = (value) => String(Number(value.toPrecision(12))).replace("e+", "e");

/** One event; a figure that was not taken is left out. */
export const word = (kind, ...figures) =>
  [kind, ...figures.filter((value) => value !== null).map(figure)].join(":");
