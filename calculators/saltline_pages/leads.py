"""Short addresses for print: a page with one link, of the class `salt-lead`, that leads on at once.

With script the link's address is opened with the fragment that the short address carried; without
script the browser is told to go on by itself; and the link stands there for everyone. Search
engines are told to pass it by.
"""

from __future__ import annotations

import re

from saltline_pages import bundling

LINK = re.compile(r'<a [^>]*class="salt-lead"[^>]*>.*?</a>', re.S)
CANONICAL = re.compile(r'<link rel="canonical"[^>]*>')
HREF = re.compile(r'href="([^"]+)"')


def led_on(html: str) -> str:
    """The page of a short address with what leads on; any other page as it is."""
    link = LINK.search(html)
    if link is None:
        return html
    target = HREF.findall(link[0])[0]
    meta = (
        '<meta name="robots" content="noindex">'
        f'<noscript><meta http-equiv="refresh" content="0; url={target}"></noscript>'
    )
    script = f"<script>{bundling.script('lead.js').decode()}</script>"
    html = CANONICAL.sub("", html[: link.end()] + script + html[link.end() :])
    return html.replace("</head>", f"{meta}</head>", 1)
