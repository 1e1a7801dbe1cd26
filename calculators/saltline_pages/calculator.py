"""A declaration as the form in the page, with its first answer already worked out."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping, Sequence
from html import escape
from typing import Any

from latex2mathml.converter import convert

from saltline.answering import answer as answer_text
from saltline.asking import Kind
from saltline.declare import OTHER_UNITS, UNITS, Choice, Form, Input, Number, Numbers, Result, Words
from saltline.errors import Refused
from saltline.forms import all_forms
from saltline_pages import shown
from saltline_pages.fields import fields
from saltline_pages.links import fragment
from saltline_pages.twin import twin

STILL = "This browser does not run the calculator. The answer below is for these numbers."


def calculator(form: Form) -> str:
    """The element `salt-calc` of one calculator, answered for its example."""
    inputs = form.complete(form.example)
    return (
        f'<salt-calc name="{form.id}" data-state="static" data-version="{form.version}">'
        f'<form novalidate autocomplete="off" aria-labelledby="{form.id}">'
        f'<h2 id="{form.id}">{escape(form.question)}</h2>'
        f'<p class="salt-example"><span>{escape(form.example_label)}</span></p>'
        '<div class="salt-note" role="status" hidden></div>'
        '<div class="salt-summary" role="alert" tabindex="-1" hidden></div>'
        f"{fields(form, inputs)}"
        '<div class="salt-actions"><button type="submit" class="salt-main">Work it out</button>'
        '<button type="button" data-do="share">Share or keep</button>'
        f'<p class="salt-still" data-search-exclude>{STILL}</p></div>'
        f"{_answer(form, inputs)}"
        f"{_follow(form, inputs)}"
        f"{_unseen(form)}"
        "</form>"
        f"{_cases(form)}"
        f"{_footer(form)}"
        f'<script type="application/json" id="{form.id}-declared">{_json(form)}</script>'
        "</salt-calc>"
    )


def _answer(form: Form, inputs: Mapping[str, Any]) -> str:
    """The answer to the example; the element fills the same places with the live one."""
    try:
        answer = form.function(**inputs)
    except Refused as refused:
        raise ValueError(f"the example of {form.id} is refused: {refused.args[0]}") from refused
    values = {item.name: getattr(answer, item.name) for item in form.results}
    verdict, number, reason = (
        escape(shown.bound(shown.fill(text, form, inputs, values)))
        for text in form.words(inputs, answer)
    )
    picture = ""
    if form.picture is not None:
        picture = shown.fill(form.picture(inputs, answer), form, inputs, values, escape)
    table = ""
    if form.table is not None:
        rows = form.table(inputs, answer)
        table = twin(rows, lambda cell: shown.fill(cell, form, inputs, values, escape))
    warnings = "".join(f"<li>{escape(shown.bound(text))}</li>" for text in answer.warnings)
    steps = "".join(
        f'<ol class="salt-steps" data-list="{item.name}">'
        + "".join(f"<li>{escape(shown.bound(str(step)))}</li>" for step in values[item.name] or ())
        + "</ol>"
        for item in form.results
        if item.kind == "list" and not item.unit
    )
    figures = "".join(
        _figure(item, before, values[item.name])
        for item, before in zip(form.results, _befores(form), strict=True)
    )
    return (
        # The search finds what is asked; the numbers of an example would only be in its way.
        '<div class="salt-answer" aria-live="polite" data-search-exclude>'
        f'<p class="salt-say">{verdict}</p><p class="salt-number">{number}</p>'
        f'<p class="salt-why">{reason}</p>{steps}'
        f'<div class="salt-picture">{picture}</div>{table}'
        f'<ul class="salt-warnings"{"" if warnings else " hidden"}>{warnings}</ul>'
        f'<div class="salt-moves">{_moves(form, inputs, answer)}</div>'
        f"{_working(form, inputs, values)}"
        '<details class="salt-figures" data-search-exclude><summary>All the figures</summary>'
        f"<dl>{figures}</dl></details></div>"
    )


def main_result(form: Form, values: Sequence[Any]) -> int | None:
    """The place of the number that "what would change this" speaks of, where there is one."""
    places: list[int] = [_main(form), *range(len(form.results))]
    for at in places:
        if form.results[at].kind == "number" and isinstance(values[at], float | int):
            return at
    return None


def _main(form: Form) -> int:
    names = [item.name for item in form.results]
    return names.index(form.main) if form.main else 0


def changed(form: Form, inputs: Mapping[str, Any]) -> list[tuple[str, float]]:
    """Each number a little higher (a tenth, 2 degrees, or one more), or lower at its bound."""
    pairs = []
    for item in form.inputs:
        value = inputs[item.name]
        if not isinstance(item, Number) or value is None:
            continue
        step = 1 if item.whole else 2.0 if item.unit == "c" else value * 0.1
        if step:
            pairs.append((item.name, value + step if value + step <= item.high else value - step))
    return pairs


def _moves(form: Form, inputs: Mapping[str, Any], answer: Any) -> str:
    """The two inputs that move the answer most, as the element says it too."""
    at = main_result(form, answer)
    if at is None:
        return ""
    asked = {
        "function": f"{form.function.__module__}.{form.function.__name__}",
        "arguments": dict(inputs),
        "moves": {"at": at, "changed": changed(form, inputs)},
    }
    moves = json.loads(answer_text(json.dumps(asked)))["moves"]
    others = dict(changed(form, inputs))
    result = form.results[at]
    now = shown.result(result, answer[at])
    lines = ""
    for name, moved in moves:
        then = shown.result(result, moved)
        if then == now:
            continue
        item = form.input(name)
        assert isinstance(item, Number)
        before = shown.given(item, form, inputs)
        other = shown.measure(item, form, inputs, others[name])
        said = f"{then} if “{item.label}” were {other} instead of {before}"
        lines += f"<li>{escape(shown.bound(said))}</li>"
    if not lines:
        return ""
    colon = "" if result.label.endswith(("at least", "at most")) else ":"
    title = f"<b>What would change this?</b> {escape(f'{result.label}{colon} {now}. It would be')}"
    return f"<p>{title}</p><ul>{lines}</ul>"


def _working(form: Form, inputs: Mapping[str, Any], values: Mapping[str, Any]) -> str:
    """The equations, and the numbers put into them."""
    if not form.equation and not form.working:
        return ""
    equations = "".join(f"<p>{convert(text, display='block')}</p>" for text in form.equation)
    lines = "".join(
        f'<li data-template="{escape(text)}">{escape(shown.fill(text, form, inputs, values))}</li>'
        for text in form.working
    )
    lines = f'<ul class="salt-lines">{lines}</ul>' if lines else ""
    title = "<summary>Show the working</summary>"
    return f"<details data-search-exclude>{title}{equations}{lines}</details>"


def _follow(form: Form, inputs: Mapping[str, Any]) -> str:
    """Links to calculators that go on from this answer, filled in with it."""
    if not form.follow:
        return ""
    answer = form.function(**inputs)
    links = ""
    for step in form.follow:
        target = all_forms()[step.id]
        carried = {
            name: inputs[source] if source in inputs else getattr(answer, source)
            for name, source in step.carry.items()
        }
        links += (
            f'<a class="salt-next" data-id="{step.id}" data-version="{target.version}" '
            f'data-carry="{escape(json.dumps(dict(step.carry)))}" '
            f'href="salt-root:{step.page}{fragment(target, carried)}">{escape(step.label)}</a>'
        )
    return f'<p class="salt-follow">{links}</p>'


def _befores(form: Form) -> list[str]:
    """For each result what its label goes on from, which the eye sees above: "at most" of what."""
    befores, opening = [], ""
    for item in form.results:
        goes_on = item.label.startswith(("at ", "to", "latest"))
        befores.append(opening if goes_on else "")
        if not goes_on:
            opening = re.sub(r"[,:]? (at least|soonest|from).*", "", item.label)
    return befores


def _figure(item: Result, before: str, value: Any) -> str:
    aloud = f'<span class="salt-aloud">{escape(before)}, </span>' if before else ""
    return (
        f"<div><dt>{aloud}{escape(item.label)}</dt><dd>"
        f'<output name="{item.name}" data-value="{escape(raw(value))}">'
        f"{escape(shown.result(item, value))}</output></dd></div>"
    )


def raw(value: Any) -> str:
    """A result as `data-value`: the unrounded number, the words, or a JSON list; empty for null."""
    if value is None:
        return ""
    if isinstance(value, list | tuple):
        return json.dumps(list(value), ensure_ascii=False)
    return str(value)


def _unseen(form: Form) -> str:
    parts = ""
    for words, title, kind in (
        (form.cannot_see, "Cannot see", "salt-unseen"),
        (form.cautions, "Take care", "salt-care"),
    ):
        if words:
            listed = "".join(f"<li>{escape(text)}</li>" for text in words)
            parts += f'<div class="{kind}"><b>{title}</b><ul>{listed}</ul></div>'
    return parts


def _cases(form: Form) -> str:
    """A few worked cases, so that a page without script still answers."""
    if not form.cases:
        return ""
    inputs = [form.complete({**form.example, **case}) for case in form.cases]
    names = [
        item.name
        for item in form.inputs
        if len({json.dumps(each[item.name]) for each in inputs}) > 1 or item.name in form.cases[0]
    ]
    head = "".join(f'<th scope="col">{escape(form.input(name).label)}</th>' for name in names)
    body = ""
    for each in inputs:
        cells = "".join(
            f'<td data-label="{escape(form.input(name).label)}">'
            f"{escape(shown.given(form.input(name), form, each))}</td>"
            for name in names
        )
        body += f'<tr>{cells}<td data-label="Answer">{escape(_case(form, each))}</td></tr>'
    return (
        '<details class="salt-plain salt-cases" data-search-exclude>'
        "<summary>Worked-out cases</summary><table><thead>"
        f'<tr>{head}<th scope="col">Answer</th></tr></thead><tbody>{body}</tbody></table></details>'
    )


def _case(form: Form, inputs: Mapping[str, Any]) -> str:
    try:
        answer = form.function(**inputs)
    except Refused as refused:
        return f"{refused.args[0]} {refused.args[1]}"
    values = {item.name: getattr(answer, item.name) for item in form.results}
    verdict, number, _ = form.words(inputs, answer)
    return shown.fill(number or verdict, form, inputs, values)


def _footer(form: Form) -> str:
    assumed = "".join(f"<li>{escape(text)}</li>" for text in form.assumptions)
    assumed = f"<p>It assumes:</p><ul>{assumed}</ul>" if assumed else ""
    defaults = "".join(
        f"<li>{escape(item.label)}: {escape(item.origin)}</li>"
        for item in form.inputs
        if item.origin
    )
    defaults = f"<p>Where the ready values come from:</p><ul>{defaults}</ul>" if defaults else ""
    cited = ", ".join(f"[@{key}]" for key in form.sources)
    method = f"<p>Method version {form.version}. Sources: {cited}.</p>"
    return (
        '<div class="salt-method" data-search-exclude><details>'
        f"<summary>Method and sources</summary>{assumed}{defaults}{method}</details></div>"
    )


def _json(form: Form) -> str:
    """What the element needs to know, as JSON that cannot end its script element."""
    text = json.dumps(declaration(form), ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c")


def declaration(form: Form) -> dict[str, Any]:
    """The declaration for the page's script; what has its usual value is left out."""

    def path(function: Any) -> str:
        return f"{function.__module__}.{function.__name__}"

    def entry(item: Input) -> dict[str, Any]:
        out: dict[str, Any] = {"name": item.name, "label": item.label}
        if isinstance(item, Number | Numbers):
            out |= {"kind": "number" if isinstance(item, Number) else "numbers"}
            out |= {"unit": item.unit, "low": item.low, "high": item.high}
        if isinstance(item, Number):
            extra = {"whole": item.whole, "unit_from": item.unit_from}
            out |= {name: value for name, value in extra.items() if value}
        if isinstance(item, Choice):
            out |= {"kind": "choice", "options": [[o.value, o.label] for o in item.options]}
        if isinstance(item, Words):
            out |= {"kind": "words", "pattern": item.pattern}
            if item.choices:
                out["options"] = [list(choice) for choice in item.choices]
            if item.kinds:
                out |= {"kinds": [_kind(kind) for kind in item.kinds]}
                out |= {"parts": [entry(part) for part in item.parts]}
        if isinstance(item, Numbers | Words):
            out |= {"least": item.least, "most": item.most}
        if item.optional:
            out["optional"] = True
        if item.default is not None:
            out["default"] = item.default
        return out

    return {
        "id": form.id,
        "version": form.version,
        "function": path(form.function),
        "words": path(form.words),
        **({"main": _main(form)} if _main(form) else {}),
        **{
            part: path(drawn)
            for part, drawn in (
                ("picture", form.picture),
                ("table", form.table),
                ("step", form.step),
            )
            if drawn
        },
        "inputs": [entry(item) for item in form.inputs],
        "results": [
            {"name": r.name, "label": r.label, "unit": r.unit, "digits": r.digits, "kind": r.kind}
            | ({"labels": dict(r.labels)} if r.labels else {})
            for r in form.results
        ],
        "units": {
            unit: [
                [UNITS[unit][0], 100 if unit == "share" else 1, 0],
                *(list(other) for other in OTHER_UNITS.get(unit, ())),
            ]
            for unit in sorted(
                {r.unit for r in form.results}
                | {i.unit for i in form.inputs if isinstance(i, Number | Numbers)}
                | {part.unit for i in form.inputs if isinstance(i, Words) for part in i.parts}
            )
        },
    }


def _kind(kind: Kind) -> dict[str, Any]:
    names = ("word", "label", "parts", "least", "said", "tail", "hint")
    return {name: getattr(kind, name) for name in names if getattr(kind, name)}


def functions(form: Form) -> list[str]:
    """The dotted paths of what the light engine runs for a calculator."""
    return [*answering(form), *_paths(form.step)]


def answering(form: Form) -> list[str]:
    """Those that an answer needs."""
    parts = (form.function, form.words, form.picture, form.table)
    return ["saltline.answering.answer", *_paths(*parts)]


def example(form: Form) -> str:
    """The question of its example, letter for letter as docs/assets/js/question.js asks it."""
    parts = ("function", "words", "picture", "table")
    paths = {part: getattr(form, part) for part in parts}
    asked: dict[str, Any] = {part: _paths(path)[0] for part, path in paths.items() if path}
    asked["arguments"] = form.complete(form.example)
    return json.dumps(asked, ensure_ascii=False, separators=(",", ":"))


def _paths(*parts: Callable[..., Any] | None) -> list[str]:
    return [f"{part.__module__}.{part.__name__}" for part in parts if part]


def modules(form: Form) -> set[str]:
    """The modules that hold them."""
    return {path.rpartition(".")[0] for path in functions(form)}
