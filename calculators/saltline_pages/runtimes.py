"""The engines as they came from their makers: each file is checked before the site serves it."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

PACKAGES = Path(__file__).resolve().parent.parent.parent / "node_modules"
CHECKSUMS: dict[str, str] = json.loads(
    Path(__file__).with_name("runtimes.json").read_text(encoding="utf-8")
)


def runtime(name: str) -> bytes:
    """A file of an engine, by its path among the Node packages, if it is the one we know."""
    content = (PACKAGES / name).read_bytes()
    found = hashlib.sha256(content).hexdigest()
    if found != CHECKSUMS[name]:
        raise RuntimeError(
            f"{name} is not the file that was checked (SHA-256 {found}). Install the Node packages "
            "anew; after a wanted update, put its checksum into saltline_pages/runtimes.json."
        )
    return content
