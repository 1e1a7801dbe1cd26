"""One measured pot beside the model: the element `salt-experiment`, answered for its example."""

from __future__ import annotations

import json
from html import escape
from pathlib import Path

from saltline.declare import UNITS
from saltline.forms import all_forms
from saltline.pictures.pot_test import pot_test as picture
from saltline.pictures.pot_test import pot_test_table
from saltline.pot_sheet import EVENTS
from saltline.pot_test import pot_test
from saltline.words.pot_test import pot_test as words
from saltline_pages import shown

SHEET = Path(__file__).resolve().parent.parent.parent / "docs" / "sheets" / "experiment.csv"
# What the element asks, as the question's names for it.
ASKED = {
    "function": "saltline.pot_test.pot_test",
    "words": "saltline.words.pot_test.pot_test",
    "picture": "saltline.pictures.pot_test.pot_test",
    "table": "saltline.pictures.pot_test.pot_test_table",
}
MOST = 20000  # signs in a sheet
NAMED = {
    "pot": "the pot, filled dry",
    "rinse": "rinse water",
    "salt_bath": "salt bath at its end",
    "drained": "drained pot, weighed",
    "rest": "rest",
    "drip": "first drips",
    "pour": "pour",
    "soak": "soak",
    "last_bath": "last bath",
}
SCALES = ("mS/cm", "µS/cm", "ppm500", "ppm640", "ppm700", "CF")
FIGURES = (
    ("volume_ml", "Water, or size of the pot", "mL"),
    ("minutes", "Minutes", "min"),
    ("reading", "Reading", ""),
    ("weight_g", "Weight", "g"),
    ("grain_mm", "Size of the granules", "mm"),
)


def experiment_html() -> str:
    """The element with its form, the example's lines, and their answer."""
    sheet = SHEET.read_text(encoding="utf-8")
    asks = {"asked": ASKED, "units": {"ms_cm": [[UNITS["ms_cm"][0], 1, 0]]}}
    asks |= {"needs": {name: [*needs, *may] for name, needs, may in EVENTS}}
    text = json.dumps(asks, separators=(",", ":"))
    return (
        f'<salt-experiment data-state="static" data-asks="{" ".join(ASKED.values())}">'
        '<form novalidate autocomplete="off" aria-labelledby="pot-test"><h3 id="pot-test">'
        'Your sheet</h3><p class="salt-example"><span>Example numbers, invented. Put your own '
        "lines in their place.</span></p>"
        '<div class="salt-field"><label for="pot-test-sheet">Lines of your sheet</label>'
        '<p class="salt-hint" id="pot-test-hint">paste them, or add them one by one below; they '
        "stay on this device</p>"
        f'<textarea id="pot-test-sheet" name="sheet" rows="12" maxlength="{MOST}" '
        'spellcheck="false" autocapitalize="off" aria-describedby="pot-test-hint">'
        f"{escape(sheet)}</textarea></div>"
        f"{_line()}"
        '<div class="salt-actions"><button type="submit" class="salt-main">Compare with the model'
        '</button><button type="button" data-do="save">Save as a file</button>'
        '<button type="button" data-do="open">Open a file</button>'
        '<button type="button" data-do="empty">Start an empty sheet</button>'
        '<input type="file" accept=".csv,.txt,text/csv" hidden></div>'
        f'<p class="salt-note" role="status"></p></form>{_answer(sheet)}'
        f'<script type="application/json">{text}</script></salt-experiment>'
    )


def _line() -> str:
    """The form for one more line."""
    events = "".join(f'<option value="{name}">{NAMED[name]}</option>' for name, _, _ in EVENTS)
    written = "".join(f"<option>{scale}</option>" for scale in SCALES)
    scales = f'<select class="salt-unit" name="scale" aria-label="Scale">{written}</select>'
    fields = "".join(
        f'<div class="salt-field" data-for="{name}"><label for="pot-test-{name}">{label}</label>'
        f'<div class="salt-box"><input id="pot-test-{name}" name="{name}" inputmode="decimal">'
        f"{scales if name == 'reading' else f'<span class="salt-unit">{unit}</span>'}</div></div>"
        for name, label, unit in FIGURES
    )
    return (
        '<details class="salt-fold"><summary>Add a line</summary>'
        '<div class="salt-field"><label for="pot-test-event">What you did or read</label>'
        '<div class="salt-box"><select id="pot-test-event" class="salt-wide" name="event">'
        f"{events}</select></div></div>{fields}"
        '<div class="salt-field"><label for="pot-test-note">Note</label><div class="salt-box">'
        '<input id="pot-test-note" name="note" maxlength="120"></div></div>'
        '<button type="button" class="salt-plain-button" data-do="add">Add this line</button>'
        "</details>"
    )


def _answer(sheet: str) -> str:
    answer = pot_test(sheet=sheet)
    if answer.missing or answer.refused:
        raise ValueError(f"docs/sheets/experiment.csv: {answer.missing} {answer.refused}")
    verdict, number, reason = words({}, answer)
    form = all_forms()["flush-learn"]  # knows the units, which is all that a drawing asks of it

    def put(text: str) -> str:
        return shown.fill(text, form, {}, {}, escape)

    heads, *rows = pot_test_table({}, answer)
    titles = "".join(f'<th scope="col">{head}</th>' for head in heads)
    lines = ""
    for row in rows:
        cells = zip(heads, row, strict=True)
        lines += "<tr>" + "".join(f'<td data-label="{h}">{put(c)}</td>' for h, c in cells) + "</tr>"
    return (
        '<div class="salt-answer" aria-live="polite">'
        f'<p class="salt-say">{escape(verdict)}</p><p class="salt-number">{escape(number)}</p>'
        f'<p class="salt-why">{escape(reason)}</p>'
        f'<div class="salt-picture">{put(picture({}, answer))}</div>'
        f'<div class="salt-plain"><table><thead><tr>{titles}'
        f"</tr></thead><tbody>{lines}</tbody></table></div>"
        '<section class="salt-refused" hidden><h4>Lines that were not taken</h4><ul></ul></section>'
        "</div>"
    )
