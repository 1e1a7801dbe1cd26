"""The bibliography: short citations in the text, and the page that lists every source."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Mapping
from html import escape
from pathlib import Path
from typing import Any, NamedTuple

Source = Mapping[str, Any]

# `[@key, locator]` in Markdown.
CITATION = re.compile(r"\[@([a-z0-9][a-z0-9-]*)(?:, ([^\]\[]+))?\]")

# Levels as they are printed, and what each means in plain words.
LEVELS = {
    "read": "we read the figure in the work itself",
    "opening only": "we read only an abstract, an excerpt or the first page of the work",
    "second-hand": "quoted elsewhere: we read it in another work, which is named",
    "memory": "remembered, by us or by the trade, and not yet checked in the work",
    "common practice": "growers and makers do it; no published source was found",
    "computed": "worked out by us or by a named program, not measured",
    "proposed": "our own estimate, not published anywhere",
}


class Use(NamedTuple):
    """One place where a source is used; `href` is relative to the site's root, or empty."""

    kind: str
    label: str
    href: str


def load(path: Path) -> dict[str, Source]:
    """The records of docs/sources.json by key, in the file's order."""
    return {record["id"]: record for record in json.loads(path.read_text(encoding="utf-8"))}


def short_name(source: Source) -> str:
    """How a source is called in running text: "Du et al. 2006", "ISO 7888:1985"."""
    if "title-short" in source:
        return str(source["title-short"])
    names = [author.get("family") or author["literal"] for author in source.get("author", ())]
    if len(names) > 2:
        names = [names[0] + " et al."]
    return f"{' & '.join(names) or source['title']} {year(source)}"


def year(source: Source) -> str:
    """The year of issue, or "no date"."""
    issued = source.get("issued", {})
    return str(issued["date-parts"][0][0]) if "date-parts" in issued else "no date"


def address(source: Source) -> str:
    """Where the work itself is to be found, or an empty string."""
    return f"https://doi.org/{source['DOI']}" if "DOI" in source else str(source.get("URL", ""))


def tag(level: str) -> str:
    """The small label that says how far a figure was followed to its source."""
    return f'<span class="tag">{escape(level)}</span>'


def cite(source: Source, locator: str, root: str, level: str = "") -> str:
    """A citation in the text: short name, place in the work, and level.

    `level` is that of the one figure, where it is weaker than the record's own.
    """
    text = escape(", ".join(filter(None, (short_name(source), locator))))
    link = f'<a class="salt-cite" href="{escape(root)}sources/#{escape(source["id"])}">'
    return f"{link}{text} {tag(level or source['level'])}</a>"


def plain(source: Source) -> str:
    """The whole reference as one readable line, without its address."""
    authors = "; ".join(
        author.get("literal") or f"{author['family']}, {author.get('given', '')}".rstrip(", ")
        for author in source.get("author", ())
    )
    within = str(source.get("container-title", ""))
    if "volume" in source:
        within += f" {source['volume']}" + (f"({source['issue']})" if "issue" in source else "")
    if "page" in source:
        within += f", p. {source['page']}"
    parts = (source["title"], within, source.get("publisher", ""), source.get("note", ""))
    said = ". ".join(str(part).rstrip(".") for part in parts if part)
    return f"{authors + ' ' if authors else ''}({year(source)}). {said}."


def _seen(source: Source) -> str:
    """The date on which we looked, as 2026-11-25, or an empty string."""
    parts = source.get("accessed", {}).get("date-parts", [[]])[0]
    return "-".join(f"{part:02d}" for part in parts)


def _entry(source: Source, uses: Iterable[Use], root: str) -> str:
    where = address(source)
    link = f' <a href="{escape(where)}">{escape(where)}</a>' if where else ""
    seen = _seen(source)
    looked = f" Looked at on {seen}." if seen and where else ""
    via = f"<p>Read in: {escape(source['via'])}.</p>" if "via" in source else ""
    used = "; ".join(
        f'{escape(use.kind)} <a href="{escape(root + use.href)}">{escape(use.label)}</a>'
        if use.href
        else f"{escape(use.kind)} {escape(use.label)}"
        for use in uses
    )
    return (
        f'<li id="{escape(source["id"])}">'
        f"<p><strong>{escape(short_name(source))}</strong> {tag(source['level'])}</p>"
        f"<p>{escape(plain(source))}{link}{looked}</p>{via}"
        f"<p data-search-exclude>Used in: {used or 'nothing yet'}.</p></li>"
    )


def sources_list(
    sources: Mapping[str, Source], uses: Mapping[str, Iterable[Use]], root: str
) -> str:
    """Every source with its level, address and uses; above them, what the levels mean."""
    meaning = "".join(
        f"<div><dt>{tag(level)}</dt><dd>{escape(words)}</dd></div>"
        for level, words in LEVELS.items()
    )
    entries = "".join(
        _entry(source, uses.get(key, ()), root)
        for key, source in sorted(sources.items(), key=lambda item: short_name(item[1]).lower())
    )
    return f'<dl class="salt-levels">{meaning}</dl><ul class="salt-sources">{entries}</ul>'
