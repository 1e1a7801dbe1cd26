"""The modules of `scripts/`, and a small checkout of its own to run them in."""

from __future__ import annotations

import importlib.util
import shutil
import sys
from pathlib import Path
from types import ModuleType

ROOT = Path(__file__).resolve().parent.parent
SCRIPTS = ROOT / "scripts"
COMMITTED = ("requirements-site.txt", "requirements-test.txt", "package.json", "package-lock.json")
SITE_MAKER = """
def build_site(out, site_url):
    out.mkdir()
    (out / "index.html").write_text(f"<title>Small site</title>{site_url}")
"""


def script_module(name: str) -> ModuleType:
    """A module of `scripts/`, by its file, as `test` has a namesake."""
    if str(SCRIPTS) not in sys.path:
        sys.path.append(str(SCRIPTS))  # for what it imports from beside it
    spec = importlib.util.spec_from_file_location(f"scripts.{name}", SCRIPTS / f"{name}.py")
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def bare_checkout(folder: Path) -> Path:
    """The scripts and locks alone, with nothing set up."""
    shutil.copytree(SCRIPTS, folder / "scripts", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copytree(ROOT / ".ci", folder / ".ci")
    for name in (*COMMITTED, ".npmrc", ".python-version"):
        shutil.copy(ROOT / name, folder)
    return folder


def ready_checkout(folder: Path, site_maker: str = SITE_MAKER) -> Path:
    """One with everything set up, and a site that is built in no time."""
    bare_checkout(folder)
    for name in (".venv", "node_modules"):
        (folder / name).symlink_to(ROOT / name)
    (folder / "build").mkdir()
    shutil.copy(ROOT / "build" / "tools.json", folder / "build")
    package = folder / "calculators" / "saltline_pages"
    package.mkdir(parents=True)
    (package / "__init__.py").touch()
    (package / "site.py").write_text(site_maker)
    return folder
