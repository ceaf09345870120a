"""One Chromium for all browser tests, and a page that keeps watch over what it asks for and complains of."""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field

import pytest
from django.conf import settings
from django.test import Client
from playwright.sync_api import Browser, ConsoleMessage, Page, Request, ViewportSize, expect, sync_playwright

from tests.browser.borrowed import LONGEST_MS, borrowed, close_all
from tests.browser.small_round import Round, make_round
from tests.factories import House, make_house
from trimops.accounts.models import User

PHONE: ViewportSize = {"width": 360, "height": 800}
DESK: ViewportSize = {"width": 1280, "height": 900}
NAMES = ("chromium", "chromium-browser", "google-chrome")
ALONE = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@dataclass
class Site:
    """The running site, a browser page on it, and what was noticed on the way."""

    address: str
    page: Page
    house: House
    round: Round = field(init=False)
    outside: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)

    def open(self, path: str) -> int:
        """Go there; the answer's status."""
        answer = self.page.goto(self.address + path)
        assert answer is not None
        return answer.status

    def be(self, user: User) -> None:
        """Sit in that person's chair, past the sign-in form."""
        client = Client()
        client.force_login(user)
        value = client.cookies[settings.SESSION_COOKIE_NAME].value
        cookie = {"name": settings.SESSION_COOKIE_NAME, "value": value, "url": self.address}
        self.page.context.add_cookies([cookie])

    def title(self) -> str:
        return self.page.title().rsplit(" – ", 1)[0]

    def _asked(self, request: Request) -> None:
        if not request.url.startswith((self.address, "data:")):
            self.outside.append(request.url)

    def _told(self, message: ConsoleMessage) -> None:
        if message.type in ("error", "warning"):
            self.complaints.append(f"{self.page.url}: {message.text}")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Chromium as installed; a machine without it fails here instead of passing over the tests."""
    path = next((found for name in NAMES if (found := shutil.which(name))), None)
    if path is None:
        pytest.fail(f"No Chromium (looked for {', '.join(NAMES)}): run `make chromium` or install it.")
    # The browser's own event loop runs in this thread from here on; Django would take every query for an async one.
    os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "true"
    expect.set_options(timeout=LONGEST_MS)
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=path, args=ALONE)
        yield started
        started.close()
    del os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"]


@pytest.fixture(scope="session")
def served(browser, live_server) -> Iterator[str]:
    """The address of the site that runs in this process, for tests that borrow a profile."""
    yield str(live_server.url)
    close_all()


@pytest.fixture
def door(browser, served) -> Iterator[Site]:
    """The site of a business that has only just begun, on a phone: enough to come in and look round."""
    with _watched(browser, served, PHONE, make_house()) as site:
        yield site


@pytest.fixture
def site(request, browser, served, settings) -> Iterator[Site]:
    """The small round served, on a phone (or on a desk, by indirect parameter)."""
    settings.PLAN_SECONDS = 1.0
    size = DESK if getattr(request, "param", "") == "desk" else PHONE
    made = make_round()
    with _watched(browser, served, size, made.house) as site:
        site.round = made
        yield site


@contextmanager
def _watched(browser: Browser, address: str, size: ViewportSize, house: House) -> Iterator[Site]:
    with borrowed(browser, address, size) as context:
        site = Site(address, context.new_page(), house)
        site.page.on("request", site._asked)
        site.page.on("console", site._told)
        site.page.on("pageerror", lambda fault: site.complaints.append(str(fault)))
        yield site
    assert site.outside == [], "pages ask nobody but us"
    assert site.complaints == [], "no page complains in the browser's console"
