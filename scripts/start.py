"""Bring a script into the checkout's own Python, with all it needs set up.

This file, and the top of every script that is started by hand, run under any Python 3.6 or later,
so that an older one can hand over to the right one or say which is needed.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
VENV_PYTHON = VENV / "bin" / "python"
WANTED = (ROOT / ".python-version").read_text().strip()


def ready(lock: str, browser: bool) -> None:
    """Return inside `.venv` with `requirements-LOCK.txt`, Node and, if asked, a browser set up.

    Restarts the script under another Python where that is needed.
    """
    running = "{}.{}".format(*sys.version_info[:2])
    if running != WANTED:
        _restart(_find_python(running))
    # Imported here: an older Python need not be able to run it.
    from setup_tools import prepare

    prepare(lock, browser)
    if Path(sys.prefix).resolve() != VENV.resolve():
        _restart(str(VENV_PYTHON))


def _find_python(running: str) -> str:
    named = ["python" + WANTED, "python3"]
    for python in [str(VENV_PYTHON)] + [shutil.which(name) or name for name in named]:
        if _version_of(python) == WANTED:
            return python
    raise SystemExit(
        f"Python {WANTED} is needed (this is {running}) and none was found: install it with its "
        f"venv module (Debian: apt-get install python{WANTED}-venv; pyenv: pyenv install {WANTED}; "
        f"Homebrew: brew install python@{WANTED}), then start this again."
    )


def _version_of(python: str) -> str:
    asked = "import sys; print(*sys.version_info[:2], sep='.')"
    try:
        told = subprocess.check_output([python, "-c", asked], stderr=subprocess.DEVNULL)
    except (OSError, subprocess.CalledProcessError):
        return ""
    return told.decode().strip()


def _restart(python: str) -> None:
    sys.stdout.flush()
    os.execv(python, [python, *sys.argv])
