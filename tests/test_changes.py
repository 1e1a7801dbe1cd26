"""The page of changes keeps up with the methods."""

from __future__ import annotations

from pathlib import Path

import html5lib
import pytest

from saltline.declare import Form
from saltline.forms import all_forms
from saltline_pages.methods import methods_html

PAGE = Path(__file__).resolve().parent.parent / "docs" / "changes.md"


@pytest.mark.parametrize("form", all_forms().values(), ids=list(all_forms()))
def test_each_new_version_is_told(form: Form) -> None:
    said = PAGE.read_text(encoding="utf-8")
    for version in range(2, form.version + 1):
        assert f"`{form.id}` version {version}" in said


def test_every_calculator_is_listed_with_its_version() -> None:
    html = methods_html(all_forms().values(), lambda name: "x/" if name == "sieve" else "")
    rows = html5lib.parse(html, namespaceHTMLElements=False).findall(".//tbody/tr")
    listed = {row.find(".//code").text: row[1].text for row in rows}
    assert listed == {form.id: str(form.version) for form in all_forms().values()}
    links = [link.get("href") for row in rows for link in row.iter("a")]
    assert links == ["x/#sieve"]
