"""A drawing for print: black on white, whatever the page wears.

What the style sheet says elsewhere stands in the drawing itself, so that it can be saved as a file.
"""

from __future__ import annotations

import re

from saltline.pictures.articles import DRAWINGS

LINE = {"fill": "none", "stroke": "#000", "stroke-width": "2.5"}
INK = {
    "ink": LINE,
    "water": LINE,
    "thin": {"stroke-width": "1.5"},
    "dash": {"stroke-dasharray": "1 6"},
    "card": {"fill": "#fff"},
    "full": {"fill": "#000"},
    "strong": {"font-weight": "700"},
}
ALL = {
    "font-family": "sans-serif",
    "font-size": "14",
    "stroke-linecap": "round",
    "stroke-linejoin": "round",
}


def drawing_html(name: str) -> str:
    """One drawing as a figure, on white."""
    if name not in DRAWINGS:
        raise ValueError(f"a page asks for the drawing '{name}', which is not drawn")
    drawn = re.sub(r'class="([^"]+)"', lambda found: _inked(found[1]), DRAWINGS[name]())
    head, body = drawn.split(">", 1)
    plate = '<path fill="#fff" d="M0 0H320V300H0Z"/>'
    return f'<figure class="salt-drawing">{head} {_written(ALL)}>{plate}{body}</figure>'


def _inked(classes: str) -> str:
    """The strokes that these classes stand for, the later ones stronger."""
    found: dict[str, str] = {}
    for name in classes.split():
        found |= INK[name]
    return _written(found)


def _written(attributes: dict[str, str]) -> str:
    return " ".join(f'{name}="{value}"' for name, value in attributes.items())
