"""What guards a reader: the policy of each page, the list of kept files, the checked runtimes."""

from __future__ import annotations

import hashlib
import json
import re
from base64 import b64encode
from html.parser import HTMLParser
from pathlib import Path
from typing import override

import pytest

from saltline_pages import runtimes

FIRST_INSTALL = 4_000_000  # bytes


class Guard(HTMLParser):
    """A page's policy, and what of it stands before the policy or has to be covered by it."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.policy = ""
        self.before: list[str] = []
        self.inline: dict[str, list[str]] = {"script": [], "style": []}
        self.loose: list[str] = []  # attributes that no hash can cover
        self._inside = ""
        self.feed(html)

    @override
    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = dict(attrs)
        if tag == "meta" and found.get("http-equiv") == "Content-Security-Policy":
            self.policy = found["content"] or ""
        elif not self.policy:
            self.before.append(tag)
        self.loose += [name for name in found if name.startswith("on") or name == "style"]
        runs = tag == "script" and "src" not in found and "json" not in (found.get("type") or "")
        self._inside = tag if runs or tag == "style" else ""

    @override
    def handle_data(self, data: str) -> None:
        if self._inside:
            self.inline[self._inside].append(data)

    @override
    def handle_endtag(self, tag: str) -> None:
        self._inside = ""

    def rule(self, name: str) -> list[str]:
        rules = [rule.split() for rule in self.policy.split(";")]
        return next(rule[1:] for rule in rules if rule[0] == name)


@pytest.fixture(scope="module")
def pages(site: Path) -> dict[str, Guard]:
    return {
        file.relative_to(site).as_posix(): Guard(file.read_text(encoding="utf-8"))
        for file in sorted(site.rglob("*.html"))
    }


def test_a_policy_stands_before_anything_that_runs(pages: dict[str, Guard]) -> None:
    for name, page in pages.items():
        assert set(page.before) <= {"html", "head", "meta"}, name
        assert page.rule("default-src") == ["'none'"], name
        assert page.rule("connect-src") == ["'self'"], name


def test_inline_scripts_and_styles_run_by_their_hash_alone(pages: dict[str, Guard]) -> None:
    for name, page in pages.items():
        assert not page.loose, name
        for tag, texts in page.inline.items():
            allowed = page.rule(f"{tag}-src")
            for text in texts:
                digest = b64encode(hashlib.sha256(text.encode()).digest()).decode()
                assert f"'sha256-{digest}'" in allowed, f"{name}: {text[:60]}"
            assert not {"'unsafe-inline'", "'unsafe-eval'", "*", "https:"} & set(allowed), name


def test_no_browser_is_told_to_fetch_another_page(site: Path) -> None:
    for file in site.rglob("*.html"):
        found = re.findall(r'<link[^>]*rel="([a-z -]+)"', file.read_text(encoding="utf-8"))
        assert not {"next", "prefetch", "prerender"} & set(found), file


def test_webassembly_is_allowed_only_where_an_engine_runs(
    pages: dict[str, Guard], site: Path
) -> None:
    allowed = {n for n, page in pages.items() if "'wasm-unsafe-eval'" in page.rule("script-src")}
    elements = re.compile("<salt-(calc|experiment|key|session|trust)")
    runs = {n for n in pages if elements.search((site / n).read_text(encoding="utf-8"))}
    assert allowed == runs
    assert runs < set(pages)


def kept(site: Path, which: int) -> dict[str, str]:
    """The list number `which` in the service worker: address -> hash."""
    script = (site / "sw.js").read_text(encoding="utf-8")
    found: dict[str, str] = json.loads(re.findall(r"Object\.entries\((\{.*?\})\)", script)[which])
    return found


def test_the_service_worker_keeps_every_file_by_what_it_holds(site: Path) -> None:
    now, later = kept(site, 0), kept(site, 1)
    for address, digest in (now | later).items():
        file = site / address
        file = file / "index.html" if file.is_dir() else file
        assert b64encode(hashlib.sha256(file.read_bytes()).digest()).decode() == digest, address
    files = {file for file in site.rglob("*") if file.is_file()}
    left = {f.relative_to(site).as_posix() for f in files} - set(now) - set(later)
    assert {name for name in left if not name.endswith("index.html")} <= {
        "sw.js",
        "sitemap.xml",
        "sitemap.xml.gz",
    }


def test_the_first_install_is_small_and_leaves_out_the_full_engine(site: Path) -> None:
    now, later = kept(site, 0), kept(site, 1)
    files = (site / address for address in now)
    size = sum((f / "index.html" if f.is_dir() else f).stat().st_size for f in files)
    assert size < FIRST_INSTALL, f"{size / 1e6:.2f} MB"
    assert not [name for name in now if name.endswith(".pdf") or "assets/full" in name]
    assert [name for name in later if "assets/full" in name]


def test_a_changed_runtime_is_refused(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    name = "pyodide/pyodide.mjs"
    assert runtimes.runtime(name)
    changed = tmp_path / name
    changed.parent.mkdir(parents=True)
    changed.write_bytes(runtimes.runtime(name) + b" ")
    monkeypatch.setattr(runtimes, "PACKAGES", tmp_path)
    with pytest.raises(RuntimeError, match="is not the file that was checked"):
        runtimes.runtime(name)
