"""A link in the text of a page that opens a calculator filled in.

`[[open ID name=value;name=value | words]]`. The words may hold what the calculator answers for
these values: `{verdict}`, `{number}`, `{reason}`, and `{result}`, `{a..b}`, `{in:input}` as in its
own sentences. So a page never repeats an answer by hand, and an example that the calculator no
longer takes stops the build.
"""

from __future__ import annotations

import re
from html import escape

from saltline.__main__ import read
from saltline.declare import Form
from saltline_pages import shown
from saltline_pages.links import fragment

PATTERN = r"\[\[open ([a-z-]+) ([^|\]]+)\|\s*([^\]]+)\]\]"


def opened(form: Form, values: str, words: str, page: str) -> str:
    """The link; `page` is the address of the page that holds the calculator.

    Raises BadInput for a value that the declaration does not take or that is missing.
    """
    given = {}
    for pair in values.strip().split(";"):
        name, _, text = pair.partition("=")
        given[name] = read(form.input(name), text)
    inputs = form.complete(given)
    link = f'<a class="salt-open" href="{escape(page + fragment(form, given))}">'
    return f"{link}{escape(_answered(form, inputs, words))}</a>"


def _answered(form: Form, inputs: dict[str, object], words: str) -> str:
    """The words with the answer in its places."""
    if "{" not in words:
        return words
    answer = form.function(**inputs)
    said = dict(zip(("verdict", "number", "reason"), form.words(inputs, answer), strict=True))
    words = re.sub(r"\{(verdict|number|reason)\}", lambda place: said[place[1]], words)
    results = {item.name: getattr(answer, item.name) for item in form.results}
    return shown.fill(words, form, inputs, results)
