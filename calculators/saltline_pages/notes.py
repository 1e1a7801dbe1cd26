"""This pot's notes: the form of the element `salt-notes`, which keeps them on the device."""

from __future__ import annotations

METHODS = ("first drips after standing covered", "soak water", "first drips today", "pour-through")
UNITS = ("mS/cm", "µS/cm", "ppm (500)", "ppm (640)", "ppm (700)")


def notes_html() -> str:
    """The element with its form; the script fills in what was kept."""
    methods = "".join(f"<option>{method}</option>" for method in METHODS)
    units = "".join(f'<option value="{at}">{unit}</option>' for at, unit in enumerate(UNITS))
    return (
        '<salt-notes><form novalidate autocomplete="off" aria-labelledby="pot-notes">'
        '<h3 id="pot-notes">This pot’s notes</h3>'
        "<p>The last ten readings, and the day to look again. They stay on this device.</p>"
        '<p class="salt-due" role="status"></p>'
        '<div class="salt-field"><label for="notes-pot">Name of the pot</label>'
        '<div class="salt-box"><input id="notes-pot" name="pot" list="notes-pots" maxlength="60">'
        '<datalist id="notes-pots"></datalist></div></div>'
        '<div class="salt-field"><label for="notes-reading">Reading</label>'
        '<div class="salt-box"><input id="notes-reading" name="reading" inputmode="decimal">'
        f'<select class="salt-unit" name="unit" aria-label="Unit">{units}</select></div></div>'
        '<div class="salt-field"><label for="notes-method">What was read</label>'
        '<div class="salt-box"><select id="notes-method" class="salt-wide" name="method">'
        f"{methods}</select></div></div>"
        '<div class="salt-field"><label for="notes-date">Date</label>'
        '<div class="salt-box"><input type="date" id="notes-date" name="date"></div></div>'
        '<div class="salt-actions"><button type="submit" class="salt-main">Keep this reading'
        '</button><button type="button" data-do="forget">Forget this pot</button></div>'
        '<p class="salt-note" role="status"></p>'
        '<div class="salt-plain"><table hidden><thead><tr><th scope="col">Date</th>'
        '<th scope="col">How</th><th scope="col">Reading</th></tr></thead><tbody></tbody></table>'
        '</div><div class="salt-field"><label for="notes-look">Look again on</label>'
        '<div class="salt-box"><input type="date" id="notes-look" name="look"></div></div>'
        "</form></salt-notes>"
    )
