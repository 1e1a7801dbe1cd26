"""A declaration as JSON Schema (2020-12): what a calculator takes, for other programs."""

from __future__ import annotations

from typing import Any

from saltline.declare import UNITS, Choice, Form, Input, Number, Numbers


def schema(form: Form) -> dict[str, Any]:
    """The inputs of one calculator as an object schema."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"{form.id}.json",
        "$comment": "Made by scripts/generate.py from the declaration; do not edit.",
        "title": form.question,
        "type": "object",
        "properties": {item.name: _property(item) for item in form.inputs},
        "required": [i.name for i in form.inputs if i.default is None and not i.optional],
        "additionalProperties": False,
    }


def _property(item: Input) -> dict[str, Any]:
    out: dict[str, Any] = {"title": item.label}
    if item.hint:
        out["description"] = item.hint
    if isinstance(item, Choice):
        out["enum"] = [option.value for option in item.options]
    elif isinstance(item, Number):
        out |= _number(item) | {"type": "integer" if item.whole else "number"}
        if item.optional:
            out["type"] = [out["type"], "null"]
    elif isinstance(item, Numbers):
        out |= {"type": "array", "minItems": item.least, "maxItems": item.most}
        out["items"] = {"type": "number"} | _number(item)
    else:
        out |= {"type": "array", "minItems": item.least, "maxItems": item.most}
        words = [value for value, _ in item.choices]
        out["items"] = {"enum": words} if words else {"type": "string", "pattern": item.pattern}
    if item.default is not None or item.optional:
        out["default"] = item.default
    return out


def _number(item: Number | Numbers) -> dict[str, Any]:
    unit = {"x-unit": UNITS[item.unit][0]} if UNITS[item.unit][0] and item.unit != "share" else {}
    return {"minimum": item.low, "maximum": item.high} | unit
