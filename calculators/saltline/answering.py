"""One door for every engine: a question as JSON text in, the answer as JSON text out.

Native CPython, Pyodide and the light engine all answer through `answer`, so that what the page
shows is what the tests compare. Values cross as text because the light engine's numbers cannot
cross safely any other way (its integers wrap above 2^31).
"""

from __future__ import annotations

import json
from math import isfinite
from typing import Any

from saltline.errors import Refused


def answer(question: str) -> str:
    """Answer one question.

    `question` is a JSON object: `function` (dotted path), `arguments` (object), and optionally
    `words`, `picture` and `table` (dotted paths of functions that take the arguments and the
    answer) and `moves` (see `_moves`). The reply is a JSON object holding `value` (a NamedTuple
    becomes a list in declared order) with what else was asked for, or `bad` (a sentence), or
    `refused` and `instead`.
    """
    asked = json.loads(question)
    arguments = asked["arguments"]
    try:
        value = _found(asked["function"])(**arguments)
        reply = {"value": _plain(value)}
        for extra in ("words", "picture", "table"):
            if asked.get(extra):
                reply[extra] = _plain(_found(asked[extra])(arguments, value))
        if asked.get("moves"):
            reply["moves"] = _moves(_found(asked["function"]), arguments, value, asked["moves"])
    except Refused as refused:
        reply = {"refused": refused.args[0], "instead": refused.args[1]}
    except ValueError as bad:
        reply = {"bad": str(bad)}
    return json.dumps(reply)


def _moves(function: Any, arguments: Any, value: Any, asked: Any) -> list[list[Any]]:
    """The two inputs whose change moves the answer most.

    `asked` holds `at` (which result) and `changed` (pairs of an input's name and its other value).
    Returns pairs of name and the result it would give, the strongest first.
    """
    base = value[asked["at"]]
    found = []
    for place, (name, other) in enumerate(asked["changed"]):
        try:
            moved = function(**dict(arguments, **{name: other}))[asked["at"]]
        except (ValueError, Refused):
            continue
        if base and moved is not None and abs(moved - base) > 0.005 * abs(base):
            # Moves that differ by rounding alone keep their order on every engine.
            found.append((-int(1e6 * abs(moved / base - 1.0) + 0.5), place, name, moved))
    found.sort()
    return [[name, moved] for _, _, name, moved in found[:2]]


def _found(path: str) -> Any:
    module, name = path.rsplit(".", 1)
    return getattr(__import__(module, None, None, [name]), name)


def _plain(value: Any) -> Any:
    """Tuples to lists; a number that is not finite is a defect, never an answer."""
    if isinstance(value, (tuple, list)):
        return [_plain(item) for item in value]
    if isinstance(value, float) and not isfinite(value):
        raise ArithmeticError("the answer is not a finite number")
    return value
