"""The command line: ``python -m saltline run ID name=value ... [--json]`` and ``list [--json]``.

Standard library only. A refusal is an answer (exit 0); bad input is one sentence (exit 2).
"""

from __future__ import annotations

import json
import math
import sys
from typing import Any

from saltline.declare import UNITS, Choice, Form, Input, Number, Numbers, Result, Words
from saltline.errors import BadInput, Refused
from saltline.forms import all_forms

USAGE = "usage: python -m saltline run ID name=value ... [--json] | list [--json]"


def read(item: Input, text: str) -> Any:
    """The value of one argument from its text; BadInput says what it should look like."""
    if isinstance(item, Choice):
        return text or None
    if isinstance(item, Number):
        return _number(item.name, text) if text else None
    parts = [part.strip() for part in text.split(",") if part.strip()]
    if isinstance(item, Words):
        return parts or None
    return [_number(item.name, part) for part in parts] or None


def _number(name: str, text: str) -> float:
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise BadInput(name, f"must be a number, like 1.2 (not '{text}')")
    return value


def report(form: Form, given: dict[str, Any]) -> dict[str, Any]:
    """The JSON object that `run` prints."""
    inputs = form.complete(given)
    head = {"id": form.id, "version": form.version, "inputs": inputs}
    try:
        answer = form.function(**inputs)
    except Refused as refused:
        reason, instead = refused.args
        return head | {
            "refused": reason,
            "instead": instead,
            "warnings": [],
            "sources": list(form.sources),
        }
    return head | {
        "results": {item.name: getattr(answer, item.name) for item in form.results},
        "warnings": list(answer.warnings),
        "sources": list(form.sources),
    }


def describe(form: Form) -> dict[str, Any]:
    """The JSON object that `list` prints for one calculator."""

    def entry(item: Input) -> dict[str, Any]:
        out: dict[str, Any] = {"name": item.name, "label": item.label, "default": item.default}
        if isinstance(item, Number | Numbers):
            out |= {"kind": "number" if isinstance(item, Number) else "numbers"}
            out |= {"unit": item.unit, "low": item.low, "high": item.high}
        elif isinstance(item, Choice):
            out |= {"kind": "choice", "options": [option.value for option in item.options]}
        else:
            out |= {"kind": "words", "options": [value for value, _ in item.choices]}
        return out | {"required": item.default is None and not item.optional}

    return {
        "id": form.id,
        "question": form.question,
        "version": form.version,
        "inputs": [entry(item) for item in form.inputs],
        "results": [
            {"name": r.name, "label": r.label, "unit": r.unit, "kind": r.kind} for r in form.results
        ],
        "sources": list(form.sources),
    }


def _print_for_people(form: Form, out: dict[str, Any]) -> None:
    print(form.question)
    if "refused" in out:
        print(f"  Not worked out: {out['refused']}\n  Do this instead: {out['instead']}")
        return
    for item in form.results:
        print(f"  {item.label}: {_shown(out['results'][item.name], item)}")
    for warning in out["warnings"]:
        print(f"  Note: {warning}")


def _shown(value: Any, item: Result) -> str:
    """A result for people: rounded, with its unit, without exponent."""
    if isinstance(value, list | tuple):
        if value and isinstance(value[0], str):
            return "".join(f"\n    - {part}" for part in value)
        return ", ".join(_shown(part, item) for part in value)
    if not isinstance(value, float | int):
        return "-" if value is None else str(value)
    rounded = float(f"{value * (100 if item.unit == 'share' else 1):.{item.digits}g}")
    return f"{rounded:.12f}".rstrip("0").rstrip(".") + f" {UNITS[item.unit][0]}".rstrip()


def _one_line(sentence: str) -> str:
    """The sentence, with what cannot be printed in a line written out."""
    return "".join(sign if sign.isprintable() else ascii(sign)[1:-1] for sign in sentence)


def main(arguments: list[str]) -> int:
    """Run one command; returns the exit code."""
    as_json = "--json" in arguments
    words = [argument for argument in arguments if argument != "--json"]
    forms = all_forms()
    if words == ["list"]:
        if as_json:
            print(json.dumps([describe(form) for form in forms.values()], ensure_ascii=False))
        else:
            for form in forms.values():
                print(f"{form.id:16} {form.question}")
        return 0
    if len(words) < 2 or words[0] != "run":
        print(USAGE, file=sys.stderr)
        return 2
    if words[1] not in forms:
        print(_one_line(f"there is no calculator '{words[1]}': see list"), file=sys.stderr)
        return 2
    form = forms[words[1]]
    try:
        given: dict[str, Any] = {}
        for word in words[2:]:
            name, equals, text = word.partition("=")
            item = form.input(name)
            if not equals:
                raise BadInput(name, "needs a value, as in name=value")
            given[name] = read(item, text.strip())
        out = report(form, given)
    except ValueError as bad:
        print(_one_line(str(bad)), file=sys.stderr)
        return 2
    if as_json:
        print(json.dumps(out, allow_nan=False, ensure_ascii=False))
    else:
        _print_for_people(form, out)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
