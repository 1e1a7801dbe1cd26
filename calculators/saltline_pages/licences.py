"""What the finished site holds of others' work, with its licence: the page "licences"."""

from __future__ import annotations

import json
from html import escape
from importlib.metadata import version
from pathlib import Path
from typing import NamedTuple

PACKAGES = Path(__file__).resolve().parent.parent.parent / "node_modules"
TEXTS = {
    "Apache 2.0": "licences/apache-2.0.txt",
    "MPL 2.0": "licences/mpl-2.0.txt",
    "Python": "licences/python.txt",
}
MIT = """\
Permission is hereby granted, free of charge, to any person obtaining a copy of this software and
associated documentation files (the "Software"), to deal in the Software without restriction,
including without limitation the rights to use, copy, modify, merge, publish, distribute,
sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is
furnished to do so, subject to the following conditions: The above copyright notice and this
permission notice shall be included in all copies or substantial portions of the Software. THE
SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT
LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND
NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM,
DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM,
OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE."""


class Part(NamedTuple):
    """Somebody's work in the site; `package`: the Node (`@`, plain) or Python (`py:`) package."""

    name: str
    use: str
    licence: str
    holders: str
    package: str = ""


MICROPYTHON = "@micropython/micropython-webassembly-pyscript"
THEME = "py:mkdocs-material"
PARTS = (
    Part(
        "MicroPython", "works out every answer", "MIT", "Damien P. George and others", MICROPYTHON
    ),
    Part("Emscripten's run time", "in both engines", "MIT", "the Emscripten authors"),
    Part("musl", "mathematics, in both engines", "MIT", "Rich Felker and others"),
    Part("Pyodide", "runs the checks", "MPL 2.0", "the Pyodide contributors", "pyodide"),
    Part("CPython", "in Pyodide", "Python", "Python Software Foundation"),
    Part("Material for MkDocs", "the page around it", "MIT", "Martin Donath", THEME),
    Part("RxJS", "in the search", "Apache 2.0", "Google, Netflix, Microsoft and contributors"),
    Part("Lunr", "in the search", "MIT", "Oliver Nightingale"),
    Part("clipboard.js", "in the search's script", "MIT", "Zeno Rocha"),
    Part(
        "escape-html",
        "in the search's script",
        "MIT",
        "TJ Holowaychuk, Andreas Lubbe, Tiancheng “Timothy” Gu",
    ),
    Part("Material Design Icons", "menu and search signs", "Apache 2.0", "Pictogrammers, Google"),
    Part("uqr", "draws QR codes", "MIT", "Project Nayuki, Anthony Fu", "uqr"),
)


def licences_html() -> str:
    """The table of parts, and the licence that most of them have."""
    rows = "".join(
        "<tr>"
        f'<td data-label="What">{escape(part.name)} {_version(part)}</td>'
        f'<td data-label="What it does here">{escape(part.use)}</td>'
        f'<td data-label="Licence">{_licence(part)}</td>'
        f'<td data-label="Copyright">© {escape(part.holders)}</td></tr>'
        for part in PARTS
    )
    heads = ("What", "What it does here", "Licence", "Copyright")
    head = "".join(f'<th scope="col">{text}</th>' for text in heads)
    return (
        f'<div class="salt-plain"><table><thead><tr>{head}</tr></thead>'
        f'<tbody>{rows}</tbody></table></div><h2 id="mit">The MIT licence</h2><p>{escape(MIT)}</p>'
    )


def _version(part: Part) -> str:
    """As it is installed where the site is built."""
    if not part.package:
        return ""
    if part.package.startswith("py:"):
        return version(part.package.removeprefix("py:"))
    about = json.loads((PACKAGES / part.package / "package.json").read_text(encoding="utf-8"))
    return str(about["version"])


def _licence(part: Part) -> str:
    if part.licence == "MIT":
        return '<a href="#mit">MIT</a>'
    return f'<a href="salt-root:{TEXTS[part.licence]}">{part.licence}</a>'
