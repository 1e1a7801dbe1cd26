// A page on paper: what is folded and belongs to the answer is opened for it, and folded again.

const FOLDED = "salt-calc details:not([open], .salt-cases), .salt-fold:not([open])";
let opened = [];

addEventListener("beforeprint", () => {
  opened = [...document.querySelectorAll(FOLDED)];
  for (const each of opened) each.open = true;
});

addEventListener("afterprint", () => {
  for (const each of opened) each.open = false;
});
