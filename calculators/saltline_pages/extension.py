"""The one Markdown extension: everything on a page that is not plain Markdown.

On a line of its own:
    [[calculator ID]]      a calculator, answered for its example
    [[key]]                the damage key, one question a screen
    [[damage-sheet]]       the damage key on paper
    [[sheets]]             every sheet for paper, with its page and its PDF
    [[part PAGE: HEADING]] [[lead PAGE: HEADING]]   a section, or its first paragraph
    [[head]] [[works]] [[pdf NAME]]   a sheet's first line, its works in full, its PDF
    [[fields WORDS ___]] [[ruled ROWS: HEADING; HEADING]]   to write on with a pencil
    [[pot-tags]] [[feed-labels]]   to cut out
    [[case-card]]          a case of root damage as a card and a link
    [[table NAME]]         a table of docs/tables, with its sources and its CSV
    [[tables-index]]       every table, by the page that shows it
    [[sources-list]]       every source, with each place that uses it
    [[glossary]]           every term
    [[methods]]            every calculator with the version of its method
    [[drawing NAME]]       a drawing for print
    [[pours-figure]]       how pours wash small and large granules
    [[club-form]]          a form that makes a link for a club
    [[experiment]]         one measured pot beside the model
    [[handout]]            the answers that the reader collected
    [[pot-notes]]          the last readings of a pot, kept on the device
    [[session]]            flush day, step by step
    [[licences]]           the work of others in the site
    [[said ID name=value;name=value]]   what a calculator answers, and a link that opens it so
    [[trust-summary]] [[trust-furthest]] [[trust-run]] [[trust-checks]]   how far to trust this
Inline:
    [@key, locator]        a citation
    [[open ID name=value;name=value | words]]   a link that opens a calculator filled in

A page of many questions lists them beneath its first paragraph. The first use of each term of the
glossary becomes a link to it, except on the glossary's own page.

Links to other parts of the site are written `salt-root:path`; the finishing step of the build puts
the right relative path in their place, so that this works under any generator and base path.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from html import unescape
from pathlib import Path
from typing import override
from xml.etree.ElementTree import Element, SubElement

from markdown import Extension, Markdown
from markdown.inlinepatterns import InlineProcessor
from markdown.postprocessors import Postprocessor
from markdown.preprocessors import Preprocessor
from markdown.treeprocessors import Treeprocessor

from saltline.declare import Form
from saltline.forms import all_forms
from saltline_pages import (
    cite,
    damage_sheet,
    glossary,
    licences,
    notes,
    session,
    sheets,
    shown,
    tables,
    trust,
    uses,
)
from saltline_pages.calculator import calculator
from saltline_pages.case_card import case_html
from saltline_pages.club_form import club_html
from saltline_pages.experiment import experiment_html
from saltline_pages.handout import handout_html
from saltline_pages.key import key_html
from saltline_pages.methods import methods_html
from saltline_pages.opened import PATTERN as OPEN
from saltline_pages.opened import opened, said
from saltline_pages.pours_figure import figure_html
from saltline_pages.print_drawing import drawing_html

PROJECT = Path(__file__).resolve().parent.parent.parent
DOCS = PROJECT / "docs"
ROOT = "salt-root:"
MANY = 4  # questions on a page, from which on they are listed at its top
OURS = (  # our elements
    "article",
    "calc",
    "case",
    "club",
    "experiment",
    "handout",
    "head",
    "key",
    "notes",
    "session",
    "trust",
)
DIRECTIVE = re.compile(r"^\[\[([a-z-]+)(?: ([^|\]]+))?\]\]\s*$")


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
    return cite.CITATION.sub(lambda found: citation(found[1], found[2] or ""), html)


def _form(name: str) -> Form:
    forms = all_forms()
    if name not in forms:
        raise ValueError(f"a page asks for the calculator '{name}', which is not declared")
    return forms[name]


def _calculator(name: str) -> str:
    return cited(calculator(_form(name)))


def _table(name: str) -> str:
    return tables.table_html(tables.load(DOCS / "tables" / f"{name}.json"), _sources(), ROOT)


def _tables_index(_: str) -> str:
    listed = tables.load_all(DOCS / "tables")
    return tables.tables_index(listed, _sources(), ROOT, uses.table_homes(DOCS))


def _sources_list(_: str) -> str:
    return cite.sources_list(_sources(), uses.find_uses(PROJECT), ROOT)


@cache
def _terms() -> list[glossary.Term]:
    return glossary.load(DOCS / "glossary.json")


def _glossary(_: str) -> str:
    return glossary.glossary_html(_terms())


def _home(name: str) -> str:
    """The page that holds a calculator, from the site's root; empty where none does."""
    home = uses.calculator_home(name, DOCS, uses.read_pages(DOCS))
    return home and ROOT + home


def _opens(name: str) -> str:
    """The page that a link opens a calculator on."""
    home = _home(name)
    if not home:
        raise ValueError(f"a page opens the calculator '{name}', which stands on no page")
    return home


def _said(given: str) -> str:
    name, _, values = given.partition(" ")
    return said(_form(name), values, _opens(name))


def _methods(_: str) -> str:
    return methods_html(all_forms().values(), _home)


def _cited_as(key: str, locator: str, level: str) -> str:
    return cite.cite(_sources()[key], locator, ROOT, level)


DIRECTIVES: dict[str, Callable[[str], str]] = {
    "calculator": _calculator,
    "case-card": lambda _: case_html(),
    "key": lambda _: key_html(),
    "experiment": lambda _: experiment_html(),
    "damage-sheet": lambda _: damage_sheet.sheet_html(_sources(), ROOT),
    "fields": sheets.fields,
    "head": lambda _: sheets.head(),
    "feed-labels": lambda _: sheets.feed_labels(DOCS / "tables", _sources(), ROOT),
    "pdf": lambda name: f"<p>{sheets.pdf_link(name, ROOT)}</p>",
    "pot-tags": lambda _: sheets.pot_tags(),
    "ruled": sheets.ruled,
    "sheets": lambda _: sheets.listed(DOCS, ROOT),
    "table": _table,
    "tables-index": _tables_index,
    "sources-list": _sources_list,
    "glossary": _glossary,
    "methods": _methods,
    "licences": lambda _: licences.licences_html(),
    "trust-summary": lambda _: trust.summary_html(),
    "trust-run": lambda _: trust.RUN,
    "club-form": lambda _: club_html(),
    "drawing": drawing_html,
    "pours-figure": lambda _: figure_html(tables.load(DOCS / "tables" / "pours-by-granule.json")),
    "handout": lambda _: handout_html(),
    "pot-notes": lambda _: notes.notes_html(),
    "session": lambda _: session.session_html(),
    "said": _said,
    "trust-furthest": lambda _: trust.furthest_html(_cited_as),
    "trust-checks": lambda _: trust.checks_html(_cited_as),
}


class _Directives(Preprocessor):
    """Directives become stashed HTML before any other block is read."""

    @override
    def run(self, lines: list[str]) -> list[str]:
        out: list[str] = []
        fenced = False
        lines = list(sheets.with_parts(lines, DOCS))
        directives = DIRECTIVES | {
            "works": lambda _: sheets.works(lines, DOCS / "tables", _sources()),
        }
        for line in lines:
            fenced ^= line.startswith("```")
            found = None if fenced else DIRECTIVE.match(line)
            if found is None:
                out.append(line)
                continue
            if found[1] not in directives:
                raise ValueError(f"a page asks for '{found[1]}', which is not a directive")
            html = directives[found[1]](found[2] or "")
            out += ["", self.md.htmlStash.store(html), ""]
        return out


class _Citation(InlineProcessor):
    @override
    def handleMatch(  # type: ignore[override] # the stubs know only the older processors
        self, m: re.Match[str], data: str
    ) -> tuple[str, int, int]:
        html = citation(m[1], m[2] or "")
        return self.md.htmlStash.store(html), m.start(0), m.end(0)


class _Open(InlineProcessor):
    @override
    def handleMatch(  # type: ignore[override] # the stubs know only the older processors
        self, m: re.Match[str], data: str
    ) -> tuple[str, int, int]:
        html = opened(_form(m[1]), m[2], m[3], _opens(m[1]))
        return self.md.htmlStash.store(html), m.start(0), m.end(0)


class _Labels(Treeprocessor):
    """On a phone each row of a table is a card, so every cell carries its column's heading."""

    @override
    def run(self, root: Element) -> None:
        for table in root.iter("table"):
            heads = ["".join(head.itertext()) for head in table.iter("th")]
            for row in table.iter("tr"):
                for cell, head in zip(row.findall("td"), heads, strict=False):
                    cell.set("data-label", head)


class _Questions(Treeprocessor):
    """On a page of many questions, links to them beneath its first paragraph."""

    @override
    def run(self, root: Element) -> None:
        titles = [
            one
            for title in self.md.toc_tokens  # type: ignore[attr-defined] # left there by toc
            for one in title["children"]
            if one["name"].endswith("?")
        ]
        first = next((at for at, part in enumerate(root) if part.tag == "p"), None)
        if len(titles) < MANY or first is None:
            return
        fold = Element("details", {"class": "salt-fold salt-here", "data-search-exclude": ""})
        SubElement(fold, "summary").text = f"{len(titles)} more questions on this page"
        listed = SubElement(fold, "ul")
        for one in titles:
            link = SubElement(SubElement(listed, "li"), "a", href="#" + one["id"])
            link.text = unescape(one["name"])
        root.insert(first + 1, fold)


class _Terms(Postprocessor):
    """The finished page with its terms linked; the glossary's own page is left as it is."""

    @override
    def run(self, text: str) -> str:
        if '<dl class="salt-glossary">' in text:
            return text
        return glossary.link_terms(text, _terms(), ROOT)


# Tags, and what is no text of the page.
NO_TEXT = re.compile(r"<(script|style|svg|code|pre|template|textarea)\b.*?</\1>|<[^>]*>", re.S)


class _Figures(Postprocessor):
    """Every figure in the text stays in one line with its unit."""

    @override
    def run(self, text: str) -> str:
        done, at = "", 0
        for tag in NO_TEXT.finditer(text):
            done += shown.bound(text[at : tag.start()]) + tag[0]
            at = tag.end()
        return done + shown.bound(text[at:])


class SaltlineExtension(Extension):
    """Registers the directives, citations, links to terms, and our block-level elements."""

    @override
    def extendMarkdown(self, md: Markdown) -> None:
        # Without this an unknown tag is wrapped in <p>, and the browser then throws the form out.
        md.block_level_elements += [f"salt-{name}" for name in OURS]
        # Before raw HTML is stashed (20) but after line endings are made equal (30).
        md.preprocessors.register(_Directives(md), "saltline", 25)
        md.treeprocessors.register(_Labels(md), "saltline-labels", 15)
        # After the headings have their ids (5).
        md.treeprocessors.register(_Questions(md), "saltline-questions", 4)
        citation_mark = cite.CITATION.pattern
        md.inlinePatterns.register(_Citation(citation_mark, md), "saltline-citation", 175)
        md.inlinePatterns.register(_Open(OPEN, md), "saltline-open", 176)
        # After stashed HTML is back in its places (30) and all marks are written out (20).
        md.postprocessors.register(_Terms(md), "saltline-terms", 5)
        md.postprocessors.register(_Figures(md), "saltline-figures", 4)


def makeExtension(**options: object) -> SaltlineExtension:  # noqa: N802 - the name Markdown calls
    """The extension, for Markdown."""
    return SaltlineExtension(**options)
