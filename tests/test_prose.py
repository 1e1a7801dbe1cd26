"""The pages as prose: our own lint, spelling, and how hard they are to read."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from grade_pages import grade
from saltline_pages.lint import troubles

ROOT = Path(__file__).resolve().parent.parent
PAGES = sorted((ROOT / "docs").rglob("*.md"))


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.relative_to(ROOT / "docs").as_posix())
def test_page_keeps_the_rules(page: Path) -> None:
    assert not list(troubles(page))


def test_lint_finds_what_it_should(tmp_path: Path) -> None:
    care = tmp_path / "care"
    care.mkdir()
    page = care / "bad.md"
    page.write_text(
        "# A subject\n\n### Deep\n\nSimply keep it under 1.2 mS/cm!\n\n## Late\n\n"
        "[[calculator meter-reading]]\n",
        encoding="utf-8",
    )
    found = " ".join(troubles(page))
    for words in ("description", "level 1", "asks", "first calculator", "Simply", "1.2 mS/cm"):
        assert words in found, words


def test_spelling() -> None:
    files = [str(page) for page in PAGES] + [str(ROOT / "README.md"), str(ROOT / "DEVELOPERS.md")]
    done = subprocess.run(
        [sys.executable, "-m", "codespell_lib", "-L", "repot,repots,Repot", *files],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.relative_to(ROOT / "docs").as_posix())
def test_a_reader_of_fourteen_can_follow(page: Path) -> None:
    found = grade(page)
    # Grade 9 is a reader of 14 to 15.
    assert found is None or found <= 9.5, found
