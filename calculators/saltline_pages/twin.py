"""The curve of a drawing as a table, for those who read numbers better than lines."""

from __future__ import annotations

from collections.abc import Callable, Sequence

Rows = Sequence[Sequence[str]]


def twin(rows: Rows, put: Callable[[str], str]) -> str:
    """A folded table: the first row holds the heads, the first cell of each row names it.

    `put` fills in the placeholders of a cell and escapes it. The element writes the same rows.
    """
    head, body = rows[0], rows[1:]
    heads = "".join(f'<th scope="col">{put(cell)}</th>' for cell in head)
    lines = "".join(
        f'<tr><th scope="row">{put(cells[0])}</th>'
        + "".join(f"<td>{put(cell)}</td>" for cell in cells[1:])
        + "</tr>"
        for cells in body
    )
    return (
        '<details class="salt-twin" data-search-exclude><summary>The picture as a table</summary>'
        f'<table class="salt-curve"><thead><tr>{heads}</tr></thead><tbody>{lines}</tbody></table>'
        "</details>"
    )
