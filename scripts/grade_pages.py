"""Print how hard each page is to read, hardest first, as the school grade that can follow it.

python3 scripts/grade_pages.py
"""

import re
from pathlib import Path

import start

DOCS = start.ROOT / "docs"
ENOUGH = 80  # words, under which a grade says nothing


def main() -> None:
    start.ready("test", browser=False)
    graded = ((grade(page), page.relative_to(DOCS)) for page in DOCS.rglob("*.md"))
    for found, page in sorted(((at, page) for at, page in graded if at is not None), reverse=True):
        print(f"{found:5.1f}  {page}")


def grade(page: Path) -> "float | None":
    """The grade of a page's running text; None where there is too little of it."""
    import textstat

    text = re.sub(r"^---\n.*?\n---\n", "", page.read_text(encoding="utf-8"), flags=re.S)
    text = re.sub(r"\[@[^\]]*\]|\[\[[^\]]*\]\]|<[^>]+>|^\|.*$|^#+ .*$", "", text, flags=re.M)
    text = re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", text)
    if len(text.split()) < ENOUGH:
        return None
    # Characters and sentences only: the other scales fetch a pronouncing dictionary.
    return float(textstat.automated_readability_index(text))


if __name__ == "__main__":
    main()
