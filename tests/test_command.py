"""The command line, as a script or a person meets it."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

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
