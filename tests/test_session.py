"""A flush session as data: what follows what, and links that carry it."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

import js

HOUR = 3_600_000
BEGIN = """
  const m = await load('session.js');
  const link = await load('link.js');
  const pot = (name) => m.pot({ name, pot_l: 1, grain_mm: 8, stage: 'growing', kind: 'unknown' });
"""


def run(body: str, data: Any = None) -> Any:
    return js.run(BEGIN + body, data)


def test_a_morning_has_three_rounds_an_hour_apart_and_then_the_night() -> None:
    found = run("""
      let s = { ...m.fresh(), pots: [pot('a')], phase: 'drips' };
      const seen = [];
      for (let at = 0; at < 5; at++) {
        s = m.advance(s, at);
        seen.push([s.phase, s.round, s.until]);
      }
      return seen;""")
    assert found[:4] == [
        ["pours", 1, None],
        ["pours", 2, 1 + HOUR],
        ["pours", 3, 2 + HOUR],
        ["night", 0, None],
    ]


def test_rests_are_taken_from_the_clock() -> None:
    log = run(f"""
      let p = m.drip(pot('a'), 1.9, 0, 12);
      p = m.pour(p, 150, null, 60_000);
      p = m.pour(p, 150, 0.6, 60_000 + {HOUR});
      p = m.drip(p, 1.1, {14 * HOUR}, 12.5);
      return p.log;""")
    assert log == ["drip:1.9", "pour:150", "rest:1", "pour:150:0.6", "rest:12.5", "drip:1.1"]


def test_a_session_without_pots_is_done() -> None:
    assert run("return m.advance({ ...m.fresh(), phase: 'pours' }, 0).phase;") == "done"
    assert run("return m.clock(3_661_000, 0) + ' ' + m.clock(5, 90);") == "1:01:01 0:00"


@settings(max_examples=10, deadline=None)
@given(st.lists(st.text(max_size=40), min_size=12, max_size=12))
def test_any_name_survives_the_link(names: list[str]) -> None:
    found = run(
        """
      const pots = data.map((name) => m.drip(m.pour(pot(name), 150, 1e-7, 0), 1.25, 9e6, 2.5));
      const s = { ...m.fresh(), rinse: 0.25, pots };
      const text = m.toLink(s);
      const back = m.fromLink(link.parse(text));
      return [text, back.rinse, back.pots.map((p) => [p.name, p.log, p.drips])];""",
        names,
    )
    text, rinse, pots = found
    assert set(text[1:]) <= set(
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-~;=,"
    )
    assert rinse == 0.25
    for at, (name, (got, log, drips)) in enumerate(zip(names, pots, strict=True), start=1):
        # An empty name is left out of the link and comes back as a number.
        assert got == (name[:60] or f"Pot {at}")
        assert log[-2:] == ["rest:2.5", "drip:1.25"]
        assert drips == [1.25]


@settings(max_examples=10, deadline=None)
@given(st.lists(st.text(max_size=60), min_size=200, max_size=200))
def test_any_link_is_read_without_a_throw(tails: list[str]) -> None:
    body = """
      return data.map((tail) => {
        const found = link.parse('#session=1;rinse=0.2;pot_l1=1;grain_mm1=8;log1=' + tail);
        const session = found && m.fromLink(found);
        return !session || session.pots.every((p) => p.log.every((w) => /^[a-z0-9.:]+$/.test(w)));
      });"""
    assert all(run(body, tails))
