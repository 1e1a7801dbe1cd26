"""Sheets for paper, in docs/sheets/: what is on them beside plain Markdown, and the list of them.

A sheet repeats no page: it takes sections of the care pages as they stand, and its cautions and
figures from the tables.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable, Iterator, Mapping
from html import escape
from pathlib import Path

from saltline_pages.cite import CITATION, LEVELS, Source, cite, plain, short_name, tag
from saltline_pages.tables import load

PART = re.compile(r"^\[\[(part|lead) ([a-z/-]+): ([^\]]+)\]\]\s*$")
TABLE = re.compile(r"^\[\[table ([a-z0-9-]+)\]\]$")
LINK = re.compile(r"(?<!\[)\[([^\]\[]+)\]\([^)]*\)")
BLANK = re.compile(r"_{2,}")

TAGS = 10  # on one A4
TAG = (
    "Name ___",
    "Pot ___ L, keeps ___ mL",
    "Granules ___ mm, in on ___",
    "Beads ___ g, in on ___",
    "look on ___ out by ___",
    "Feed ___ Flushed ___",
)
LABELS = 2
LABEL = (
    "Product ___ Batch ___",
    "N ___ % (urea N ___ %) P₂O₅ ___ % K₂O ___ %",
    "Packed on ___ by ___ Weight ___ g",
    "We use ___ g in 1 L: ___ ppm N, which adds ___ mS/cm",
    "Poison centre: ___",
)
# The rows of the table of cautions that a tub of feed needs.
CAUTIONS = ("Fertilizer and beads", "Left-over feed", "Hose in a feed can", "Bleach")
FIRST = "The maker’s label and safety sheet belong to this tub, and come first."


def with_parts(lines: list[str], docs: Path) -> Iterator[str]:
    """The lines of a page, with sections of others in place of `[[part ...]]` and `[[lead ...]]`.

    On paper no link can be followed, so the words alone of a link are taken.
    """
    for line in lines:
        found = PART.match(line)
        if found is None:
            yield line
            continue
        kind, page, heading = found.groups()
        text = section((docs / f"{page}.md").read_text(encoding="utf-8"), heading)
        text = text.partition("\n\n")[0] if kind == "lead" else text
        yield from LINK.sub(r"\1", text).split("\n")


def section(page: str, heading: str) -> str:
    """What stands beneath a heading of a page, down to the next one."""
    below = re.split(rf"^#+ {re.escape(heading)}$", page, maxsplit=1, flags=re.MULTILINE)
    if len(below) == 1:
        raise ValueError(f"a sheet takes the section '{heading}', which is not on its page")
    return re.split(r"^#+ ", below[1], maxsplit=1, flags=re.MULTILINE)[0].strip()


def works(lines: list[str], tables: Path, sources: Mapping[str, Source]) -> str:
    """The works that a sheet leans on, in full, as paper has no link to the page of sources."""
    keys = [mark[1] for line in lines for mark in CITATION.finditer(line)]
    for line in lines:
        if found := TABLE.match(line):
            keys += load(tables / f"{found[1]}.json").source_keys()
    cited = sorted({key: sources[key] for key in keys}.values(), key=short_name)
    cited = [source for source in cited if source["level"] != "common practice"]
    entries = "".join(
        f"<li><b>{escape(short_name(source))}</b> {tag(source['level'])} {escape(plain(source))}"
        "</li>"
        for source in cited
    )
    return f'<footer class="salt-works"><p><b>Sources</b></p><ul>{entries}</ul></footer>'


def works_by_level(keys: Iterable[str], sources: Mapping[str, Source], root: str) -> str:
    """The works behind a long sheet by their short names, by how they were read."""
    cited = sorted({key: sources[key] for key in keys}.values(), key=short_name)
    told = []
    for level in LEVELS:
        named = "; ".join(
            f'<a href="{root}sources/#{source["id"]}">{escape(short_name(source))}</a>'
            for source in cited
            if source["level"] == level
        )
        told += [f"<b>{level.capitalize()}:</b> {named}."] if named else []
    return f'<footer class="salt-works"><p><b>Sources.</b> {" ".join(told)}</p></footer>'


def fields(line: str) -> str:
    """A line of words with rules to write on, wherever two or more `_` stand."""
    words = [f"<span>{escape(part.strip())}</span>" for part in BLANK.split(line)]
    ruled = '<span class="salt-blank"></span>'.join(words)
    return f'<p class="salt-fields">{ruled}</p>'.replace("<span></span>", "")


def head() -> str:
    """The line above a sheet; `salt-head.js` fills in the club, where a link has set one."""
    return f"<salt-head>{fields('Club ___ Date ___')}</salt-head>"


def ruled(asked: str) -> str:
    """An empty table to write in: `ROWS: heading; heading; ...`."""
    rows, _, text = asked.partition(": ")
    heads = [escape(name.strip()) for name in text.split(";")]
    titles = "".join(f'<th scope="col">{name}</th>' for name in heads)
    row = "<tr>" + "".join(f'<td data-label="{name}"></td>' for name in heads) + "</tr>"
    return (
        f'<div class="salt-plain salt-ruled"><table><thead><tr>{titles}</tr></thead>'
        f"<tbody>{row * int(rows)}</tbody></table></div>"
    )


def pot_tags() -> str:
    """Tags to cut out."""
    one = "<li>" + "".join(map(fields, TAG)) + "</li>"
    return f'<ul class="salt-cut">{one * TAGS}</ul>'


def feed_labels(tables: Path, sources: Mapping[str, Source], root: str) -> str:
    """Labels for a tub of feed to cut out, and where their cautions come from."""
    with (tables / "cautions.csv").open(encoding="utf-8", newline="") as file:
        rows = {row["hazard"]: row for row in csv.DictReader(file)}
    cautions = [rows[hazard] for hazard in CAUTIONS]
    told = "".join(f"<li><b>{row['hazard']}:</b> {escape(row['do'])}.</li>" for row in cautions)
    one = (
        "<li><p><b>Fertilizer. Not food, not a drink.</b></p>"
        f"{''.join(map(fields, LABEL))}<ul>{told}</ul><p>{FIRST}</p></li>"
    )
    cited = "; ".join(
        cite(sources[row["source"]], row["locator"], root, row["level"]) for row in cautions
    )
    return (
        f'<ul class="salt-cut salt-labels">{one * LABELS}</ul>'
        f'<footer class="salt-works"><p><b>Sources of the cautions:</b> {cited}.</p></footer>'
    )


def names(docs: Path) -> list[str]:
    """Every sheet, by the name of its page and its PDF."""
    return sorted(path.stem for path in (docs / "sheets").glob("*.md"))


def listed(docs: Path, root: str) -> str:
    """Every sheet with its page and its PDF."""
    entries = ""
    for name in names(docs):
        text = (docs / "sheets" / f"{name}.md").read_text(encoding="utf-8")
        title, told = (
            re.findall(start, text, re.MULTILINE)[0]
            for start in (r"^# (.+)", r"^description: (.+)")
        )
        entries += (
            f'<li><a href="{root}sheets/{name}/">{escape(title)}</a>{pdf_link(name, root, title)}'
            f"<br>{escape(told)}</li>"
        )
    return f'<ul class="salt-sheets">{entries}</ul>'


def pdf_link(name: str, root: str, title: str = "") -> str:
    """A link to a sheet as a PDF; a build without a browser takes it away again."""
    named = f' aria-label="PDF: {escape(title)}"' if title else ""
    words = "PDF" if title else "This sheet as a PDF"
    return f'<a class="salt-pdf" href="{root}sheets/{name}.pdf"{named}>{words}</a>'


def without_pdfs(html: str) -> str:
    """A page that offers no PDFs."""
    return re.sub(r'(<p>)?<a class="salt-pdf".*?</a>(?(1)</p>)', "", html)
