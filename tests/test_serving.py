"""The static servers, and the scripts that build, serve and check."""

from __future__ import annotations

import gzip
import http.client
import re
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

from checkout import ready_checkout, script_module

static_server = script_module("static_server")
slow_link = script_module("slow_link")
checks = script_module("test")
TEXT = b"salt " * 4000


@pytest.fixture
def site(tmp_path: Path) -> Path:
    folder = tmp_path / "site"
    (folder / "care").mkdir(parents=True)
    for name in ("index.html", "care/index.html", "404.html"):
        (folder / name).write_text(name)
    for name in ("a.wasm", "a.mjs", "a.js", "manifest.webmanifest", "a.csv", "a.json", "a.odd"):
        (folder / name).write_bytes(TEXT)
    (tmp_path / "secret.txt").write_text("outside the site")
    return folder


Got = tuple[int, dict[str, str], bytes]


def get(port: int, path: str, **headers: str) -> Got:
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
    connection.request("GET", path, headers={k.replace("_", "-"): v for k, v in headers.items()})
    reply = connection.getresponse()
    body = reply.read()
    connection.close()
    return reply.status, dict(reply.getheaders()), body


@contextmanager
def serving(site: Path) -> Iterator[Any]:
    with static_server.running(static_server.listen(static_server.Site(site), 0)) as server:
        yield server


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("", "text/html; charset=utf-8"),
        ("a.wasm", "application/wasm"),
        ("a.js", "text/javascript; charset=utf-8"),
        ("a.mjs", "text/javascript; charset=utf-8"),
        ("manifest.webmanifest", "application/manifest+json"),
        ("a.csv", "text/csv; charset=utf-8"),
        ("a.odd", "application/octet-stream"),
    ],
)
def test_types(site: Path, name: str, kind: str) -> None:
    with serving(site) as server:
        status, headers, _ = get(server.server_port, "/" + name)
    assert (status, headers["Content-Type"]) == (200, kind)


@pytest.mark.parametrize(
    "path", ["/nowhere", "/a.wasm/", "/../secret.txt", "/%2e%2e/secret.txt", "/a%00b", "/care/x"]
)
def test_what_is_not_there_is_the_404_page(site: Path, path: str) -> None:
    with serving(site) as server:
        status, _, body = get(server.server_port, path)
    assert (status, body) == (404, b"404.html")


def test_folders_end_in_a_slash(site: Path) -> None:
    with serving(site) as server:
        status, headers, _ = get(server.server_port, "//care?x=1")
        assert (status, headers["Location"]) == (301, "/care/")
        assert get(server.server_port, "/care/")[2] == b"care/index.html"


def test_an_unchanged_file_is_not_sent_again(site: Path) -> None:
    with serving(site) as server:
        tag = get(server.server_port, "/a.json")[1]["ETag"]
        assert get(server.server_port, "/a.json", If_None_Match=tag)[0::2] == (304, b"")
        (site / "a.json").write_bytes(b"{}")
        assert get(server.server_port, "/a.json", If_None_Match=tag)[0::2] == (200, b"{}")


def test_a_taken_port_falls_back_to_a_free_one(site: Path) -> None:
    with serving(site) as first:
        second = static_server.listen(static_server.Site(site), first.server_port)
        with static_server.running(second):
            assert second.server_port != first.server_port
            assert get(second.server_port, "/")[0] == 200


# The slow link


def slow(site: Path, kbit_s: int, delay_s: float) -> Any:
    link = slow_link.Link(kbit_s, delay_s)
    return static_server.running(slow_link.SlowServer(static_server.Site(site), link))


def test_slow_link_gzips_text_and_counts_what_it_sends(site: Path) -> None:
    with slow(site, 100_000, 0) as server:
        _, headers, body = get(server.server_port, "/a.wasm", Accept_Encoding="gzip, br")
        assert headers["Content-Encoding"] == "gzip"
        assert gzip.decompress(body) == TEXT
        assert [(sent.path, sent.size) for sent in server.sent] == [("/a.wasm", len(body))]
        assert get(server.server_port, "/a.wasm")[2] == TEXT
        assert (
            "Content-Encoding" not in get(server.server_port, "/a.odd", Accept_Encoding="gzip")[1]
        )


def test_slow_link_is_shared_by_all_replies(site: Path) -> None:
    kbit_s, delay_s = 1600, 0.15
    with slow(site, kbit_s, delay_s) as server:
        begun = time.monotonic()
        both = [
            threading.Thread(target=get, args=(server.server_port, "/a.wasm")) for _ in range(2)
        ]
        for thread in both:
            thread.start()
        for thread in both:
            thread.join()
        taken = time.monotonic() - begun
    assert taken >= delay_s + 2 * len(TEXT) * 8 / (kbit_s * 1000)


def test_slow_link_adds_its_delay_to_each_request(site: Path) -> None:
    with slow(site, 100_000, 0.2) as server:
        begun = time.monotonic()
        for _ in range(2):
            get(server.server_port, "/index.html")
    assert time.monotonic() - begun >= 0.4


# The scripts


def build(folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, str(folder / "scripts" / "build.py"), *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=False, timeout=60)


def test_build_hands_on_the_address(tmp_path: Path) -> None:
    ready_checkout(tmp_path)
    assert build(tmp_path, "--site-url", "https://club.example/").returncode == 0
    assert "https://club.example/" in (tmp_path / "site" / "index.html").read_text()
    assert build(tmp_path).returncode == 0
    assert "None" in (tmp_path / "site" / "index.html").read_text()


def test_build_refuses_what_is_no_address(tmp_path: Path) -> None:
    done = build(ready_checkout(tmp_path), "--site-url", "club.example")
    assert done.returncode == 1
    assert done.stderr == "--site-url must begin with https:// or http://, not 'club.example'.\n"


def test_a_failed_build_leaves_the_last_site_whole(tmp_path: Path) -> None:
    assert build(ready_checkout(tmp_path)).returncode == 0
    maker = tmp_path / "calculators" / "saltline_pages" / "site.py"
    maker.write_text(
        "def build_site(out, site_url):\n    out.mkdir()\n    raise ValueError('half')"
    )
    done = build(tmp_path)
    assert done.returncode == 1
    assert "half" in done.stderr
    assert "Small site" in (tmp_path / "site" / "index.html").read_text()


def test_serve_builds_says_the_address_and_stops_politely(tmp_path: Path) -> None:
    command = [sys.executable, str(ready_checkout(tmp_path) / "scripts" / "serve.py"), "--port=0"]
    # As from a terminal: a run in the background would hand down that Ctrl-C is ignored.
    signal.signal(signal.SIGINT, signal.default_int_handler)
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout
        try:
            said = next(line for line in process.stdout if "Serving" in line)
            port = re.search(r"http://127\.0\.0\.1:(\d+)/", said)
            assert port
            status, _, body = get(int(port.group(1)), "/")
            assert status == 200
            assert b"Small site" in body
            process.send_signal(signal.SIGINT)
            assert process.wait(timeout=20) == 0
            assert process.stdout.read().strip() == "Stopped."
        finally:
            process.kill()


def test_every_check_runs_and_the_end_says_what_failed(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    python = [sys.executable, "-c"]
    made = [
        ("First", [*python, "print('one went wrong'); raise SystemExit(3)"]),
        ("Second", [*python, "print('fine')"]),
    ]
    monkeypatch.setattr(checks, "checks", lambda full, extra: made)
    monkeypatch.setattr(checks.start, "ready", lambda lock, browser: None)
    monkeypatch.setattr(checks.start, "ROOT", tmp_path)
    monkeypatch.setattr(sys, "argv", ["test.py"])
    with pytest.raises(SystemExit) as ended:
        checks.main()
    assert ended.value.code == 1
    shown = capsys.readouterr().out
    assert "fine" in shown
    end = shown[shown.index("First failed") :]
    assert "one went wrong" in end
    assert re.search(r"FAILED .* First\n", end)
    assert re.search(r"passed .* Second\n", end)
    assert end.endswith("checks: 1 passed, 1 failed\n")


def test_long_tests_run_only_when_asked_for() -> None:
    pytest_of = {full: checks.checks(full, ["-k", "meter"])[-1][1] for full in (False, True)}
    assert "not long" in pytest_of[False]
    assert "not long" not in pytest_of[True]
    assert pytest_of[True][-2:] == ["-k", "meter"]
