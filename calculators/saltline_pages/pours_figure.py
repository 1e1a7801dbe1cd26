"""How pours wash small and large granules, drawn from the table that stands below it."""

from __future__ import annotations

from html import escape

from saltline.forms import all_forms
from saltline.pictures.axes import plot
from saltline.pictures.drawing import area, line, patterns, svg, text
from saltline_pages import shown
from saltline_pages.tables import Table

HEIGHT = 232.0
SHARES = (0.0, 0.5, 1.0)
# Columns of the table drawn, each with its pattern, and where its name stands (pours, share).
DRAWN = (("mm16", "salt", "16 mm", 4.2, 0.72), ("mm4", "band", "4 mm", 0.45, 0.12))


def figure_html(table: Table) -> str:
    """The bands of the smallest and the largest granules."""
    frame, right, rise = plot([float(n) for n in range(10)], SHARES, "pours", "share")
    parts = patterns("pours", "band", "salt")
    for name, pattern, said, pours, share in DRAWN:
        cells = [row[name].split("-") for row in table.rows]
        ends = [(1.0, 1.0), *((float(cell[0]) / 100, float(cell[-1]) / 100) for cell in cells)]
        top = [(right(float(at)), rise(high)) for at, (_, high) in enumerate(ends)]
        foot = [(right(float(at)), rise(low)) for at, (low, _) in enumerate(ends)]
        stroke = "salt" if pattern == "salt" else "water"
        parts += area(top + foot[::-1], "", f"pours-{pattern}") + line(top, stroke)
        parts += line(foot, stroke) + text(right(pours), rise(share), said, "strong")
    says = "Salt left after each pour: large granules keep theirs longer than small ones."
    drawing = svg(HEIGHT, says, parts + frame)
    form = all_forms()["flush-plan"]  # knows the units, which is all that a drawing asks of it
    return f'<div class="salt-picture">{shown.fill(drawing, form, {}, {}, escape)}</div>'
