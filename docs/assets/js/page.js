// On every page: the theme's whole style and its script follow once the answer is there, so that
// they do not delay it. Until then the page wears the part of the theme that it shows.

const PATIENCE = 4000; // milliseconds, where no answer comes

function follow() {
  const theme = document.getElementById("salt-theme");
  if (!theme) return; // it is on its way already
  theme.remove();
  const { styles, script } = JSON.parse(theme.textContent);
  const own = document.head.querySelector("style");
  for (const href of styles) {
    const link = document.createElement("link");
    link.rel = "stylesheet";
    link.href = href;
    own.before(link); // our own rules stay the last
  }
  const run = document.createElement("script");
  run.src = script;
  document.body.append(run);
}

if (!document.querySelector("salt-calc")) follow();
else {
  document.addEventListener("salt:answer", () => setTimeout(follow, 100), { once: true });
  addEventListener("pointerdown", follow, { once: true, capture: true });
  addEventListener("keydown", follow, { once: true, capture: true });
  setTimeout(follow, PATIENCE);
}
