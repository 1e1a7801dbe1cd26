"""Shared by all tests: the compiled wheel, the built site, and a browser that stays on it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from filelock import FileLock
from playwright.sync_api import (
    Browser,
    BrowserContext,
    ConsoleMessage,
    Page,
    expect,
    sync_playwright,
)

from saltline_pages.site import build_site
from saltline_pages.tools import tool
from saltline_pages.wheel import build_wheel
from static_server import Site, listen, running

pytest_plugins = ["browser.matrix"]
expect.set_options(timeout=20_000)  # milliseconds: two browsers share two cores

PHONE = {"width": 390, "height": 844}
BROWSER_ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="session")
def shared(tmp_path_factory: pytest.TempPathFactory, worker_id: str) -> Path:
    """A folder that all processes of this run share."""
    own = tmp_path_factory.getbasetemp()
    return own if worker_id == "master" else own.parent


@pytest.fixture(scope="session")
def compiled_wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The science as the wheel that Pyodide loads, compiled with pyodide-build."""
    return build_wheel(tmp_path_factory.mktemp("wheel"))


@pytest.fixture(scope="session")
def site(shared: Path) -> Path:
    """The finished site, built once, in a folder of its own below a path that is not the root."""
    out, built = shared / "served" / "club" / "site", shared / "served" / "built"
    with FileLock(shared / "site.lock"):
        if not built.exists():
            build_site(out, None)
            built.touch()
    return out


@pytest.fixture(scope="session")
def address(site: Path) -> Iterator[str]:
    """Where the site is served: `http://127.0.0.1:PORT/club/site/`."""
    with running(listen(Site(site.parent.parent), 0)) as server:
        yield f"{server.address}club/site/"


@pytest.fixture(scope="session")
def calculating(site: Path) -> list[str]:
    """The pages that hold a calculator, from the site's root."""
    found = [
        file.parent.relative_to(site).as_posix()
        for file in sorted(site.rglob("index.html"))
        if "<salt-calc" in file.read_text(encoding="utf-8")
    ]
    assert len(found) > 10
    return found


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Debian's Chromium, without a window."""
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(
            executable_path=tool("chromium"), args=BROWSER_ARGUMENTS
        )
        yield chromium
        chromium.close()


Opener = Callable[..., Page]


@pytest.fixture
def open_page(browser: Browser, address: str) -> Iterator[Opener]:
    """Opens a page of the site in a fresh profile; fails on script errors and foreign requests."""
    contexts: list[BrowserContext] = []
    trouble: list[str] = []

    def opener(path: str = "", **options: object) -> Page:
        context = browser.new_context(**{"viewport": PHONE, **options})  # type: ignore[arg-type]
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: trouble.append(f"script error: {error}"))
        page.on("console", console)
        page.on("request", lambda request: fence(request.url))
        page.goto(address + path)
        return page

    def console(message: ConsoleMessage) -> None:
        if message.type == "error":
            trouble.append(f"console: {message.text}")

    def fence(url: str) -> None:
        if not url.startswith((address, "data:", "blob:")):
            trouble.append(f"request to another host or path: {url}")

    yield opener
    for context in contexts:
        context.close()
    assert not trouble, trouble
