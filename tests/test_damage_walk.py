"""The damage key one question at a time, its drawings, its labels and its sheets."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from html import escape
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import js
from engines import light, native
from saltline.damage_key import judge
from saltline.damage_signs import CAUSES, SIGNS
from saltline.damage_walk import DEAREST, DamageWalk, walk
from saltline.declare import Form, Result
from saltline.forms.damage import DAMAGE_KEY, FORMS, STAGE_ACTION
from saltline.pictures.signs import STROKES, sketch
from saltline.words.damage_how import HOW
from saltline.words.damage_walk import UNPROVED, step
from saltline_pages import shown
from saltline_pages.calculator import declaration
from saltline_pages.case_card import case_html
from saltline_pages.cite import load, short_name
from saltline_pages.damage_sheet import LOOK, sheet_html
from saltline_pages.extension import DOCS
from saltline_pages.key import FIRST
from test_damage import ACTION_IDS, CAUSE_IDS, KINDS, SIGN_IDS, STAGES
from vignettes import Vignette, vignettes

BY_ID = {sign.id: sign for sign in SIGNS}
PACE = 4  # docs/assets/js/salt-key.js
BEGINS = [name for _, names in FIRST for name in names]


def walked(case: Vignette) -> tuple[list[str], dict[str, str]]:
    """A walk from the most telling sign of a case that the first screen offers.

    What the case does not mention is answered No where a look is enough, else Not looked.
    """
    seen = [name for name in case.yes if name in BEGINS]
    signs = {}
    if seen:
        signs[max(seen, key=lambda name: max(weight for _, weight in BY_ID[name].yes))] = "yes"
    asked: list[str] = []
    passed: list[str] = []
    while True:
        at = walk(stage=case.stage, kind=case.kind, signs=signs, passed=tuple(passed))
        over = at.key.firm == "yes" or at.question is None or len(asked) >= PACE
        ask = at.check if over else at.question
        if ask is None:
            return asked, signs
        asked.append(ask)
        if ask in case.yes:
            signs[ask] = "yes"
        elif ask in case.no or BY_ID[ask].cost == 0:
            signs[ask] = "no"
        else:
            passed.append(ask)


def test_seven_questions_do_for_most_cases(capsys: pytest.CaptureFixture[str]) -> None:
    """Stage, kind, one sign and four questions: how often that ends where a case allows.

    The whole list of a case's signs does it for 94 of 94 (test_damage); a walk that stops early
    may be unsure where a case asks for a cause. It must not name an action that does harm.
    """
    fine, steps, harm = 0, 0, []
    cases = vignettes()
    for case in cases:
        asked, signs = walked(case)
        answer = judge(stage=case.stage, kind=case.kind, signs=signs)
        steps += len(asked)
        fine += answer.fits_best in case.fits_best and answer.action in case.actions
        if answer.action in case.never:
            harm.append((case.id, answer.action, answer.firm))
    with capsys.disabled():
        print(f"\ndamage walk: {fine} of {len(cases)} right, {steps / len(cases):.1f} signs asked")
    assert (fine, len(cases)) == (82, 94), "care/root-damage.md says so"
    assert not harm


def walked_to(signs: dict[str, str], passed: tuple[str, ...]) -> DamageWalk:
    return walk(stage="maturing", kind="deciduous", signs=signs, passed=passed)


@pytest.mark.parametrize("sign", ["oldest_leaves_yellow", "old_roots_only"])
def test_nothing_is_left_alone_before_it_is_smelled_and_squeezed(sign: str) -> None:
    at = walked_to({sign: "yes"}, ())
    assert (at.key.action, at.check) == ("leave", "sour_smell")
    at = walked_to({sign: "yes", "sour_smell": "no"}, ("soft_skin_slides",))
    assert (at.key.action, at.check) == ("leave", None)
    at = walked_to({sign: "yes", "sour_smell": "yes"}, ())
    assert (at.key.action, at.check) == ("look_inside", None)


@settings(max_examples=200, deadline=None)
@given(
    st.sampled_from(STAGES),
    st.sampled_from(KINDS),
    st.lists(st.sampled_from(("yes", "no", "not_looked")), min_size=40, max_size=40),
)
def test_a_walk_ends_and_never_asks_twice_or_for_a_wound(
    stage: str, kind: str, answers: list[str]
) -> None:
    signs: dict[str, str] = {}
    passed: list[str] = []
    for given_ in answers:
        at = walk(stage=stage, kind=kind, signs=signs, passed=tuple(passed))
        assert at.key == judge(stage=stage, kind=kind, signs=signs)
        for name, said in (*at.speaks_for, *at.speaks_against):
            assert signs[name] == said
        if at.question is None:
            break
        assert at.question not in signs
        assert at.question not in passed
        assert BY_ID[at.question].cost <= DEAREST
        if given_ == "not_looked":
            passed.append(at.question)
        else:
            signs[at.question] = given_
    else:
        pytest.fail("forty questions and no end")


def test_what_speaks_for_and_against() -> None:
    at = step(
        stage="growing",
        kind="evergreen",
        signs={"dark_band_above_medium": "yes", "crust_dissolves": "no", "tips_dead": "no"},
        passed=(),
    )
    assert at.leader == "salt at the drying line"
    assert at.speaks_for == (BY_ID["dark_band_above_medium"].label,)
    assert at.speaks_against == ("Not found: " + BY_ID["crust_dissolves"].label,)
    assert UNPROVED not in at.provisos, "the ring's own proviso says it already"
    other = step(stage="growing", kind="evergreen", signs={"tips_dead": "yes"}, passed=())
    assert UNPROVED in other.provisos


def test_the_light_engine_walks_alike() -> None:
    questions: list[dict[str, Any]] = [
        {
            "function": "saltline.words.damage_walk.step",
            "arguments": {
                "stage": case.stage,
                "kind": case.kind,
                "signs": walked(case)[1],
                "passed": ["crust_dissolves"],
            },
        }
        for case in vignettes()[:30]
    ]
    assert native(questions) == light(questions)
    for reply in native(questions):
        said = str(reply["value"][5:]).lower()
        for word in ("clean", "safe", "please", "sorry", "!", "score", "_"):
            assert word not in said, said


# --- drawings, labels, sheets


@pytest.mark.parametrize("name", SIGN_IDS)
def test_drawing_says_in_words_what_it_shows(name: str) -> None:
    drawn = ET.fromstring(sketch(name))
    assert drawn.get("viewBox") == "0 0 64 64"
    assert drawn.findtext("title") == BY_ID[name].label
    assert 2 <= len(drawn.findall("path")) <= 5
    assert sketch(name).count("M") < 40, "few parts"
    assert DAMAGE_KEY.input(name).sketch == sketch(name)  # type: ignore[union-attr]


def test_every_sign_is_drawn_once_and_how_speaks_of_signs() -> None:
    assert set(STROKES) == set(SIGN_IDS)
    assert set(dict(HOW)) <= set(SIGN_IDS)
    assert len(BEGINS) == len(set(BEGINS))
    assert all(BY_ID[name].where == "plant" and BY_ID[name].cost < 9 for name in BEGINS)
    lines = [line for _, group in LOOK for line in group]
    assert sorted(lines) == sorted({sign.line for sign in SIGNS})


IDS = {"fits_best": CAUSE_IDS, "also_fits": CAUSE_IDS, "next_test": SIGN_IDS, "action": ACTION_IDS}


@pytest.mark.parametrize("form", FORMS, ids=lambda form: form.id)
def test_every_id_has_its_label_in_both_halves(form: Form) -> None:
    ids: list[tuple[Result, str]] = [
        (result, name) for result in form.results for name in IDS.get(result.name, ())
    ]
    named = [shown.result(result, name) for result, name in ids]
    assert not [text for text in named if "_" in text]
    places = [form.results.index(result) for result, _ in ids]
    data = [declaration(form), [[at, name] for at, (_, name) in zip(places, ids, strict=True)]]
    body = """
      const { result } = await load('shown.js');
      const [form, asked] = data;
      return asked.map(([at, name]) => result(form, form.results[at], name));"""
    assert js.run(body, data) == named


def test_a_list_of_ids_and_none_of_them_have_words() -> None:
    also = next(result for result in DAMAGE_KEY.results if result.name == "also_fits")
    assert shown.result(also, "lime,wet_rot") == "lime from hard water, wet rot (roots without air)"
    assert shown.result(also, "") == "nothing else"
    why = next(result for result in STAGE_ACTION.results if result.name == "why")
    assert shown.result(why, "One, two.") == "One, two."


def test_the_sheets_hold_the_whole_key() -> None:
    sources = load(DOCS / "sources.json")
    html = sheet_html(sources, "")
    for sign in SIGNS:
        assert sign.label in html
        assert escape(short_name(sources[sign.source])) in html
    for _, text in CAUSES[:-1]:
        assert text in html
    assert html.count("<svg") == len(SIGNS)
    ET.fromstring(html.replace("&", "&amp;"))


def test_the_case_asks_for_nothing_private() -> None:
    html = case_html()
    for word in ("name of", "address", "email", "phone", "member"):
        assert word not in html.lower()
    assert html.count("<input") + html.count("<select") == 9
