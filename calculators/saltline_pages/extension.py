"""The one Markdown extension: everything on a page that is not plain Markdown.

On a line of its own:
    [[calculator ID]]      a calculator, answered for its example
    [[table NAME]]         a table of docs/tables, with its sources and its CSV
    [[tables-index]]       every table
    [[sources-list]]       every source, with each place that uses it
    [[glossary]]           every term
    [[trust-summary]] [[trust-run]] [[trust-checks]]   the page "How far can I trust this?"
Inline:
    [@key, locator]        a citation

Links to other parts of the site are written `salt-root:path`; the finishing step of the build puts
the right relative path in their place, so that this works under any generator and base path.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import override

from markdown import Extension, Markdown
from markdown.inlinepatterns import InlineProcessor
from markdown.preprocessors import Preprocessor

from saltline.forms import all_forms
from saltline_pages import cite, glossary, tables, trust, uses
from saltline_pages.calculator import calculator

PROJECT = Path(__file__).resolve().parent.parent.parent
DOCS = PROJECT / "docs"
ROOT = "salt-root:"
CITATION = r"\[@([a-z0-9][a-z0-9-]*)(?:, ([^\]\[]+))?\]"
DIRECTIVE = re.compile(r"^\[\[([a-z-]+)(?: ([a-z0-9_-]+))?\]\]\s*$")


@cache
def _sources() -> dict[str, cite.Source]:
    return cite.load(DOCS / "sources.json")


def citation(key: str, locator: str) -> str:
    """A citation as a link to its source, with how it was read."""
    if key not in _sources():
        raise ValueError(f"a page cites '{key}', which is not in docs/sources.json")
    return cite.cite(_sources()[key], locator, ROOT)


def cited(html: str) -> str:
    """HTML with its citation marks turned into links."""
    return re.sub(CITATION, lambda found: citation(found[1], found[2] or ""), html)


def _calculator(name: str) -> str:
    forms = all_forms()
    if name not in forms:
        raise ValueError(f"a page asks for the calculator '{name}', which is not declared")
    return cited(calculator(forms[name]))


def _table(name: str) -> str:
    return tables.table_html(tables.load(DOCS / "tables" / f"{name}.json"), _sources(), ROOT)


def _tables_index(_: str) -> str:
    return tables.tables_index(tables.load_all(DOCS / "tables"), _sources(), ROOT)


def _sources_list(_: str) -> str:
    return cite.sources_list(_sources(), uses.find_uses(PROJECT), ROOT)


def _glossary(_: str) -> str:
    return glossary.glossary_html(glossary.load(DOCS / "glossary.json"))


def _trust_checks(_: str) -> str:
    def cited_as(key: str, locator: str, level: str) -> str:
        return cite.cite(_sources()[key], locator, ROOT, level)

    return trust.checks_html(cited_as)


DIRECTIVES: dict[str, Callable[[str], str]] = {
    "calculator": _calculator,
    "table": _table,
    "tables-index": _tables_index,
    "sources-list": _sources_list,
    "glossary": _glossary,
    "trust-summary": lambda _: trust.summary_html(),
    "trust-run": lambda _: trust.RUN,
    "trust-checks": _trust_checks,
}


class _Directives(Preprocessor):
    """Directives become stashed HTML before any other block is read."""

    @override
    def run(self, lines: list[str]) -> list[str]:
        out: list[str] = []
        fenced = False
        for line in lines:
            fenced ^= line.startswith("```")
            found = None if fenced else DIRECTIVE.match(line)
            if found is None:
                out.append(line)
                continue
            if found[1] not in DIRECTIVES:
                raise ValueError(f"a page asks for '{found[1]}', which is not a directive")
            html = DIRECTIVES[found[1]](found[2] or "")
            out += ["", self.md.htmlStash.store(html), ""]
        return out


class _Citation(InlineProcessor):
    @override
    def handleMatch(  # type: ignore[override] # the stubs know only the older processors
        self, m: re.Match[str], data: str
    ) -> tuple[str, int, int]:
        html = citation(m[1], m[2] or "")
        return self.md.htmlStash.store(html), m.start(0), m.end(0)


class SaltlineExtension(Extension):
    """Registers the directives, citations, and our block-level elements."""

    @override
    def extendMarkdown(self, md: Markdown) -> None:
        # Without this an unknown tag is wrapped in <p>, and the browser then throws the form out.
        md.block_level_elements += ["salt-calc", "salt-trust"]
        # Before raw HTML is stashed (20) but after line endings are made equal (30).
        md.preprocessors.register(_Directives(md), "saltline", 25)
        md.inlinePatterns.register(_Citation(CITATION, md), "saltline-citation", 175)


def makeExtension(**options: object) -> SaltlineExtension:  # noqa: N802 - the name Markdown calls
    """The extension, for Markdown."""
    return SaltlineExtension(**options)
