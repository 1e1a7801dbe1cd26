// Inlined at the top of the body of every page, in words that very old browsers understand: the
// colours the system asks for, the rest of the styles once the page has answered, and whether this
// browser can run our elements at all. Where it cannot, the page keeps the class `no-js` and the
// sentence that goes with it.

(function () {
  var page = document.documentElement;
  var dark = window.matchMedia && matchMedia("(prefers-color-scheme: dark)");
  function paint() {
    document.body.setAttribute("data-md-color-scheme", dark.matches ? "slate" : "default");
  }
  if (dark) {
    paint();
    if (dark.addEventListener) dark.addEventListener("change", paint);
  }
  // A page that calculates begins with the styles of what it shows until its first answer.
  var begun = document.querySelector("link[data-whole]");
  var calculates = Boolean(begun);
  function dress() {
    if (!begun) return;
    var part = begun;
    var whole = document.createElement("link");
    begun = null;
    whole.rel = "stylesheet";
    whole.href = part.getAttribute("data-whole");
    whole.onload = function () {
      part.parentNode.removeChild(part);
    };
    part.parentNode.insertBefore(whole, part);
  }
  document.addEventListener("salt:answer", function () {
    setTimeout(dress, 0); // the answer first
  });
  setTimeout(dress, 10000); // milliseconds
  var able =
    window.customElements &&
    "noModule" in document.createElement("script") &&
    "replaceChildren" in document.body;
  if (!able) return dress();
  page.className = page.className.replace("no-js", "js");
  // A script of ours that does not arrive, or does not start, leaves the page as it was built.
  addEventListener(
    "error",
    function (event) {
      if (event.target.async || (calculates && !customElements.get("salt-calc"))) {
        page.className = page.className.replace(/\bjs\b/, "no-js");
        dress();
      }
    },
    true,
  );
})();
