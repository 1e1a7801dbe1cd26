"""Run a piece of our page scripts under Node."""

from __future__ import annotations

import json
import subprocess
from typing import Any

from engines import ROOT
from saltline_pages.tools import tool

SCRIPTS = ROOT / "docs" / "assets" / "js"


def run(body: str, data: Any) -> Any:
    """The value that `body` returns; `data` is in scope, and so is `load(name)` for a script."""
    program = (
        f"const load = (name) => import({json.dumps(SCRIPTS.as_uri())} + '/' + name);"
        "let text = ''; for await (const part of process.stdin) text += part;"
        f"const data = JSON.parse(text); const value = await (async () => {{ {body} }})();"
        "process.stdout.write(JSON.stringify(value ?? null));"
    )
    done = subprocess.run(
        [tool("node"), "--input-type=module", "-e", program],
        input=json.dumps(data),
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    return json.loads(done.stdout)
