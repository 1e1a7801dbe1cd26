"""What every page must keep to, read from its Markdown with markdown-it-py."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

from markdown_it import MarkdownIt
from markdown_it.token import Token

from saltline_pages.cite import CITATION

# A promise nobody can keep, or a word that blames the reader.
BANNED = re.compile(
    r"\b(simply|obviously|of course|guaranteed?|perfect(ly)?|100 % safe|safe level|oops|sorry|"
    r"please|invalid|clean pot|pot is clean)\b|!(?=\s|$)",
    re.I,
)
# A figure with a unit of the trade: it needs a citation in its paragraph, or a calculator's number.
FIGURE = re.compile(
    r"(?<![\w.])\d[\d.,]*(?:\s?[-–]\s?\d[\d.,]*)?\s?(?:mS/cm|µS/cm|dS/m|ppm|mg/L|mmol/L|meq/L|bar)"
)
DIRECTIVE = re.compile(r"^\[\[([a-z-]+)(?: ([^\]|]+))?", re.M)


def troubles(path: Path) -> Iterator[str]:
    """Every rule that a page breaks, as a sentence with its line."""
    text = path.read_text(encoding="utf-8")
    front, body = _front(text)
    description = re.search(r"^description: (.+)$", front, re.M)
    if not description or not 40 <= len(description[1]) <= 160:
        yield "needs a description of 40 to 160 characters in its front matter"
    tokens = MarkdownIt("commonmark").enable("table").parse(body)
    yield from _headings(tokens)
    yield from _order(body, path)
    yield from _prose(tokens, body)


def _front(text: str) -> tuple[str, str]:
    match = re.match(r"---\n(.*?)\n---\n", text, re.S)
    return (match[1], text[match.end() :]) if match else ("", text)


def _headings(tokens: list[Token]) -> Iterator[str]:
    levels = [int(token.tag[1]) for token in tokens if token.type == "heading_open"]
    if levels.count(1) != 1 or levels[0] != 1:
        yield "needs exactly one title, first"
    for before, after in pairwise(levels):
        if after > before + 1:
            yield f"jumps from a heading of level {before} to one of level {after}"


def _order(body: str, path: Path) -> Iterator[str]:
    """On a care page the title asks, and a calculator stands before any second heading."""
    if path.parent.name != "care":
        return
    title = re.search(r"^# (.+)$", body, re.M)
    if title and not title[1].endswith("?"):
        yield "needs a title that asks a grower's question"
    calculators = [m.start() for m in DIRECTIVE.finditer(body) if m[1] == "calculator"]
    second = re.search(r"^## ", body, re.M)
    if calculators and second and calculators[0] > second.start():
        yield "has its first calculator below a second heading"


def _prose(tokens: list[Token], body: str) -> Iterator[str]:
    for token in tokens:
        if token.type != "inline":
            continue
        line = (token.map or [0])[0] + 1
        found = BANNED.search(token.content)
        if found:
            yield f"line {line}: says '{found[0]}'"
        figure = FIGURE.search(token.content)
        if figure and not _covered(token.content, line, body):
            yield f"line {line}: '{figure[0]}' has no source in its paragraph"


def _covered(content: str, line: int, body: str) -> bool:
    """Cited, a question or invented example that says so, or the words for what a field holds."""
    return bool(re.search(CITATION, content)) or "for example" in content or "[[" in content
