// On every page: the menu's small manners, the search when it is wanted, and the copy for later.

import "./offline.js";

const toggle = (name) => document.getElementById(`__${name}`);
let fetching = false;

/** The theme's script, whole style and index are only needed for the search, so they come now. */
function wake() {
  const rest = document.getElementById("salt-theme");
  if (!rest || fetching) return;
  fetching = true;
  const { styles, script } = JSON.parse(rest.textContent);
  const own = document.querySelector("link[rel=stylesheet]");
  for (const href of styles) {
    const link = document.createElement("link");
    link.rel = "stylesheet";
    link.href = href;
    own.before(link); // our own rules stay the last
  }
  const run = document.createElement("script");
  run.src = script;
  run.onload = () => rest.remove();
  run.onerror = () => {
    fetching = false;
    document.querySelector(".md-search-result__meta").textContent =
      "The search did not arrive. Try again when there is a network.";
  };
  document.body.append(run);
}

const field = document.querySelector(".md-search__input");
field?.addEventListener("focus", wake);
toggle("search")?.addEventListener("change", ({ target }) => {
  if (!target.checked) return;
  wake();
  field.focus();
});

// A club's link sets the site; what reads it is only fetched then.
if (location.hash.startsWith("#club")) import("./club.js").catch(() => {});
addEventListener("hashchange", () => {
  if (location.hash.startsWith("#club=")) location.reload();
});

// The rest of what the theme's script does on a page without a search: links close the menu.
addEventListener("hashchange", () => {
  toggle("drawer").checked = false;
});
