"""Sentences for the hardness of water."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.hardness import Hardness, hardness_class


def hardness(inputs: Mapping[str, Any], answer: Hardness) -> tuple[str, str, str]:
    """Verdict, number, reason for `hardness`."""
    kind = hardness_class(mg_l_caco3=answer.mg_l_caco3)
    verdict = f"For a household this water is called {kind}."
    number = "{mg_l_caco3}, that is {german} or {meq_l}"
    reason = (
        "Hardness counts calcium and magnesium. What leaves lime on roots and granules is hardness "
        "together with alkalinity: ask your supplier for both. The word is for kettles, not for "
        "orchids."
    )
    return verdict, number, reason
