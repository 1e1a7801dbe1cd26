"""Waiting for what a page comes to."""

from __future__ import annotations

from time import monotonic

from playwright.sync_api import Page


def until(page: Page, expression: str, arg: object = None, seconds: float = 30.0) -> None:
    """Wait until an expression of the page, or what it promises, is true.

    Asked from outside, again and again: Playwright's own wait takes any promise for true, and
    where it has to ask twice the site's policy forbids it to read text as script.
    """
    end = monotonic() + seconds
    while not page.evaluate(expression, arg):
        assert monotonic() < end, f"not within {seconds:g} s: {expression}"
        page.wait_for_timeout(50)
