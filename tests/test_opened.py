"""Links that open a calculator filled in: they hold what the declaration takes, and its answer."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from saltline.errors import BadInput
from saltline.forms import all_forms
from saltline_pages import uses
from saltline_pages.opened import PATTERN, opened, said

DOCS = Path(__file__).resolve().parent.parent / "docs"
SIEVE = all_forms()["sieve"]
BATCH = all_forms()["batch"]
VALUES = "prill_min_mm=2;prill_max_mm=4;grain_min_mm=8"


def test_link_carries_the_values_and_the_version() -> None:
    html = opened(SIEVE, VALUES, "which mesh", "salt-root:care/x/")
    assert html == (
        f'<a class="salt-open" href="salt-root:care/x/#sieve={SIEVE.version};prill_min_mm=2;'
        'prill_max_mm=4;grain_min_mm=8">which mesh</a>'
    )


def test_lists_and_words_of_the_answer() -> None:
    html = opened(BATCH, "readings=0.9, 1.1,1.4;pots=3", "{number} of {in:pots}; {median}", "")
    assert "readings=0.9,1.1,1.4;" in html
    assert "mean 1.13" in html
    assert html.endswith("of 3\u00a0pots; 1.1</a>")


@pytest.mark.parametrize(
    "values",
    [
        "prill_min_mm=2;prill_max_mm=4",  # one is missing
        "prill_min_mm=2;prill_max_mm=4;grain_min_mm=800",  # beyond its bound
        "prill_min_mm=two;prill_max_mm=4;grain_min_mm=8",
        "prills=2;prill_max_mm=4;grain_min_mm=8",  # no such name
        "",
    ],
)
def test_values_the_calculator_would_not_take_stop_the_build(values: str) -> None:
    with pytest.raises(BadInput):
        opened(SIEVE, values, "which mesh", "")


def test_words_are_text_and_never_markup() -> None:
    assert "&lt;b&gt;mesh&lt;/b&gt;" in opened(SIEVE, VALUES, "<b>mesh</b>", "")


def test_the_mark_in_a_sentence() -> None:
    found = re.search(PATTERN, f"So [[open sieve {VALUES} | take a mesh of {{aperture_mm}}]] then")
    assert found
    assert found.groups() == ("sieve", VALUES + " ", "take a mesh of {aperture_mm}")


def test_said_tells_the_answer_and_what_was_put_in() -> None:
    html = said(SIEVE, VALUES, "salt-root:care/x/")
    assert '<p class="salt-say">This mesh parts them.</p>' in html
    assert "5.6" in html
    assert "<li>Smallest granule: 8\u00a0mm</li>" in html
    assert 'href="salt-root:care/x/#sieve=' in html


def test_said_tells_a_refusal_and_what_to_do_instead() -> None:
    plan = all_forms()["flush-plan"]
    html = said(plan, "stage=resting;kind=deciduous;pot_l=1;grain_mm=8", "")
    told = re.findall(r"<p[^>]*>([^<]+)</p>", html)
    assert told == [
        "A plant that drops its leaves and rests stays dry: it cannot use the water, and wet "
        "granules rot it.",
        "Keep it dry. When the next shoot shows, repot it dry into fresh granules and throw the "
        "old ones away.",
    ]


def test_an_answer_leads_on_to_the_page_that_holds_the_next_calculator() -> None:
    pages = uses.read_pages(DOCS)
    steps = [step for form in all_forms().values() for step in form.follow]
    assert steps
    for step in steps:
        assert uses.calculator_home(step.id, DOCS, pages) == step.page, step.id
