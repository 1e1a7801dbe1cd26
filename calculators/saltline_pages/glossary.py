"""The glossary: its page, and links to it at the first use of a term on other pages.

docs/glossary.json is a list of terms: `term`, `plain` (what it is, in plain words), and optionally
`symbol`, `unit`, `also` (other names) and `link` (false for words that common speech uses in other
senses, which are explained but never linked).
"""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from html import escape
from html.parser import HTMLParser
from pathlib import Path
from typing import NamedTuple

# Elements inside which no term is linked, and elements that have no inside.
LEFT_ALONE = (
    *("h1", "h2", "h3", "h4", "h5", "h6", "a", "button", "label", "nav", "footer"),
    *("code", "pre", "script", "style", "svg", "math", "salt-calc", "th", "td", "figcaption"),
    *("dl", "summary", "select", "template"),
)
VOID = (
    *("area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source"),
    *("track", "wbr"),
)


class Term(NamedTuple):
    term: str
    plain: str
    symbol: str = ""
    unit: str = ""
    also: tuple[str, ...] = ()
    link: bool = True

    @property
    def anchor(self) -> str:
        """The term's id on the glossary page."""
        return re.sub(r"[^a-z0-9]+", "-", self.term.lower()).strip("-")


def load(path: Path) -> list[Term]:
    """The terms of docs/glossary.json, in alphabetical order."""
    entries = json.loads(path.read_text(encoding="utf-8"))
    terms = [Term(**entry | {"also": tuple(entry.get("also", ()))}) for entry in entries]
    return sorted(terms, key=lambda term: term.term.lower())


def glossary_html(terms: Sequence[Term]) -> str:
    """The list of all terms with symbol, unit, plain words and other names."""
    return f'<dl class="salt-glossary">{"".join(_entry(term) for term in terms)}</dl>'


def _entry(term: Term) -> str:
    symbol = f" <i>{escape(term.symbol)}</i>" if term.symbol else ""
    unit = f' <span class="unit">{escape(term.unit)}</span>' if term.unit else ""
    also = f" Also: {escape(', '.join(term.also))}." if term.also else ""
    return (
        f'<div id="{term.anchor}"><dt>{escape(term.term)}{symbol}{unit}</dt>'
        f"<dd>{escape(term.plain)}{also}</dd></div>"
    )


def link_terms(html: str, terms: Sequence[Term], root: str) -> str:
    """The page's HTML with the first use of each term linked to the glossary."""
    linker = _Linker(terms, root)
    linker.feed(html)
    linker.close()
    return "".join(linker.out)


class _Linker(HTMLParser):
    """Copies the HTML as it stands and replaces words in the text that may be linked."""

    def __init__(self, terms: Sequence[Term], root: str) -> None:
        super().__init__(convert_charrefs=False)
        self.out: list[str] = []
        self.root = root
        self.closed: list[str] = []  # open elements that are left alone
        self.done: set[Term] = set()
        self.named = {
            name.lower(): term for term in terms if term.link for name in (term.term, *term.also)
        }
        longest_first = sorted(map(re.escape, self.named), key=len, reverse=True)
        self.names = re.compile(rf"(?<![\w-])(?:{'|'.join(longest_first)})(?![\w-])", re.I)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.out.append(self.get_starttag_text() or "")
        if (tag in LEFT_ALONE or self.closed) and tag not in VOID:
            self.closed.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.out.append(self.get_starttag_text() or "")

    def handle_endtag(self, tag: str) -> None:
        self.out.append(f"</{tag}>")
        if tag in self.closed:
            while self.closed.pop() != tag:
                pass

    def handle_data(self, data: str) -> None:
        self.out.append(data if self.closed else self.names.sub(self._linked, data))

    def handle_entityref(self, name: str) -> None:
        self.out.append(f"&{name};")

    def handle_charref(self, name: str) -> None:
        self.out.append(f"&#{name};")

    def handle_comment(self, data: str) -> None:
        self.out.append(f"<!--{data}-->")

    def handle_decl(self, decl: str) -> None:
        self.out.append(f"<!{decl}>")

    def _linked(self, found: re.Match[str]) -> str:
        term = self.named[found[0].lower()]
        if term in self.done:
            return found[0]
        self.done.add(term)
        link = f"{escape(self.root)}glossary/#{term.anchor}"
        return f'<a class="salt-term" href="{link}">{found[0]}</a>'
