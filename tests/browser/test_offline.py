"""The copy on the device: whole, checked, and replaced only when the reader agrees."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from browser.waiting import until
from conftest import PHONE
from saltline_pages.precache import write_service_worker
from static_server import Reply, Server, Site, listen, running

pytestmark = pytest.mark.browser

READY = "Ready for use without a network."
NEWER = "A newer version is ready."
MARK = "This copy was made on"


@pytest.fixture
def copy(site: Path, tmp_path: Path) -> Path:
    """A site that a test may change."""
    out = tmp_path / "below" / "here"
    shutil.copytree(site, out)
    return out


@pytest.fixture
def host(copy: Path) -> Iterator[Server]:
    with running(listen(Site(copy.parent), 0)) as server:
        yield server


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(viewport=PHONE)  # type: ignore[arg-type]
    yield context
    context.close()


def kept(context: BrowserContext, address: str) -> Page:
    """A page whose site is kept on the device."""
    page = context.new_page()
    page.goto(address)
    expect(page.locator(".salt-copy")).to_contain_text(READY, timeout=30_000)
    return page


def published(copy: Path, words: str) -> None:
    """A newer version, whose pages say other words."""
    for path in ("index.html", "care/water/index.html"):
        text = (copy / path).read_text(encoding="utf-8")
        (copy / path).write_text(re.sub(f"{MARK}[^<]*", f"{words} ", text), encoding="utf-8")
    write_service_worker(copy)


def look_for_newer(page: Page) -> None:
    page.evaluate(
        "navigator.serviceWorker.getRegistration().then((r) => r.update()).catch(() => {})"
    )


def test_every_page_opens_and_answers_without_a_network(
    context: BrowserContext, host: Server, copy: Path
) -> None:
    address = host.address + "here/"
    page = kept(context, address)
    host.shutdown()
    host.server_close()
    context.set_offline(True)
    paths = [p.parent.relative_to(copy).as_posix() + "/" for p in sorted(copy.rglob("index.html"))]
    assert len(paths) > 20
    found = page.evaluate(
        "(paths) => Promise.all(paths.map(async (p) => (await fetch(p)).ok))", paths
    )
    assert all(found), dict(zip(paths, found, strict=True))
    for path in ("care/salt-units/", "care/flush-maths/", "flush-day/"):
        page.goto(address + path + "#opened-anew")
        live = page.locator("salt-calc").first
        expect(live).to_have_attribute("data-state", "live")
    page.goto(address)
    page.locator("input.md-search__input").focus()
    page.locator("input.md-search__input").fill("white crust")
    expect(page.locator(".md-search-result__link").first).to_be_attached()
    page.goto(address + "not-written-yet/")
    expect(page.locator("h1")).to_have_text("Not on this device")
    page.get_by_role("link", name="All the care pages are kept").click()
    expect(page.locator("h1")).to_be_visible()


class Varying(Site):
    """A host that says of every reply that it varies with everything."""

    def reply(self, path: str, known: str | None) -> Reply:
        status, headers, body = super().reply(path, known)
        return Reply(status, {**headers, "Vary": "*"}, body)


def test_a_host_whose_replies_vary_is_kept_too(context: BrowserContext, site: Path) -> None:
    with running(listen(Varying(site), 0)) as server:
        kept(context, server.address)
        address = server.address + "care/salt-units/"
    context.set_offline(True)
    page = context.new_page()
    page.goto(address)
    expect(page.locator("salt-calc").first).to_have_attribute("data-state", "live")


def test_a_newer_version_waits_until_the_reader_agrees(
    context: BrowserContext, host: Server, copy: Path
) -> None:
    address = host.address + "here/"
    page = kept(context, address)
    published(copy, "A newer copy of")
    look_for_newer(page)
    expect(page.locator(".salt-copy")).to_contain_text(NEWER, timeout=30_000)
    other = context.new_page()
    other.goto(address)
    expect(other.locator(".salt-copy")).to_contain_text(MARK)  # still the one in use
    page.get_by_role("button", name="Use it now").click()
    expect(page.locator(".salt-copy")).to_contain_text("A newer copy of", timeout=10_000)
    expect(other.locator(".salt-copy")).to_contain_text("A newer copy of", timeout=10_000)
    names = page.evaluate("caches.keys()")
    assert len(names) == 1


def test_half_an_update_leaves_the_last_version_whole(
    context: BrowserContext, host: Server, copy: Path
) -> None:
    address = host.address + "here/"
    page = kept(context, address)
    published(copy, "A newer copy of")
    (copy / "care" / "water" / "index.html").write_text("cut off in the", encoding="utf-8")
    look_for_newer(page)
    page.wait_for_timeout(1500)
    page.reload()
    expect(page.locator(".salt-copy")).to_contain_text(MARK)
    expect(page.locator(".salt-copy")).not_to_contain_text(NEWER)
    context.set_offline(True)
    page.goto(address + "care/water/")
    expect(page.locator("salt-calc").first).to_have_attribute("data-state", "live")
    expect(page.locator(".salt-copy")).to_contain_text(MARK)


def test_the_copy_waits_while_a_page_fetches_something_large(
    context: BrowserContext, host: Server
) -> None:
    page = context.new_page()
    page.add_init_script(
        "navigator.locks.request('saltline: fetching', () => new Promise((done) => (free = done)))"
    )
    page.goto(host.address + "here/trust/")
    until(page, "caches.keys().then((names) => names.length)")  # the copy has begun
    page.wait_for_timeout(500)
    held = "caches.keys().then(async ([name]) => (await (await caches.open(name)).keys()).length)"
    assert page.evaluate(held) == 0
    page.evaluate("free()")
    expect(page.locator(".salt-copy")).to_contain_text(READY, timeout=30_000)


def test_the_age_of_the_copy_follows_the_device_s_clock(
    context: BrowserContext, host: Server
) -> None:
    page = context.new_page()
    page.goto(host.address + "here/sources/")
    line = page.locator(".salt-copy time")
    assert "ago" not in (line.text_content() or "")
    made = line.get_attribute("datetime") or ""
    for day, said in (("2020-01-01", None), (f"{int(made[:4]) + 1}{made[4:]}", r"36\d days ago")):
        page.add_init_script(f"Date.now = () => Date.parse('{day}')")
        page.reload()
        text = page.locator(".salt-copy time").text_content() or ""
        assert re.search(said, text) if said else "ago" not in text
