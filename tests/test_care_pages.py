"""What the care pages repeat by hand is held to what the calculators know."""

from __future__ import annotations

import re
from pathlib import Path

from saltline.products import PRODUCTS

CARE = Path(__file__).parent.parent / "docs" / "care"


def test_the_list_of_products_is_that_of_the_recipe() -> None:
    page = (CARE / "fertilizer-strength.md").read_text(encoding="utf-8")
    listed = re.findall(r"^\| `([a-z0-9_]+)` \| (.+) \|$", page, re.M)
    assert listed == [(item.id, item.label) for item in PRODUCTS]
