"""Answers in the text of a page, and links that open a calculator filled in.

`[[open ID name=value;name=value | words]]` is a link. The words may hold what the calculator
answers for these values: `{verdict}`, `{number}`, `{reason}`, and `{result}`, `{a..b}`,
`{in:input}` as in its own sentences. `[[said ID name=value;name=value]]` on a line of its own shows
what was put in and all that the calculator says to it. So a page never repeats an answer by hand,
and an example that the calculator no longer takes stops the build.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from html import escape
from typing import Any

from saltline.__main__ import read
from saltline.declare import Form
from saltline.errors import Refused
from saltline_pages import shown
from saltline_pages.links import fragment

PATTERN = r"\[\[open ([a-z-]+) ([^|\]]+)\|\s*([^\]]+)\]\]"


def opened(form: Form, values: str, words: str, page: str) -> str:
    """The link; `page` is the address of the page that holds the calculator.

    Raises BadInput for a value that the declaration does not take or that is missing.
    """
    given = _given(form, values)
    return _link(form, given, escape(_answered(form, form.complete(given), words)), page)


def said(form: Form, values: str, page: str) -> str:
    """The answer in the calculator's words, what was put in, and the link; raises as `opened`."""
    given = _given(form, values)
    inputs = form.complete(given)
    verdict, number, reason, *warnings = map(escape, _sentences(form, inputs))
    told = "".join(f"<p>{text}</p>" for text in (number, *warnings) if text)
    why = f"<p>{reason}</p>" if reason else ""
    put_in = "".join(
        f"<li>{escape(item.label.rstrip('?'))}: {escape(shown.given(item, form, inputs))}</li>"
        for item in form.inputs
        if item.name in given
    )
    return (
        f'<div class="salt-said"><p class="salt-say">{verdict}</p>{told}'
        f"<p>{_link(form, given, f'Open “{escape(form.question)}” with this', page)}</p>"
        f'<details class="salt-fold"><summary>Why, and what was put in</summary>'
        f"{why}<ul>{put_in}</ul></details></div>"
    )


def _given(form: Form, values: str) -> dict[str, Any]:
    given = {}
    for pair in values.strip().split(";"):
        name, _, text = pair.partition("=")
        given[name] = read(form.input(name), text)
    return given


def _link(form: Form, given: Mapping[str, Any], words: str, page: str) -> str:
    return f'<a class="salt-open" href="{escape(page + fragment(form, given))}">{words}</a>'


def _sentences(form: Form, inputs: dict[str, Any]) -> list[str]:
    """Verdict, number, reason and warnings; of a refusal the reason and what to do instead."""
    try:
        answer = form.function(**inputs)
    except Refused as refused:
        return [*refused.args, ""]
    results = {item.name: getattr(answer, item.name) for item in form.results}
    told = [shown.fill(text, form, inputs, results) for text in form.words(inputs, answer)]
    return [*told, *answer.warnings]


def _answered(form: Form, inputs: dict[str, Any], words: str) -> str:
    """The words with the answer in its places."""
    if "{" not in words:
        return words
    answer = form.function(**inputs)
    told = dict(zip(("verdict", "number", "reason"), form.words(inputs, answer), strict=True))
    words = re.sub(r"\{(verdict|number|reason)\}", lambda place: told[place[1]], words)
    results = {item.name: getattr(answer, item.name) for item in form.results}
    return shown.fill(words, form, inputs, results)
