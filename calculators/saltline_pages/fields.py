"""What a calculator asks, as the fields of its form."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from html import escape
from typing import Any

from saltline.asking import Kind, Screen, Way
from saltline.declare import OTHER_UNITS, UNITS, Choice, Form, Input, Number, Numbers, Words
from saltline_pages import shown

MORE = "More, if you know it"


def fields(form: Form, inputs: Mapping[str, Any]) -> str:
    """All fields of a form, filled in: at once, or one question after another."""
    if form.screens:
        return _screens(form, inputs)
    few = (item.name for item in form.inputs if not item.more)
    more = (item.name for item in form.inputs if item.more)
    return _named(form, inputs, few) + _fold(MORE, _named(form, inputs, more))


def _named(form: Form, inputs: Mapping[str, Any], names: Iterable[str]) -> str:
    return "".join(_asked(form, form.input(name), inputs) for name in names)


def _fold(title: str, within: str) -> str:
    summary = f"<summary>{escape(title)}</summary>"
    return f'<details class="salt-more">{summary}{within}</details>' if within else ""


def _asked(form: Form, item: Input, inputs: Mapping[str, Any]) -> str:
    if isinstance(item, Words) and item.kinds:
        return _events(form, item, inputs)
    return field(form, item, inputs)


def _screens(form: Form, inputs: Mapping[str, Any]) -> str:
    """One section a question; where a script runs, one at a time is in sight."""
    made = ""
    for at, screen in enumerate(form.screens):
        key = f"{form.id}-question-{at + 1}"
        hint = f'<p class="salt-hint">{escape(screen.hint)}</p>' if screen.hint else ""
        made += (
            f'<section{"" if at else ' class="salt-now"'} aria-labelledby="{key}">'
            f'<h3 id="{key}" tabindex="-1"><small>{at + 1} of {len(form.screens)}</small> '
            f"{escape(screen.question)}</h3>{hint}"
            f"{_ways(form, screen, inputs)}{_named(form, inputs, screen.inputs)}"
            f"{_fold(screen.fold, _named(form, inputs, screen.folded))}</section>"
        )
    return (
        f'<salt-screens>{made}<div class="salt-actions">'
        '<button type="button" data-do="back" hidden>Back</button>'
        '<button type="submit" class="salt-main" data-do="next">Next</button></div></salt-screens>'
    )


def _ways(form: Form, screen: Screen, inputs: Mapping[str, Any]) -> str:
    """Ready values to choose from; the fields they fill in stand under the fold."""
    if not screen.ways:
        return ""

    def chip(way: Way) -> str:
        on = all(inputs[name] == value for name, value in way.values.items())
        return (
            f'<label class="salt-chip"><input type="radio" name="{form.id}-way"'
            f' data-values="{escape(json.dumps(dict(way.values)))}"{" checked" if on else ""}>'
            f"<span><b>{escape(way.label)}</b><small>{escape(way.hint)}</small></span></label>"
        )

    chips = "".join(chip(way) for way in screen.ways)
    legend = f'<legend class="salt-aloud">{escape(screen.question)}</legend>'
    return (
        f'<fieldset class="salt-field salt-needs">{legend}<div class="salt-chips">{chips}</div>'
        '</fieldset><p role="status"></p>'
    )


def _events(form: Form, item: Words, inputs: Mapping[str, Any]) -> str:
    """A list of events as sentences, with the text that holds them under a fold."""
    key = f"{form.id}-{item.name}"
    events = "".join(
        f'<li><span class="salt-event">{escape(said(form, item, word))}</span></li>'
        for word in inputs[item.name] or ()
    )
    adds = "".join(
        f'<button type="button" data-word="{kind.word}">{escape(kind.label)}</button>'
        for kind in item.kinds
    )
    filled = _first_figures(item, inputs[item.name] or ())  # an error says "like" these
    parts = "".join(
        f'<template data-part="{part.name}">{field(form, part, filled)}</template>'
        for part in item.parts
    )
    return (
        f'<salt-events data-for="{item.name}" role="group" aria-labelledby="{key}-events">'
        f'<p class="salt-title" id="{key}-events">{escape(item.label)}</p>'
        f'<p class="salt-hint">{escape(item.begin)}</p><ol>{events}</ol>'
        '<p role="status"></p>'
        f'<div class="salt-actions">{adds}</div>'
        f"{_fold('As text', field(form, item, inputs))}{parts}</salt-events>"
    )


def said(form: Form, item: Words, word: str) -> str:
    """An event as a sentence; the other half is docs/assets/js/salt-events.js."""
    kind, values = _event(item, word)
    text = kind.said + (kind.tail if len(values) == len(kind.parts) else "")
    return shown.fill(text, replace(form, inputs=item.parts), values, {})


def _event(item: Words, word: str) -> tuple[Kind, dict[str, float]]:
    name, *cells = word.split(":")
    kind = next(kind for kind in item.kinds if kind.word == name)
    return kind, {part: float(cell) for part, cell in zip(kind.parts, cells, strict=False)}


def _first_figures(item: Words, words: Sequence[str]) -> dict[str, float | None]:
    found: dict[str, float | None] = dict.fromkeys(part.name for part in item.parts)
    for word in reversed(words):
        found.update(_event(item, word)[1])
    return found


def field(form: Form, item: Input, inputs: Mapping[str, Any]) -> str:
    value = inputs[item.name]
    key = f"{form.id}-{item.name}"
    notes = " ".join(f"{key}-{part}" for part in (["hint"] if item.hint else []) + ["error"])
    hint = f'<p class="salt-hint" id="{key}-hint">{escape(item.hint)}</p>' if item.hint else ""
    error = f'<p class="salt-error" id="{key}-error" hidden></p>'
    if isinstance(item, Choice) or (isinstance(item, Words) and item.choices):
        sketch = _sketch(item) if isinstance(item, Choice) else ""
        return (
            f'<fieldset class="salt-field" id="{key}" tabindex="-1" aria-describedby="{notes}">'
            f"<legend>{sketch}{escape(item.label)}</legend>{hint}{error}"
            f'<div class="salt-chips">{_chips(item, value)}</div></fieldset>'
        )
    unit, spoken = "", ""
    if isinstance(item, Number | Numbers):
        unit = shown.unit_of(item, form, inputs)
        spoken = UNITS[item.unit][1] or unit
    aloud = f'<span class="salt-aloud"> in {escape(spoken)}</span>' if spoken else ""
    tail = _unit(item, unit) if unit else ""
    mode = "decimal" if isinstance(item, Number) and item.low >= 0 else "text"
    many = "" if isinstance(item, Number) else ' class="salt-many"'
    maybe = ' <span class="salt-maybe">(if you know it)</span>' if item.optional else ""
    return (
        f'<div class="salt-field"><label for="{key}">{escape(item.label)}{maybe}{aloud}</label>'
        f"{hint}{error}"
        f'<div class="salt-box"><input type="text"{many} inputmode="{mode}" id="{key}" '
        f'name="{item.name}" value="{escape(shown.entry(item, value))}" '
        f'aria-describedby="{notes}" spellcheck="false">{tail}</div></div>'
    )


def _chips(item: Choice | Words, value: Any) -> str:
    """A button for each word: one of them can be on, or any number of a list."""
    if isinstance(item, Choice):
        kind, chosen = "radio", [value]
        pairs = [(option.value, option.label) for option in item.options]
    else:
        kind, chosen, pairs = "checkbox", list(value or ()), list(item.choices)
    return "".join(
        f'<label class="salt-chip"><input type="{kind}" name="{item.name}" value="{word}"'
        f"{' checked' if word in chosen else ''}><span>{escape(label)}</span></label>"
        for word, label in pairs
    )


def _sketch(item: Choice) -> str:
    """The drawing beside the words that say the same."""
    if not item.sketch:
        return ""
    return f'<span class="salt-sketch" aria-hidden="true">{item.sketch}</span>'


def _unit(item: Input, unit: str) -> str:
    """The unit behind a field: a menu where it can be written in more than one way."""
    others = OTHER_UNITS.get(item.unit, ()) if isinstance(item, Number | Numbers) else ()
    if not others:
        return f'<span class="salt-unit" aria-hidden="true">{escape(unit)}</span>'
    ways = [unit, *(other[0] for other in others)]
    options = "".join(f'<option value="{at}">{escape(way)}</option>' for at, way in enumerate(ways))
    start = '<select class="salt-unit" aria-label="Unit" disabled data-search-exclude>'
    return f"{start}{options}</select>"
