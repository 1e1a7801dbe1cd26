// A link that sets the site for a club, opened on any page: sets it, says so, and takes it back.

import { parse } from "./link.js";
import { make } from "./make.js";
import { inWords, set, undo, usable } from "./settings.js";
import { recall } from "./store.js";

const NOTHING = "This browser keeps nothing between visits, so the club’s settings could not be kept.";

/** Load the page again, so that all of it wears the settings; the mark says what to tell then. */
function again(mark) {
  history.replaceState(history.state, "", location.pathname + location.search + mark);
  location.reload();
}

function say(text, button = "") {
  const bar = make("div", { class: "salt-club" }, make("p", { role: "status" }, text), button);
  document.querySelector(".md-content__inner").prepend(bar);
  history.replaceState(history.state, "", location.pathname + location.search);
}

const link = parse(location.hash);
const settings = recall("club")?.settings;
if (link?.id === "club") {
  const found = usable(link.values);
  if (!Object.keys(found).length) say("This link held no settings that can be used here.");
  else if (set(found)) again("#club");
  else say(NOTHING);
} else if (location.hash === "#club" && settings) {
  const button = make("button", { type: "button" }, "Undo");
  button.addEventListener("click", () => {
    undo();
    again("#club-undone");
  });
  const more = inWords(settings);
  say(`Set for ${settings.name ?? "your club"}${more && `: ${more}`}. It stays on this device.`, button);
} else if (location.hash === "#club-undone") {
  say("Taken back. The site is as it was before.");
}
