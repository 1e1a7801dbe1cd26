"""What a page leaves out of its science changes no answer."""

from __future__ import annotations

import pytest

from engines import light_with, native
from saltline.forms import all_forms
from saltline_pages.calculator import functions, modules
from saltline_pages.lower import bundle
from saltline_pages.shake import beside, shaken

FORMS = all_forms()


def test_only_what_is_called_stays() -> None:
    texts = {
        "a/__init__.py": "",
        "a/one.py": "from a.two import used, unused\nLIMIT = 2\nSPARE = 3\n"
        "def f(x):\n return used(x) + LIMIT\ndef g(x):\n    return unused(x)\n",
        "a/two.py": "from math import sqrt, log\nA, B = 1, 2\n"
        "def used(x):\n return sqrt(x) + A\ndef unused(x):\n    return log(x)\n",
    }
    assert shaken(texts, ["a.one.f"]) == {
        "a/__init__.py": "",
        "a/one.py": "from a.two import used\nLIMIT=2\n\ndef f(x):\n return used(x)+LIMIT\n",
        "a/two.py": "from math import sqrt\nA,B=1,2\n\ndef used(x):\n return sqrt(x)+A\n",
    }
    assert shaken(texts, ["a.two"])["a/two.py"].count("def ") == 2


@pytest.mark.parametrize("name", sorted(FORMS))
def test_a_shaken_bundle_answers_like_the_whole(name: str) -> None:
    form = FORMS[name]
    parts = {
        part: f"{made.__module__}.{made.__name__}"
        for part in ("function", "words", "picture", "table")
        if (made := getattr(form, part))
    }
    whole = bundle(modules(form))
    files = shaken(whole, ["saltline.answering.answer", *parts.values()])
    assert sum(map(len, files.values())) < sum(map(len, whole.values()))
    inputs = [form.complete({**form.example, **case}) for case in ({}, *form.cases[:2])]
    questions = [{**parts, "arguments": given} for given in inputs]
    replies = light_with([files], questions)
    for ours, theirs in zip(native(questions), replies, strict=True):
        assert "crashed" not in theirs, theirs
        assert ours.keys() == theirs.keys()
        assert ours.get("words") == theirs.get("words")
        assert ours.get("picture") == theirs.get("picture")


@pytest.mark.parametrize("first", sorted(FORMS))
def test_what_arrives_later_answers_like_what_was_there_at_once(first: str) -> None:
    """Another calculator's science is added to the running one, which keeps its own."""
    second = sorted(FORMS)[sorted(FORMS).index(first) - 7]
    begun = bundle(modules(FORMS[first]))
    whole = bundle(modules(FORMS[first]) | modules(FORMS[second]))
    own, both = functions(FORMS[first]), functions(FORMS[first]) + functions(FORMS[second])
    parts = [shaken(begun, own), beside(whole, both, begun, own)]
    questions = [
        {
            "function": f"{form.function.__module__}.{form.function.__name__}",
            "words": f"{form.words.__module__}.{form.words.__name__}",
            "arguments": form.complete(form.example),
        }
        for form in (FORMS[first], FORMS[second], FORMS[first])
    ]
    replies = light_with(parts, questions)
    assert replies[0] == replies[2]
    for ours, theirs in zip(native(questions), replies, strict=True):
        assert ours.get("words") == theirs.get("words"), theirs
