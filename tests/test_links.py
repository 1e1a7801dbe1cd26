"""Links that were handed out keep working, and no link can do more than fill in a form."""

from __future__ import annotations

import json
import random
from pathlib import Path
from typing import Any

import pytest

import js
from saltline.errors import Refused
from saltline.forms import all_forms
from saltline_pages import links
from saltline_pages.calculator import declaration

VECTORS = Path(__file__).parent / "vectors"
# Links as they were handed out, with the inputs they carry. Never change a row: add one for each
# new version of a method.
OLD: list[tuple[str, dict[str, Any]]] = json.loads((VECTORS / "old-links.json").read_text("utf-8"))
FORMS = all_forms()

READ = """
  const [link, read] = [await load('link.js'), await load('read.js')];
  return data.map(([form, text]) => {
    const found = link.parse(text);
    const back = {};
    for (const item of form.inputs) {
      const typed = found.values[item.name] ?? '';
      const text = item.kind === 'numbers' ? typed.replaceAll(',', ' ') : typed;
      const got = read.field(item, text);
      back[item.name] = 'value' in got ? got.value : 'not read: ' + typed;
    }
    return { id: found.id, version: found.version, dropped: found.dropped, back };
  });"""


def name_of(text: str) -> tuple[str, int]:
    head, version = text[1:].split(";", maxsplit=1)[0].split("=")
    return head, int(version)


def test_every_version_of_every_method_has_a_link_that_was_handed_out() -> None:
    there = {name_of(text) for text, _ in OLD}
    for form in FORMS.values():
        for version in range(1, form.version + 1):
            assert (form.id, version) in there, "add a link of this version to old-links.json"


def test_old_links_are_read_and_answered() -> None:
    cases = [(declaration(FORMS[name_of(text)[0]]), text) for text, _ in OLD]
    for (text, inputs), found in zip(OLD, js.run(READ, cases), strict=True):
        assert not found["dropped"], text
        form = FORMS[found["id"]]
        for name, value in inputs.items():
            if any(item.name == name for item in form.inputs):
                assert found["back"][name] == value, (text, name)
        try:
            form.run(form.complete(found["back"]))
        except Refused:
            continue


SEEDS = (
    *("<img src=x onerror=alert(1)>", "</script><script>", "javascript:1", "'", '"', "`${1}`"),
    *("%3Cb%3E", "~3C~69~6D~67~3E", "~ZZ", "~", "~E2~80~AE", "\u202e", "\ud83d\ude00", "\0", "%00"),
    *("__proto__", "constructor", "toString", "=", ";", ",", "#", "&", "%", ".."),
    *("1e999", "-0", "NaN", "Infinity", "9" * 400, "club=1", "name=", "case_reading=", "session=1"),
)


def fragments(count: int, seed: int) -> list[str]:
    """Fragments made of parts of real ones and of what attackers try."""
    rng = random.Random(seed)
    names = sorted({item.name for form in FORMS.values() for item in form.inputs})
    heads = [f"#{form.id}={form.version}" for form in FORMS.values()] + ["#club=1", "#session=1"]
    made = []
    for _ in range(count):
        parts = [rng.choice([*heads, "#", "#x=1", ""])]
        for _ in range(rng.randrange(6)):
            name = rng.choice([*names, *SEEDS]) if rng.random() < 0.9 else str(rng.random())
            value = "".join(
                rng.choice([*SEEDS, str(rng.random()), chr(rng.randrange(1, 0xD800)), "yes"])
                for _ in range(rng.randrange(4))
            )
            parts.append(name + rng.choice(["=", "=", "=", "", "=="]) + value)
        made.append(rng.choice([";", ";", ";", "&", ""]).join(parts))
    return made


FUZZ = """
  const [link, read, settings] = [await load('link.js'), await load('read.js'),
    await load('settings.js')];
  return data.texts.map((text) => {
    const found = link.parse(text);
    if (!found) return null;
    const form = data.forms[found.id];
    const outcomes = (form?.inputs ?? []).map((item) => {
      const got = read.field(item, found.values[item.name] ?? '');
      return 'value' in got || typeof read.sentence(item, got) === 'string';
    });
    return { values: found.values, whole: outcomes.every(Boolean),
      settings: settings.usable(found.values) };
  });"""


@pytest.mark.parametrize(
    "count", [2000, pytest.param(20_000, marks=pytest.mark.long)], ids=["some", "many"]
)
def test_no_fragment_throws_or_reaches_further_than_its_values(count: int) -> None:
    forms = {name: declaration(form) for name, form in FORMS.items()}
    texts = fragments(count, count)
    assert len(set(texts)) > count / 2
    for text, found in zip(texts, js.run(FUZZ, {"texts": texts, "forms": forms}), strict=True):
        if found is None:
            continue
        assert found["whole"], text
        assert all(isinstance(value, str) for value in found["values"].values()), text
        kept = found["settings"]
        assert set(kept) <= {"name", "tap_ms_cm", "scale", "units", "hemisphere"}, text
        assert len(kept.get("name", "")) <= 60
        assert 0 <= kept.get("tap_ms_cm", 0) <= 5


def test_club_settings_choose_the_units_that_are_declared() -> None:
    """The places in settings.js are those of declare.py."""
    from saltline.declare import OTHER_UNITS, UNITS
    from saltline.forms.meter import SCALES

    body = """
      let kept = '{}';
      globalThis.localStorage = { getItem: () => kept, setItem: (_, text) => { kept = text; } };
      const m = await load('settings.js');
      return data.map((values) => {
        kept = '{}';
        m.set(m.usable(values));
        return JSON.parse(kept);
      });
    """

    def way(unit: str, at: int) -> str:
        return [UNITS[unit][0], *(other[0] for other in OTHER_UNITS[unit])][at]

    shown = {"ms_cm": "mS/cm", "us_cm": "µS/cm", "cf": "mS/cm"}
    scales = [option.value for option in SCALES]
    for scale, kept in zip(scales, js.run(body, [{"scale": s} for s in scales]), strict=True):
        wanted = shown.get(scale, f"ppm ({scale.removeprefix('ppm')})")
        assert way("ms_cm", kept["units"]["ms_cm"]) == wanted
        assert kept["facts"] == {"scale": scale}
    metric, us = (kept["units"] for kept in js.run(body, [{"units": "metric"}, {"units": "us"}]))
    assert {unit: way(unit, at) for unit, at in us.items()} == {
        "c": "°F", "ml": "US fl oz", "l": "US gal", "mm": "in",
    }  # fmt: skip
    assert set(metric.values()) == {0}


def test_a_club_link_is_written_as_python_writes_it() -> None:
    name = "Tarn Valley; Ines & Bo <3 é"
    body = "const m = await load('settings.js'); return m.toFragment(data);"
    made = js.run(body, {"name": name, "tap_ms_cm": 0.35, "hemisphere": "south"})
    assert made == f"#club=1;name={links.escaped(name)};tap_ms_cm=0.35;hemisphere=south"
