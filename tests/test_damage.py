"""The damage key and the action by stage: what they must never do, and what they should say."""

from __future__ import annotations

import itertools
import json
import random
import re
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engines import light, native
from saltline import damage_key as key
from saltline.damage_key import DamageKey, judge
from saltline.damage_signs import CAUSES, EXCLUSIVE, ROT_CAUSES, ROT_SIGNS, SIGNS, Sign
from saltline.forms.damage import DAMAGE_KEY, FORMS, STAGE_ACTION
from saltline.stage_rules import ACTIONS, COLUMNS, ROOT_TRIGGER_CM
from vignettes import LEVELS, Vignette, vignettes

SIGN_IDS = tuple(sign.id for sign in SIGNS)
CAUSE_IDS = tuple(name for name, _ in CAUSES)
STAGES = ("growing", "maturing", "resting", "new_shoot", "lost_roots", "rotting")
KINDS = ("deciduous", "evergreen", "monopodial", "unknown")
ACTION_IDS = {"look_inside", "read", "flush", "repot", "keep_dry", "leave", "treat"}
SALT_TESTS = {"crust_dissolves", "rested_drip_high"}
BY_ID = {sign.id: sign for sign in SIGNS}
VIGNETTES = vignettes()
SOURCES = {
    source["id"]
    for source in json.loads(
        (Path(__file__).parent.parent / "docs" / "sources.json").read_text(encoding="utf-8")
    )
}

Answers = dict[str, str]


def asked(
    yes: str = "", no: str = "", stage: str = "growing", kind: str = "evergreen"
) -> DamageKey:
    signs = dict.fromkeys(yes.split(), "yes") | dict.fromkeys(no.split(), "no")
    return judge(stage=stage, kind=kind, signs=signs)


# --- the data


@pytest.mark.parametrize("sign", SIGNS, ids=SIGN_IDS)
def test_sign_is_whole(sign: Sign) -> None:
    assert sign.where in {"plant", "test", "weather", "context"}
    assert sign.source in SOURCES
    assert sign.evidence
    assert sign.label
    assert any(weight for _, weight in sign.yes)
    for weights in (sign.yes, sign.no):
        names = [name for name, _ in weights]
        assert set(names) <= set(CAUSE_IDS) - {"none_of_these"}
        assert len(names) == len(set(names))
        assert all(isinstance(weight, int) and 1 <= abs(weight) <= 7 for _, weight in weights)


def test_every_cause_can_be_found_and_has_its_action() -> None:
    speaks = {name for sign in SIGNS for name, weight in sign.yes if weight > 0}
    assert speaks == set(CAUSE_IDS) - {"none_of_these"}
    assert [name for name, _ in ACTIONS] == [*CAUSE_IDS, "unsure"]
    assert all(len(row) == len(COLUMNS) and set(row) <= ACTION_IDS for _, row in ACTIONS)


# --- the cases


def faults(case: Vignette) -> list[str]:
    """How the answer differs from what the case accepts."""
    answer = DAMAGE_KEY.run(case.inputs())
    named = {answer.fits_best, *answer.also_fits.split(",")}
    checks = {
        f"fits_best {answer.fits_best}": answer.fits_best in case.fits_best,
        f"mentions {named}": set(case.mentions) <= named,
        f"firm {answer.firm}": case.firm in ("either", answer.firm),
        f"action {answer.action}": answer.action in case.actions,
        f"never {answer.action}": answer.action not in case.never,
        f"next_test {answer.next_test}": not case.next_test or answer.next_test in case.next_test,
    }
    return [text for text, fine in checks.items() if not fine]


def test_there_are_cases_enough_and_each_is_cited() -> None:
    assert len(VIGNETTES) >= 60
    assert 0.25 < sum(case.set_aside for case in VIGNETTES) / len(VIGNETTES) < 0.45
    for case in VIGNETTES:
        assert case.source in SOURCES, case.id
        assert case.level in LEVELS, case.id
        assert {*case.yes, *case.no, *case.next_test} <= set(SIGN_IDS), case.id
        assert {*case.fits_best, *case.mentions} <= {*CAUSE_IDS, "unsure"}, case.id
        assert case.actions, case.id
        assert {*case.actions, *case.never} <= ACTION_IDS, case.id
        assert not {*case.actions} & {*case.never}, case.id


@pytest.mark.parametrize(
    "case", [case for case in VIGNETTES if not case.set_aside], ids=lambda case: case.id
)
def test_case_that_the_weights_were_chosen_on(case: Vignette) -> None:
    assert not faults(case)


def test_score_on_the_cases_set_aside(capsys: pytest.CaptureFixture[str]) -> None:
    """Scored after the weights were settled: 35 of 35. A change must say what it does here.

    (Since then: the order of next tests, and a flush without a firm answer once salt is tested.)

    Cases and weights come from one hand, and many cases accept more than one answer: this is no
    proof that the key is right about plants. The best answer that never changes would score 10.
    """
    aside = [case for case in VIGNETTES if case.set_aside]
    wrong = {case.id: faults(case) for case in aside if faults(case)}
    single = sum(len(case.fits_best) == 1 for case in aside)
    with capsys.disabled():
        print(
            f"\ndamage key, cases set aside: {len(aside) - len(wrong)} of {len(aside)} right "
            f"({single} of them accept one cause only); wrong: {wrong}"
        )
    assert (len(aside) - len(wrong), len(aside)) == (35, 35)


# --- what it must never do


@pytest.fixture
def remembered(monkeypatch: pytest.MonkeyPatch) -> None:
    """Evidence does not depend on the stage but for the season: add it up once a set of signs."""
    known: dict[Any, Any] = {}
    add_up = key._cases

    def cases(counted: Answers, seasonal: bool) -> Any:
        at = (seasonal, *sorted(counted.items()))
        if at not in known:
            known[at] = add_up(counted, seasonal)
        return known[at]

    monkeypatch.setattr(key, "_cases", cases)


def offences(stage: str, kind: str, signs: Answers, answer: DamageKey) -> list[str]:
    """The rules that an answer breaks, worked out from the signs alone."""
    yes = [BY_ID[name] for name, given in signs.items() if given == "yes"]
    wet = {"leave", "flush"}
    broken = []
    if {sign.id for sign in yes} & set(ROT_SIGNS):
        if answer.action in wet:
            broken.append("a rot sign, yet " + answer.action)
        if answer.firm == "yes" and answer.fits_best not in ROT_CAUSES:
            broken.append("a rot sign, yet firm on " + answer.fits_best)
    if stage == "rotting" and answer.action in wet:
        broken.append("rotting, yet " + answer.action)
    dry = stage in ("new_shoot", "lost_roots") or (stage == "resting" and kind == "deciduous")
    if dry and answer.action == "flush":
        broken.append(f"flush at {stage}")
    if stage == "lost_roots" and answer.action in ("keep_dry", "leave"):
        broken.append("lost roots, yet " + answer.action)
    if answer.firm == "yes":
        speaking = [s for s in yes if any(n == answer.fits_best and w > 1 for n, w in s.yes)]
        if len({sign.line for sign in speaking}) < 2:
            broken.append("firm on one line of evidence")
        if not any(sign.where == "plant" for sign in speaking):
            broken.append("firm without a sign on the plant")
        if answer.fits_best in ("salt_line", "salty_pot") and not SALT_TESTS & {s.id for s in yes}:
            broken.append("firm on salt without a test")
        if answer.fits_best in ("unsure", "none_of_these"):
            broken.append("firm on nothing")
    if answer.action == "flush" and not SALT_TESTS & {sign.id for sign in yes}:
        broken.append("flush without a test for salt")
    return broken


@pytest.mark.usefixtures("remembered")
def test_every_single_pair_and_triple_of_signs_at_every_stage_and_kind(
    capsys: pytest.CaptureFixture[str],
) -> None:
    counts: Counter[str] = Counter()
    for size in (0, 1, 2, 3):
        for names in itertools.combinations(SIGN_IDS, size):
            signs = dict.fromkeys(names, "yes")
            rot = bool(set(names) & set(ROT_SIGNS))
            for stage in STAGES:
                for kind in KINDS:
                    answer = judge(stage=stage, kind=kind, signs=signs)
                    broken = offences(stage, kind, signs, answer)
                    assert not broken, (stage, kind, names, broken)
                    counts["asked"] += 1
                    counts["with a rot sign"] += rot
                    counts["firm"] += answer.firm == "yes"
                    counts["unsure"] += answer.fits_best == "unsure"
    with capsys.disabled():
        print("\ndamage key, up to three signs:", dict(counts))
    assert counts["asked"] == (1 + 36 + 630 + 7140) * 24
    assert counts["firm"] > 0


ANSWERS = st.dictionaries(st.sampled_from(SIGN_IDS), st.sampled_from(("yes", "no", "not_looked")))


@settings(max_examples=300, deadline=None)
@given(st.sampled_from(STAGES), st.sampled_from(KINDS), ANSWERS, st.randoms())
def test_any_answers_in_any_order(
    stage: str, kind: str, signs: Answers, order: random.Random
) -> None:
    answer = DAMAGE_KEY.run({"stage": stage, "kind": kind} | signs)
    assert not offences(stage, kind, signs, answer)
    assert answer.fits_best in {*CAUSE_IDS, "unsure"}
    assert answer.action in ACTION_IDS
    assert answer.do.endswith(".")
    assert answer.next_test is None or signs.get(answer.next_test, "not_looked") == "not_looked"
    assert set(filter(None, answer.also_fits.split(","))) <= set(CAUSE_IDS) - {answer.fits_best}
    shuffled = list(signs.items())
    order.shuffle(shuffled)
    assert judge(stage=stage, kind=kind, signs=dict(shuffled)) == answer
    looked = {name: given for name, given in signs.items() if given != "not_looked"}
    assert judge(stage=stage, kind=kind, signs=looked) == answer


@pytest.mark.parametrize("stage", STAGES)
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize(
    "signs",
    [
        "repotted_lately",
        "live_prills many_pots_same_feed",
        "soft_skin_slides oldest_leaves_yellow",
        "dark_band_above_medium fed_from_below",
        "crust_fizzes",
        "tips_bitten",
        "black_spreading",
        "purple_ring",
    ],
)
def test_never_firm(signs: str, stage: str, kind: str) -> None:
    assert asked(signs, stage=stage, kind=kind).firm == "no"


def test_context_alone_never_decides() -> None:
    context = [sign.id for sign in SIGNS if sign.where == "context"]
    for size in range(len(context) + 1):
        for names in itertools.combinations(context, size):
            answer = judge(stage="growing", kind="evergreen", signs=dict.fromkeys(names, "yes"))
            assert (answer.fits_best, answer.firm) == ("unsure", "no")


def test_context_adds_two_points_at_most() -> None:
    ring = {"dark_band_above_medium": "yes"}
    kept = dict.fromkeys(
        ["fed_from_below", "live_prills", "few_roots", "many_pots_same_feed"], "yes"
    )
    alone = {case.cause: case.points for case in key._cases(ring, False)}
    both = {case.cause: case.points for case in key._cases(ring | kept, False)}
    assert all(both[name] <= alone[name] + 2 for name in both)
    assert both["salt_line"] == alone["salt_line"] + 2


def jittered(change: Callable[[], int]) -> tuple[Sign, ...]:
    def moved(weights: tuple[tuple[str, int], ...]) -> tuple[tuple[str, int], ...]:
        return tuple((name, weight + change()) for name, weight in weights)

    return tuple(sign._replace(yes=moved(sign.yes), no=moved(sign.no)) for sign in SIGNS)


def test_weights_off_by_one_never_turn_one_firm_cause_into_another(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    rng = random.Random(7)
    plant = {"stage": "maturing", "kind": "unknown"}
    firm: list[tuple[Answers, str]] = []
    for size in (2, 3):
        for names in itertools.combinations(SIGN_IDS, size):
            signs = dict.fromkeys(names, "yes")
            answer = judge(signs=signs, **plant)
            if answer.firm == "yes":
                firm.append((signs, answer.fits_best))
    while len(firm) < 1000:
        names = tuple(rng.sample(SIGN_IDS, rng.randint(4, 10)))
        signs = {name: rng.choice(("yes", "yes", "no")) for name in names}
        answer = judge(signs=signs, **plant)
        if answer.firm == "yes":
            firm.append((signs, answer.fits_best))
    counts: Counter[str] = Counter()
    for _ in range(8):
        monkeypatch.setattr(key, "SIGNS", jittered(lambda: rng.choice((-1, 0, 1))))
        for signs, cause in firm:
            answer = judge(signs=signs, **plant)
            counts["asked"] += 1
            counts["no longer firm"] += answer.firm == "no"
            counts["other firm cause"] += answer.firm == "yes" and answer.fits_best != cause
    with capsys.disabled():
        print("\ndamage key, weights off by one:", dict(counts))
    assert counts["other firm cause"] == 0
    assert counts["no longer firm"] < counts["asked"]


def test_jitter_that_is_made_for_it_cannot_turn_a_firm_cause(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The worst case for every rival: all its weights one up, all of the firm cause's one down."""
    pairs = []
    for names in itertools.combinations(SIGN_IDS, 2):
        signs = dict.fromkeys(names, "yes")
        answer = judge(stage="growing", kind="evergreen", signs=signs)
        if answer.firm == "yes":
            pairs.append((signs, answer.fits_best))
    assert len(pairs) > 10
    for cause in {cause for _, cause in pairs}:

        def moved(weights: tuple[tuple[str, int], ...], firm: str = cause) -> Any:
            return tuple((name, w - 1 if name == firm else w + 1) for name, w in weights)

        worst = tuple(sign._replace(yes=moved(sign.yes), no=moved(sign.no)) for sign in SIGNS)
        monkeypatch.setattr(key, "SIGNS", worst)
        for signs, firm in pairs:
            if firm == cause:
                answer = judge(stage="growing", kind="evergreen", signs=signs)
                assert answer.firm == "no" or answer.fits_best == cause


# --- what it should say


def test_not_looked_is_an_answer_of_its_own() -> None:
    assert asked("dark_band_above_medium").next_test == "crust_dissolves"
    assert asked("dark_band_above_medium", "crust_dissolves").next_test == "rested_drip_high"
    assert asked("brown_inside_pot") != asked("brown_inside_pot", "soft_skin_slides")


def test_a_dark_ring_always_names_its_rivals() -> None:
    for stage, kind in itertools.product(STAGES, KINDS):
        for more in ("", " crust_dissolves", " sour_smell"):
            answer = asked("dark_band_above_medium" + more, stage=stage, kind=kind)
            assert any("stain" in text and "lack of air" in text for text in answer.warnings)
    assert not any("stain" in text for text in asked("tips_dead").warnings)


@pytest.mark.parametrize("pair", EXCLUSIVE)
def test_answers_that_contradict_each_other_are_not_counted(pair: tuple[str, str]) -> None:
    both = asked(" ".join(pair))
    assert any("contradict" in text for text in both.warnings)
    assert (both.fits_best, both.firm) == ("unsure", "no")
    if set(pair) & set(ROT_SIGNS):
        assert both.action == "look_inside"
    for seen, other in (pair, pair[::-1]):
        assert asked(seen).next_test != other
    assert key._counted(dict.fromkeys((*pair, "tips_dead"), "yes")) == {"tips_dead": "yes"}


def test_a_reading_that_contradicts_itself_is_no_test_for_salt() -> None:
    salty = "tips_dead live_prills many_pots_same_feed rested_drip_high"
    assert asked(salty).firm == "yes"
    assert asked(salty + " rested_drip_low").firm == "no"


def test_unsure_names_the_cheapest_test_that_parts_the_leaders() -> None:
    answer = asked("soft_leaf_spots cold_night")
    assert answer.fits_best == "unsure"
    assert {"soft_rot", "cold"} <= set(answer.also_fits.split(","))
    assert answer.next_test == "sunk_pits"
    assert asked("purple_ring").next_test != "purple_ring"
    assert judge(stage="growing", kind="evergreen", signs=dict.fromkeys(SIGN_IDS, "no")) == (
        asked("", " ".join(SIGN_IDS))
    )
    assert asked("", " ".join(SIGN_IDS)).next_test is None
    assert asked("", " ".join(SIGN_IDS)).fits_best == "none_of_these"


def test_growers_common_practice() -> None:
    few = asked("dark_band_above_medium live_prills few_roots", "tips_dead brown_inside_pot")
    assert (few.fits_best, few.firm, few.next_test) == ("salt_line", "no", "crust_dissolves")
    for reading in ({"rested_drip_high": "no"}, {"rested_drip_low": "yes"}):
        for harm in ({}, {"dark_band_above_medium": "yes"}, {"old_roots_only": "yes"}):
            answer = judge(
                stage="growing", kind="deciduous", signs={"few_roots": "no"} | reading | harm
            )
            assert answer.action == "leave", (reading, harm)


# --- the action by stage


@pytest.mark.parametrize("stage", STAGES)
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("cause", [*CAUSE_IDS, "unsure"])
def test_stage_action_always_answers(kind: str, stage: str, cause: str) -> None:
    plant = {"kind": kind, "stage": stage, "cause": cause}
    north, south = (STAGE_ACTION.run(plant | {"hemisphere": side}) for side in ("north", "south"))
    assert north.action in ACTION_IDS
    assert all(text.endswith(".") for text in (north.why, north.when, north.not_now))
    assert (north.action, north.why, north.not_now) == (south.action, south.why, south.not_now)
    if stage == "rotting":
        assert north.action in ("look_inside", "treat")
    if stage == "lost_roots":
        assert north.action in ("repot", "look_inside", "treat")
    if stage == "new_shoot" or (stage == "resting" and kind == "deciduous"):
        assert north.action != "flush"
    if stage == "growing":
        assert north.action not in ("repot", "keep_dry")
    if stage == "new_shoot" and kind == "deciduous" and north.action != "treat":
        assert "7.6 cm" in north.when
        assert "6.4 to 12.7 cm" in north.when
    how = STAGE_ACTION.words(STAGE_ACTION.complete(plant), north)[1]
    assert ("the moment" in how) + ("when the new shoot starts" in how) < 2
    assert how.lower().count("look again in") < 2


def test_months_are_six_apart() -> None:
    resting = {"kind": "deciduous", "stage": "resting", "cause": "unsure"}
    assert "March" in STAGE_ACTION.run(resting).when
    assert "September" in STAGE_ACTION.run(resting | {"hemisphere": "south"}).when


def test_new_roots_are_long_enough_at_one_length() -> None:
    said = []
    for path in Path(key.__file__).parent.rglob("*.py"):
        text = re.sub(r'"\s*\n\s*f?"', "", path.read_text(encoding="utf-8"))
        said += re.findall(r"roots (?:are|reach) about ([\d.]+) cm", text)
    assert len(said) >= 4
    assert set(said) == {str(ROOT_TRIGGER_CM)}


@pytest.mark.parametrize("cause", ["salt_line", "salty_pot"])
def test_a_resting_plant_that_keeps_its_leaves_may_be_flushed(cause: str) -> None:
    for kind in ("evergreen", "monopodial", "unknown"):
        answer = STAGE_ACTION.run({"kind": kind, "stage": "resting", "cause": cause})
        assert answer.action == "flush"
        assert "warm day" in answer.when


def test_words_are_plain_and_the_light_engine_says_the_same() -> None:
    rng = random.Random(3)
    questions = []
    for form in FORMS:
        asked_of = [form.example, *form.cases]
        for _ in range(40):
            if form is DAMAGE_KEY:
                names = rng.sample(SIGN_IDS, rng.randint(0, 12))
                signs = {name: rng.choice(("yes", "no")) for name in names}
                asked_of.append({"stage": rng.choice(STAGES), "kind": rng.choice(KINDS)} | signs)
        for case in asked_of:
            questions.append(
                {
                    "function": f"{form.function.__module__}.{form.function.__name__}",
                    "words": f"{form.words.__module__}.{form.words.__name__}",
                    "arguments": form.complete(case),
                }
            )
    for ours, theirs in zip(native(questions), light(questions), strict=True):
        assert ours == theirs
        said = " ".join(ours["words"]).lower()
        for word in ("clean", "safe", "please", "sorry", "invalid", "!", "points", "score", "_"):
            assert word not in said, said
