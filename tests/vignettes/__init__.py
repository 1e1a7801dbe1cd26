"""Cases of root damage with the outcomes an honest key may give, written before its weights.

Columns of `damage.csv` (lists are separated by spaces):
    id, story   a name and the case in one sentence
    stage, kind what the grower knows of the plant
    yes, no     signs seen, and signs looked for and absent; every other sign was not looked for
    fits_best   the accepted answers, `unsure` among them where that is honest
    mentions    causes that must stand in `fits_best` or `also_fits`
    firm        yes, no, or either
    actions     the accepted actions; `never` names the harmful ones
    next_test   the accepted next tests, or empty for any
    source, locator, level   where the case or the rule behind it comes from

A third is set aside by a fixed rule and takes no part in choosing weights.
"""

from __future__ import annotations

import csv
import hashlib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

TABLE = Path(__file__).parent / "damage.csv"
LEVELS = ("read", "opening only", "second-hand", "memory", "common practice", "proposed")


@dataclass(frozen=True)
class Vignette:
    id: str
    story: str
    stage: str
    kind: str
    yes: tuple[str, ...]
    no: tuple[str, ...]
    fits_best: tuple[str, ...]
    mentions: tuple[str, ...]
    firm: str
    actions: tuple[str, ...]
    never: tuple[str, ...]
    next_test: tuple[str, ...]
    source: str
    locator: str
    level: str

    @property
    def set_aside(self) -> bool:
        """The fixed rule: the first byte of the SHA-256 of the id is divisible by three."""
        return hashlib.sha256(self.id.encode()).digest()[0] % 3 == 0

    def inputs(self) -> dict[str, str]:
        """What the calculator is asked."""
        signs = dict.fromkeys(self.yes, "yes") | dict.fromkeys(self.no, "no")
        return {"stage": self.stage, "kind": self.kind} | signs


def vignettes() -> list[Vignette]:
    """Every case of the table."""
    lists = ("yes", "no", "fits_best", "mentions", "actions", "never", "next_test")
    with TABLE.open(encoding="utf-8", newline="") as file:
        found = []
        for cells in csv.DictReader(file):
            values: dict[str, Any] = dict(cells) | {k: tuple(cells[k].split()) for k in lists}
            found.append(Vignette(**values))
        return found
