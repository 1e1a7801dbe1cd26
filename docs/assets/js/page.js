// On every page: the menu's small manners, the search when it is wanted, and the copy for later.

import { parsed } from "./parsed.js";

const toggle = (name) => document.getElementById(`__${name}`);
let fetching = false;

/** The theme's script, its index and their styles are only needed for the search: they come now. */
function wake() {
  const parts = document.getElementById("salt-search");
  if (!parts || fetching) return;
  fetching = true;
  const { style, script } = JSON.parse(parts.textContent);
  const look = document.createElement("link");
  look.rel = "stylesheet";
  look.href = style;
  document.querySelector("link[rel=stylesheet]").before(look); // our own rules stay the last
  const run = document.createElement("script");
  run.src = script;
  run.onload = () => parts.remove();
  run.onerror = () => {
    fetching = false;
    document.querySelector(".md-search-result__meta").textContent =
      "The search did not arrive. Try again when there is a network.";
  };
  document.body.append(run);
}

parsed(() => {
  const field = document.querySelector(".md-search__input");
  field?.addEventListener("focus", wake);
  // Words that are pasted, dictated or suggested press no key, and the theme's script waits for one.
  field?.addEventListener("input", () => field.dispatchEvent(new Event("keyup")));
  toggle("search")?.addEventListener("change", ({ target }) => {
    if (!target.checked) return;
    wake();
    field.focus();
  });
});

// A club's link sets the site; what reads it is only fetched then.
parsed(() => {
  if (location.hash.startsWith("#club")) import("./club.js").catch(() => {});
});
addEventListener("hashchange", () => {
  if (location.hash.startsWith("#club=")) location.reload();
});

// A link to what stands in a fold opens it; not every browser does so by itself.
function unfold() {
  const target = document.getElementById(location.hash.slice(1));
  const fold = target?.closest("details:not([open])");
  if (!fold) return;
  fold.open = true;
  target.scrollIntoView();
}
addEventListener("hashchange", unfold);
parsed(unfold);

// The rest of what the theme's script does on a page without a search: links close the menu.
addEventListener("hashchange", () => {
  toggle("drawer").checked = false;
});

// What can wait until the page has answered, or has had time to.
const PATIENCE = 10_000; // milliseconds
function rest() {
  import("./offline.js").then(({ begin }) => begin()).catch(() => {});
  if (document.querySelector("salt-events")) import("./salt-events.js").catch(() => {});
}
parsed(() => {
  const waits = document.querySelector("salt-calc") && !document.querySelector("[data-state=live]");
  if (!waits) return rest();
  const once = () => {
    clearTimeout(patience);
    document.removeEventListener("salt:answer", once);
    setTimeout(rest, 100); // the answer is drawn first
  };
  const patience = setTimeout(once, PATIENCE);
  document.addEventListener("salt:answer", once);
});
