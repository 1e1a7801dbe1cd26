"""Flush day on a phone, from the evening to the stop, through a closed tab and a lost network."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, Page, expect

pytestmark = pytest.mark.browser


@pytest.fixture
def day(open_page: Callable[..., Page]) -> Page:
    page = open_page("sources/")
    page.clock.install()
    page.goto(page.url.replace("sources/", "flush-day/"))
    return page


def add(session: Locator, name: str, stage: str, kind: str = "I do not know") -> None:
    session.get_by_label("Name of the pot").fill(name)
    session.get_by_label("Size of the pot").fill("1")
    session.get_by_label("Size of the granules").fill("8")
    session.get_by_label(stage).check()
    session.get_by_label(kind).check()
    session.get_by_role("button", name="Add this pot").click()
    expect(session.locator(".salt-pots")).to_contain_text(name)


def press(session: Locator, name: str) -> None:
    session.get_by_role("button", name=name).click()


def test_a_whole_session(day: Page) -> None:
    session = day.locator("salt-session")
    add(session, "Ines 3", "In growth, with working roots")
    add(session, "Bo's seasonal", "At rest", "Yes, all of them")
    expect(session.locator(".salt-pots")).to_contain_text("stands aside")
    session.get_by_label("Water you flush with").fill("0,3")
    press(session, "These are all: begin")
    expect(session.locator("h3")).to_have_text("This evening: half an hour")
    expect(session.locator("h3")).to_be_focused()
    press(session, "They are covered now")
    expect(session.locator(".salt-warnings")).to_contain_text("Before 8 h")
    day.clock.fast_forward("12:00:00")
    day.reload()
    expect(session.get_by_label("Hours it stood covered")).to_have_value("12")
    session.get_by_label("First drips of Ines 3").fill("two")
    press(session, "Take this reading")
    expect(session.locator(".salt-error:visible")).to_contain_text("must be a number")
    session.get_by_label("First drips of Ines 3").fill("1,9")
    press(session, "Take this reading")
    expect(session.locator("h3")).to_have_text("Pour 1 of 3: Ines 3")
    expect(session.locator(".salt-known")).to_contain_text("Not there yet")
    day.context.set_offline(True)
    for turn in (1, 2, 3):
        expect(session.locator("h3")).to_have_text(f"Pour {turn} of 3: Ines 3")
        press(session, "Start three minutes")
        expect(session.locator(".salt-clock")).to_have_text("3:00")
        day.clock.fast_forward("03:10")
        expect(session.locator(".salt-clock")).to_have_text("Time is up")
        session.get_by_label("What ran out reads").fill(str(1.2 - 0.2 * turn))
        press(session, "Poured")
        if turn < 3:
            expect(session.locator("h3")).to_have_text("Rest")
            day.clock.fast_forward("01:00:10")
    day.context.set_offline(False)
    expect(session.locator("h3")).to_have_text("Done for today")
    expect(session.locator(".salt-known")).not_to_contain_text("this morning")
    press(session, "They are covered now")
    day.clock.fast_forward("12:00:00")
    day.reload()
    session.get_by_label("First drips of Ines 3").fill("0.45")
    press(session, "Take this reading")
    # Readings that fit no pot take the longest: some two seconds.
    expect(session.locator("h3")).to_have_text("This flush is done", timeout=20_000)
    expect(session.locator(".salt-known").first).to_contain_text("stop here")
    expect(session.locator(".salt-known svg").first).to_be_visible()


def test_a_link_carries_the_session_and_asks_before_it_replaces(
    day: Page, open_page: Callable[..., Page]
) -> None:
    session = day.locator("salt-session")
    add(session, "<b>Marta</b> 1", "In growth, with working roots")
    session.get_by_label("Water you flush with").fill("0.3")
    press(session, "These are all: begin")
    link = "#session=1;rinse=0.3;name1=Teodor~20~3C2~3E;pot_l1=0.5;grain_mm1=4;stage1=growing"
    other = open_page("flush-day/" + link + ";log1=drip~3A1.2")
    found = other.locator("salt-session")
    expect(found).to_contain_text("Teodor <2>")
    found.get_by_role("button", name="Open it").click()
    expect(found.get_by_label("First drips of Teodor <2>")).to_be_visible()
    day.evaluate(f"location.hash = {link!r}")
    expect(session).to_contain_text("replaces it")
    press(session, "Leave it")
    expect(session.locator("h3")).to_have_text("This evening: half an hour")
