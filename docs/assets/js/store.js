// What this device remembers for the reader: units, the pen's scale, the tap, facts of the pot. It
// never leaves the device, and everything works where nothing can be kept.

const KEY = "saltline";

/** Inputs that mean the same thing on every page, by the name they are kept under. */
const FACTS = {
  rinse_ms_cm: "tap_ms_cm",
  tap_ms_cm: "tap_ms_cm",
  water_ms_cm: "tap_ms_cm",
  feed_ms_cm: "feed_ms_cm",
  pot_l: "pot_l",
  water_held_ml: "water_held_ml",
  grain_mm: "grain_mm",
  pot_height_mm: "pot_height_mm",
  scale: "scale",
  stage: "stage",
  kind: "kind",
  hemisphere: "hemisphere",
};

/** What a reader calls them, the most telling first. */
const NAMES = {
  tap_ms_cm: "tap",
  pot_l: "pot",
  grain_mm: "granules",
  water_held_ml: "water kept",
  feed_ms_cm: "feed",
  pot_height_mm: "height",
  scale: "pen",
  stage: "plant",
  kind: "kind",
  hemisphere: "half of the world",
};

function all() {
  try {
    const found = JSON.parse(localStorage.getItem(KEY));
    return found && typeof found === "object" ? found : {};
  } catch {
    return {};
  }
}

/** One thing kept, or undefined. */
export const recall = (name) => all()[name];

/** Keep one thing; false where the device keeps nothing. */
export function keep(name, value) {
  try {
    localStorage.setItem(KEY, JSON.stringify({ ...all(), [name]: value }));
    return true;
  } catch {
    return false;
  }
}

/** The kept value of an input, or undefined. */
export const fact = (input) => recall("facts")?.[FACTS[input]];

/** What a reader calls an input that is kept. */
export const factName = (input) => NAMES[FACTS[input]];

/** Sorts inputs that are kept, the most telling first. */
export const byName = (one, other) => place(one) - place(other);
const place = ({ name }) => Object.keys(NAMES).indexOf(FACTS[name]);

/** Keep what the reader said of the tap, the pen or the pot. */
export function keepFacts(inputs) {
  const said = Object.entries(inputs).filter(
    ([name, value]) => name in FACTS && value !== null && value !== "",
  );
  if (!said.length) return;
  keep("facts", { ...recall("facts"), ...Object.fromEntries(said.map(([n, v]) => [FACTS[n], v])) });
}

/** Forget the facts. */
export const forgetFacts = () => keep("facts", {});

const MOST_ANSWERS = 12;

/** The answers on the reader's sheet, oldest first. */
export const answers = () => recall("sheet") ?? [];

/** Keep all answers of the sheet; false where they do not fit. */
export const keepAnswers = (list) => list.length <= MOST_ANSWERS && keep("sheet", list);

/** Put one more answer on the sheet. */
export const addAnswer = (answer) => keepAnswers([...answers(), answer]);
