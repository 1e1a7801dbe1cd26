"""The command line, as a script or a person meets it."""

from __future__ import annotations

import contextlib
import io
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from saltline.__main__ import main
from saltline.forms import all_forms
from test_shown import values_of

CALCULATORS = Path(__file__).resolve().parent.parent / "calculators"
READING = ("run", "meter-reading", "reading=500", "scale=us_cm", "sample_c=20", "compensated=no")


def saltline(*arguments: str) -> subprocess.CompletedProcess[str]:
    """Run it in a bare checkout: no packages but the standard library."""
    return subprocess.run(
        [sys.executable, "-I", "-S", "-c", RUN, *arguments],
        capture_output=True,
        text=True,
        cwd=CALCULATORS,
        check=False,
    )


RUN = "import runpy, sys; sys.path[:0] = '.'; runpy.run_module('saltline', run_name='__main__')"


def test_an_answer_as_json() -> None:
    done = saltline(*READING, "--json")
    assert done.returncode == 0, done.stderr
    out = json.loads(done.stdout)
    assert out["results"]["ec_ms_cm"] == pytest.approx(0.558, rel=1e-12)
    assert set(out) == {"id", "version", "inputs", "results", "warnings", "sources"}
    assert out["results"]["ppm500"] == pytest.approx(279.0)


def test_an_answer_for_people() -> None:
    done = saltline(*READING)
    assert "Conductivity at 25 °C: 0.558 mS/cm" in done.stdout


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("reading=abc", "scale=us_cm"), "reading must be a number, like 1.2 (not 'abc')"),
        (("reading=nan", "scale=us_cm"), "reading must be a number, like 1.2 (not 'nan')"),
        (("reading=-1", "scale=us_cm"), "reading must be 0 or more"),
        (("reading=1",), "scale is missing"),
        (("reading=1", "scale=kelvin"), "scale must be one of us_cm, "),
        (("reading=1", "scale=us_cm", "colour=red"), "colour is not an input of meter-reading"),
        (("reading",), "reading needs a value"),
        (("a\nb=1",), "a\\nb is not an input of meter-reading"),
        (("reading=1", "scale=us_cm", "sample_c=36"), "sample_c must be 35 °C or less"),
    ],
)
def test_bad_input_is_one_sentence(arguments: tuple[str, ...], sentence: str) -> None:
    done = saltline("run", "meter-reading", *arguments, "--json")
    assert done.returncode == 2
    assert done.stdout == ""
    assert done.stderr.startswith(sentence)
    assert done.stderr.count("\n") == 1


def test_list_names_every_calculator_with_its_bounds() -> None:
    listed = json.loads(saltline("list", "--json").stdout)
    found = {form["id"]: form for form in listed}
    reading = found["meter-reading"]["inputs"][0]
    assert (reading["name"], reading["low"], reading["required"]) == ("reading", 0, True)
    assert saltline("list").stdout.count("\n") == len(listed)


def test_an_unknown_command_says_how() -> None:
    for arguments in ((), ("run",), ("run", "no-such"), ("walk", "x")):
        done = saltline(*arguments)
        assert done.returncode == 2
        assert done.stderr


JUNK = st.sampled_from(
    ["", " ", "=", ",", "none", "nan", "1e999", "-1", "1,5", "1_0", "0x1", "\u0663", "\ud800", "\0"]
) | st.text(max_size=8)


def typed(value: Any) -> str:
    """A value as an argument."""
    if value is None:
        return ""
    return ",".join(map(str, value)) if isinstance(value, list) else str(value)


@st.composite
def lines(draw: st.DrawFn) -> list[str]:
    """A command: mostly a whole one, with words left out, repeated, or made up."""
    form = draw(st.sampled_from(list(all_forms().values())))
    words = [f"{name}={typed(value)}" for name, value in draw(values_of(form)).items()]
    for name in draw(st.lists(st.sampled_from([item.name for item in form.inputs]), max_size=2)):
        words.append(name + draw(st.sampled_from(["=", "=", "=", "", " ="])) + draw(JUNK))
    kept = [word for word in words if draw(st.integers(0, 19))]
    kept += draw(st.lists(JUNK, max_size=1))
    return ["run", form.id, *kept, *draw(st.sampled_from([["--json"], ["--json"], []]))]


@settings(max_examples=500, deadline=None, derandomize=True)
@given(line=lines())
def test_anything_typed_is_answered_or_named_in_one_line(line: list[str]) -> None:
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        code = main(line)
    if code == 0:
        assert err.getvalue() == ""
        if "--json" in line:
            answer = json.loads(out.getvalue())
            assert ("results" in answer) != ("refused" in answer)
            assert answer["id"] == line[1]
        return
    assert code == 2
    assert out.getvalue() == ""
    said = err.getvalue()
    assert len(said.splitlines()) == 1
    names = [item.name for item in all_forms()[line[1]].inputs]
    assert said.startswith(tuple(names)) or " is not an input of " in said, said
