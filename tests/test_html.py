"""Every built page by the Nu checker: HTML as the standard wants it."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from pathlib import Path

import pytest

pytestmark = pytest.mark.long

NODE_PACKAGES = Path(__file__).resolve().parent.parent / "node_modules"
JAR = NODE_PACKAGES / "vnu-jar" / "build" / "dist" / "vnu.jar"
# What the checker says of pages that are as they should be.
KNOWN = re.compile(
    # It reads files, so it has no host to take for 'self', and holds blocks of JSON for scripts.
    "violates Content Security Policy"
    # An element of our own may have any attribute that its script wants.
    "|“name” attribute is never allowed on the “salt-calc” element"
)


def test_the_checker_finds_nothing_to_say(site: Path) -> None:
    java = shutil.which("java")
    assert java, "Java is needed: the checker of HTML runs on it"
    command = [java, "-jar", str(JAR), "--format", "json", "--skip-non-html", str(site)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    said = json.loads(done.stderr)["messages"]
    # It has read the pages: it never holds its tongue about the policy.
    assert len({message["url"] for message in said}) == len(list(site.rglob("*.html")))
    troubles = [
        f"{message['url'].rpartition('/site/')[2]}:{message.get('lastLine')}: {message['message']}"
        for message in said
        if not KNOWN.search(message["message"])
    ]
    assert not troubles, "\n".join(troubles)
