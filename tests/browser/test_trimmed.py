"""A trimmed page says the same: the same elements, one in the other, with the same words."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Browser

from saltline_pages.trimmed import trimmed

PAGE = """<!doctype html><html><head><title>A page</title>
<script>__md_scope=new URL(".",location),__md_set=e=>(e<<5)</script>
</head>
<body>
<nav><ul>
<li class="a">
<a href="x/" class="md-nav__link">
One
</a>
</li>
<li><p>Two <b>bold</b>
<i>words</i></p></li>
</ul></nav>
<dl><dt>EC</dt><dd>1.2</dd><dd>high</dd><dt>pH</dt><dd>6</dd></dl>
<select><option value="1">One</option><option>Two</option></select>
<table><thead><tr><th>Salt</th><th>mg</th></tr></thead>
<tbody><tr><td>K</td><td></td></tr><tr><td>Ca</td><td>2</td></tr></tbody></table>
<ol><li>a<ul><li>b</li></ul></li><li>c</li></ol>
<img src="assets/icons/icon.svg" alt="logo">
</body></html>"""
# Every element with its place, its class and the words in it, white space told as one blank.
SEEN = """(html) => [...new DOMParser().parseFromString(html, "text/html").querySelectorAll("*")]
  .filter((one) => one.localName !== "script")
  .map((one) => {
    const place = [];
    for (let up = one; up; up = up.parentElement) place.push(up.localName);
    const words = one.localName === "head" ? "" : one.textContent.trim().split(/\\s+/).join(" ");
    return [place.join(" "), one.className, one.children.length ? "" : words];
  })"""


def seen(browser: Browser, html: str) -> list[Any]:
    page = browser.new_page()
    try:
        found: list[Any] = page.evaluate(SEEN, html)
        return found
    finally:
        page.close()


def test_a_trimmed_page_is_the_same_page(browser: Browser) -> None:
    short = trimmed(PAGE)
    assert len(short) < 0.8 * len(PAGE)
    assert seen(browser, short) == seen(browser, PAGE)


def test_what_is_preformatted_keeps_its_lines() -> None:
    assert "<pre>a\n<p>b" in trimmed("<pre>a\n<p>b</p></pre>")


def test_scripts_of_ours_stay() -> None:
    ours = "<script>begin()</script>"
    assert trimmed(f"{ours}<script>var target=document.x</script>{ours}") == ours * 2
