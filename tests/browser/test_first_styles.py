"""The part of the styles that a page begins with shows it as the whole does."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from playwright.sync_api import Browser

# Places do not hang on the colours, nor colours on the width.
VIEWS = (("light", 390, 844), ("dark", 1280, 900))
# Where each visible element stands and how it looks; what is folded away looks no way.
LOOKS = """() => [...document.querySelectorAll("body, body *")]
  .filter((one) => one.checkVisibility())
  .flatMap((one) => ["", "::before", "::after"].map((part) => {
    const at = one.getBoundingClientRect();
    const look = getComputedStyle(one, part || null);
    const box = part ? "" : [at.x, at.y, at.width, at.height].map(Math.round).join(" ");
    const paint = [
      "content", "display", "color", "backgroundColor", "backgroundImage", "fontFamily", "fontSize",
      "fontWeight", "lineHeight", "textDecorationLine", "borderTop", "borderLeft", "borderRadius",
      "boxShadow", "opacity", "fill", "stroke", "maskImage",
    ].map((name) => look[name]);
    return [`${one.localName}.${one.getAttribute("class")}${part}`, box, ...paint].join(" | ");
  }))"""
# All of it drawn, in the boxes that what is out of sight has when it comes into sight.
DRAWN = """() => {
  for (const one of document.querySelectorAll("body *")) {
    const waits = getComputedStyle(one).contentVisibility === "auto";
    if (waits) one.style.contain = "layout style paint";
  }
  const sheet = new CSSStyleSheet();
  sheet.replaceSync("* { content-visibility: visible !important }");
  document.adoptedStyleSheets.push(sheet);
}"""
WHOLE = """() => new Promise((done) => {
  const part = document.querySelector("link[data-whole]");
  const whole = part.cloneNode();
  whole.href = part.dataset.whole;
  whole.onload = () => {
    part.remove();
    for (const one of document.querySelectorAll("[style*=contain]")) one.style.contain = "";
    done();
  };
  part.before(whole);
})"""


def test_the_first_styles_show_what_the_whole_sheet_shows(
    browser: Browser, address: str, calculating: list[str]
) -> None:
    for scheme, width, height in VIEWS:
        context = browser.new_context(
            viewport={"width": width, "height": height},
            color_scheme=scheme,
            service_workers="block",
        )
        page = context.new_page()
        page.route("**/*.wasm", lambda route: None)  # never replied to: as built, before any answer
        for path in calculating:
            page.goto(f"{address}{path}/", wait_until="load")
            page.wait_for_timeout(150)
            page.evaluate(DRAWN)
            first: list[Any] = page.evaluate(LOOKS)
            page.evaluate(WHOLE)
            whole: list[Any] = page.evaluate(LOOKS)
            different = [pair for pair in zip(first, whole, strict=True) if pair[0] != pair[1]]
            assert not different, (path, width, scheme, len(different), different[:2])
        context.close()


def test_a_page_begins_without_the_styles_that_it_needs_later(site: Path) -> None:
    [first] = (site / "assets").glob("first.*.css")
    text = first.read_text(encoding="utf-8")
    assert "salt-calc" in text
    for later in ("@media print", "@page", ":hover", "transition"):
        assert later not in text, later
