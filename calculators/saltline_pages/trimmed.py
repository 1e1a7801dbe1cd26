"""A page of the theme without what HTML lets a writer leave out, or what our pages do not have.

Forty pages are kept on a reader's device at the first visit, and a phone reads each of them.
"""

from __future__ import annotations

import re

# Ends before the next of their kind, or before the end of all.
ENDS = re.compile(
    r"</t[dh]>(?=\s*<(?:t[dh]\b|/tr>))|</tr>(?=\s*<(?:tr\b|/tbody>|/thead>))"
    r"|</li>(?=\s*<(?:li\b|/[ou]l>))|</option>(?=\s*<(?:option\b|/select>))"
    r"|</d[dt]>(?=\s*<d[dt]\b)|</dd>(?=\s*</dl>)"
)
# Line ends before what begins a line by itself.
BREAKS = re.compile(
    r"(?<=>)\n(?=</?(?:li|[ou]l|dl|d[dt]|nav|div|main|header|footer|article|h[1-6]|p|form|script"
    r"|link|meta|title)\b)"
)
# The theme's inline scripts for palettes, announcements and tabs, and its words for buttons.
SCRIPTS = re.compile(r"<script>(?:__md_scope=|var target=document).*?</script>", re.S)
WORDS = re.compile(r'"clipboard\.[a-z.]+": "[^"]*", |, "select\.version": "[^"]*"')
# Icons, four on every page: inside a page they need no name space, and our glass is half as long.
ICON = re.compile(r'<svg xmlns="[^"]*" (viewBox="0 0 24 24">)')
GLASS = re.compile(r'<path d="M9\.5 3A6\.5[^"]*"/>')
OUR_GLASS = (
    '<path d="M16 10a6 6 0 1 1-12 0 6 6 0 0 1 12 0m-1 5 6 6"'
    ' fill="none" stroke="currentColor" stroke-width="2"/>'
)
LOGO = re.compile(r'(<img src="[^"]*icon\.svg" alt="logo")>')  # which a narrow page does not show
LATER = r'\1 width="24" height="24" loading="lazy">'


def trimmed(html: str) -> str:
    """The page, shorter, and the same to a reader."""
    for needless in (SCRIPTS, WORDS, ENDS):
        html = needless.sub("", html)
    html = GLASS.sub(OUR_GLASS, ICON.sub(r"<svg \1", LOGO.sub(LATER, html)))
    # The theme's pages are a third white space.
    return html if "<pre" in html else BREAKS.sub("", re.sub(r"\s*\n\s*", "\n", html))
