"""What scripts, links and pages may rely on: ids, names, defaults, words, exit codes, refusals.

`vectors/contract.csv` is the whole promise. An input is `name`, with `:its|words`, and `=default`;
`=null` may stay empty, and what is marked `?` is refused, not bad, where it is missing.
"""

from __future__ import annotations

import csv
import json
import re
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from saltline.__main__ import main
from test_command import saltline

TABLE = Path(__file__).parent / "vectors" / "contract.csv"
STAGES = "growing maturing resting new_shoot lost_roots rotting"
KINDS = "deciduous evergreen monopodial unknown"
SIGNS = (
    "dark_band_above_medium tips_dead brown_inside_pot worst_at_bottom air_roots_dry_back "
    "soft_skin_slides hollow_papery firm_dark sour_smell crust_dissolves crust_fizzes "
    "rested_drip_high rested_drip_low many_pots_same_feed one_pot_only cold_night sunk_pits "
    "hot_day tips_bitten purple_ring black_spreading leaf_tips_dry oldest_leaves_yellow "
    "shrivelled_wet shrivelled_dry repotted_lately fed_from_below live_prills few_roots "
    "softened_water unfed_and_flushed roots_branch_behind_tip stippled_leaves webbing "
    "soft_leaf_spots old_roots_only"
)
CAUSES = (
    "salt_line salty_pot lime wet_rot black_rot fusarium soft_rot drought cold heat chewing_pest "
    "mites rest medium_change old_age none_of_these"
)
ACTIONS = {"look_inside", "read", "flush", "repot", "keep_dry", "leave", "treat"}
WORDS = {"STAGE": STAGES, "KIND": KINDS, "CAUSE": CAUSES}
HEAD = {"id", "version", "inputs", "warnings", "sources"}


class Promised(NamedTuple):
    """One input."""

    name: str
    words: list[str]
    default: str | None  # None: must be given
    refused: bool  # where it is missing


class Promise(NamedTuple):
    """One calculator."""

    id: str
    inputs: list[Promised]
    results: list[str]
    run: list[str]


def _input(text: str) -> Promised:
    left, equals, default = text.partition("=")
    name, _, said = left.partition(":")
    words = [word for part in said.split("|") for word in WORDS.get(part, part).split()]
    return Promised(name.rstrip("?"), words, default if equals else None, name.endswith("?"))


def _promises() -> list[Promise]:
    with TABLE.open(encoding="utf-8", newline="") as file:
        made = []
        for row in csv.DictReader(file):
            inputs = []
            for one in map(_input, row["inputs"].split()):
                names = SIGNS.split() if one.name == "SIGNS" else [one.name]
                inputs += [one._replace(name=name) for name in names]
            made.append(Promise(row["id"], inputs, row["results"].split(), row["run"].split()))
        return made


PROMISES = _promises()
BY_ID = pytest.mark.parametrize("promise", PROMISES, ids=lambda promise: promise.id)


@cache
def listed() -> dict[str, Any]:
    """What `list --json` says in a bare checkout."""
    done = saltline("list", "--json")
    assert done.returncode == 0, done.stderr
    return {form["id"]: form for form in json.loads(done.stdout)}


class Printed(NamedTuple):
    code: int
    out: str
    err: str


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Any:
    """Run a calculator in this process."""

    def called(*words: str) -> Printed:
        code = main(["run", *words, "--json"])
        return Printed(code, *capsys.readouterr())

    return called


def answered(done: Printed) -> dict[str, Any]:
    """The object of an answer or a refusal, which is whole."""
    assert (done.code, done.err) == (0, ""), done
    out: dict[str, Any] = json.loads(done.out)
    if "refused" in out:
        assert set(out) == HEAD | {"refused", "instead"}
        assert out["refused"].endswith(".")
        assert out["instead"].endswith(".")
    else:
        assert set(out) == HEAD | {"results"}
        for name, value in out["results"].items():
            assert value not in ("none", "None", "null"), name
            assert value != "" or name == "also_fits", name  # a list of no causes
    assert isinstance(out["version"], int)
    return out


def complaint(done: Printed) -> str:
    """The one line about bad input."""
    assert (done.code, done.out) == (2, ""), done
    assert re.fullmatch(r"[^\n]+\n", done.err)
    return done.err


def without(promise: Promise, name: str) -> list[str]:
    return [promise.id, *(word for word in promise.run if not word.startswith(name + "="))]


@BY_ID
def test_it_is_listed_as_promised(promise: Promise) -> None:
    form = listed()[promise.id]
    assert isinstance(form["version"], int)
    inputs = {item["name"]: item for item in form["inputs"]}
    for one in promise.inputs:
        item = inputs[one.name]
        needed = one.default is None and not one.refused
        assert item["required"] == needed, one.name
        if one.default not in {None, "null"}:
            assert str(item["default"]).removesuffix(".0") == one.default, one.name
        else:
            assert item["default"] is None, one.name
        if one.words:
            assert item["options"] == one.words, one.name
    more = set(inputs) - {one.name for one in promise.inputs}
    assert not any(inputs[name]["required"] for name in more), more
    assert set(promise.results) <= {result["name"] for result in form["results"]}


@BY_ID
def test_what_is_required_is_enough(promise: Promise, run: Any) -> None:
    out = answered(run(promise.id, *promise.run))
    assert set(promise.results) <= set(out["results"])
    given = dict(word.split("=") for word in promise.run)
    for one in promise.inputs:
        if one.default not in {None, "null"} and one.name not in given:
            assert str(out["inputs"][one.name]).removesuffix(".0") == one.default
    for low, value in out["results"].items():
        high = out["results"].get(low.removesuffix("_low") + "_high")
        centre = out["results"].get(low.removesuffix("_low"), value)
        if low.endswith("_low") and isinstance(value, float | int) and high is not None:
            assert value <= centre <= high, low


@BY_ID
def test_what_is_missing_is_named(promise: Promise, run: Any) -> None:
    for one in promise.inputs:
        if one.default is not None:
            continue
        done = run(*without(promise, one.name))
        if not one.refused:
            assert complaint(done).startswith(f"{one.name} is missing")
        else:
            assert "refused" in answered(done)


@BY_ID
def test_beyond_a_bound_the_bound_is_named(promise: Promise, run: Any) -> None:
    for item in listed()[promise.id]["inputs"]:
        others = without(promise, item["name"])
        for bound, step in ((item.get("low"), -1), (item.get("high"), 1)):
            if bound is not None and item["kind"] == "number":
                said = complaint(run(*others, f"{item['name']}={bound + step}"))
                shown = bound * 100 if item["unit"] == "share" else bound
                assert said.startswith(f"{item['name']} must be {shown:.12g}")
        said = complaint(run(*others, f"{item['name']}=~"))
        assert said.startswith(item["name"] + " ")


@BY_ID
def test_every_word_of_the_vocabulary_is_taken(promise: Promise, run: Any) -> None:
    for one in promise.inputs:
        for word in one.words:
            out = answered(run(*without(promise, one.name), f"{one.name}={word}"))
            always = promise.id in {"damage-key", "stage-action"}
            assert not (always and "refused" in out)
            if always:
                assert out["results"]["action"] in ACTIONS


def test_what_does_not_exist_is_null(run: Any) -> None:
    for words, names in (
        (("medium-rise", "grain_mm=8", "pot_height_mm=100", "water_level_mm=20"),
         ("damp_rise_mm", "saturated_rise_mm")),
        (("build-up", "start_ms_cm=0.5", "feed_ms_cm=0.5", "limit_ms_cm=5", "water_held_ml=150",
          "water_use_ml_day=10", "drained_share=0.5"), ("days_high",)),
        (("tube-rise", "radius_mm=0.1"), ("rise_then_mm",)),
        (("drift", "days=0,7,14", "readings=1,1,1", "limit=2"), ("weeks_high",)),
        (("sample", "pots=12", "spread_percent=20", "within_percent=10"), ("sample_to_find",)),
    ):  # fmt: skip
        out = answered(run(*words))
        assert [out["results"][name] for name in names] == [None] * len(names), words[0]


def test_a_bare_checkout_answers_as_this_one(run: Any) -> None:
    words = ("water-blend", "tap_ms_cm=0.7", "target_ms_cm=0.3", "batch_l=10")
    bare = saltline("run", *words, "--json")
    assert bare.stdout == run(*words).out
