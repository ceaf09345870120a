"""The crush page in Chromium as one phone has it, worked with a thumb, on a server of its own."""

import sqlite3
import time
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass, field

from axe_playwright_python.sync_playwright import Axe
from django.conf import settings
from django.db import connection
from django.test import Client
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Locator, Page, ViewportSize, expect

from tests.browser.borrowed import borrowed
from tests.browser.crush_server import Server
from tests.browser.queue_day import QueueDay, feet_lifted, worn_today
from trimops.accounts.models import User

WAITING = """async (visit) => {
  const { countWaiting } = await import("/static/visits/crush/store.js");
  return (await countWaiting(visit)).waiting;
}"""
ONE_HAND: ViewportSize = {"width": 360, "height": 640}
AXE = Axe()
BROKEN = (
    "axe.run({resultTypes: ['violations']})"
    ".then(found => found.violations.map(broken => [broken.id, broken.nodes[0].html]))"
)
# Of all that can be tapped on the face: what is smaller than a glove, and what is no wider than the screen.
SMALL = """[...document.querySelectorAll("main :is(button, a, input)")]
  .map((one) => [one.textContent.trim() || one.id, one.getBoundingClientRect()])
  .filter(([, box]) => box.width > 0 && (box.width < 56 || box.height < 56))
  .map(([words, box]) => `${words}: ${Math.round(box.width)} x ${Math.round(box.height)}`)"""
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


@dataclass
class Face:
    """The crush page of the day on one phone, worked with a thumb."""

    page: Page
    server: Server
    day: QueueDay
    complaints: list[str] = field(default_factory=list)

    @property
    def context(self) -> BrowserContext:
        return self.page.context

    def open(self, place: str = "") -> None:
        self.page.goto(f"{self.server.address}/visits/{self.day.visit.pk}/crush/#/{place}")
        expect(self.page.locator(".line")).to_be_visible()
        expect(self.page.locator(".face-opening")).to_have_count(0)

    def button(self, name: str) -> Locator:
        return self.page.get_by_role("button", name=name, exact=True)

    def link(self, name: str) -> Locator:
        return self.page.get_by_role("link", name=name, exact=True)

    def is_titled(self, words: str) -> None:
        expect(self.page.get_by_role("heading", level=1)).to_have_text(words)

    def says(self, words: str) -> None:
        expect(self.page.locator(".said")).to_contain_text(words)

    def type(self, number: str) -> None:
        for sign in number:
            if sign.isalpha():
                self.button("Letters").tap()
            self.button(sign).tap()
        expect(self.page.get_by_label("Her number")).to_have_value(number)

    def keep_her(self, number: str) -> None:
        """The cow in the crush is a plain trim."""
        self.page.locator("[data-save='main']").tap()
        self.says(f"Cow {number} is")

    def put_down(self, number: str) -> None:
        self.open("number")
        self.type(number)
        self.page.locator(".k-hit").first.tap()
        self.keep_her(number)

    def all_is_sent(self) -> None:
        ends = time.monotonic() + 60
        while self.page.evaluate(WAITING, self.day.visit.pk):
            assert time.monotonic() < ends, "something waits to be sent"
            self.page.wait_for_timeout(50)

    def office_has(self) -> list[str]:
        """The numbers of the cows that arrived, once all did."""
        self.all_is_sent()
        self.server.bring_back()
        return worn_today(self.day)

    def office_has_feet(self) -> int:
        """How many feet were lifted of the cows that arrived."""
        self.all_is_sent()
        self.server.bring_back()
        return feet_lifted(self.day)

    def session_of(self, user: User) -> str:
        """The cookie of somebody else who signs in."""
        return _session_of(self.server, user)

    def is_fit_for_all(self) -> None:
        """Readable by everybody, hit by a glove, no wider than the phone."""
        if not self.page.evaluate("'axe' in window"):
            self.page.evaluate(AXE.axe_script)
        assert self.page.evaluate(BROKEN) == []
        assert self.page.evaluate(SMALL) == []
        assert self.page.evaluate(WIDER) == 0


class Office(Server):
    """A server for many tests: each begins with the database as it has made it."""

    def begin_with(self) -> None:
        """Put the test's own database in place of whatever the server has."""
        connection.ensure_connection()
        with closing(sqlite3.connect(self._file, timeout=20)) as file:
            connection.connection.backup(file)


@contextmanager
def phone_on(browser: Browser, server: Server, day: QueueDay) -> Iterator[Face]:
    """A phone of its own, signed in as the trimmer; at the end it must not have complained."""
    with borrowed(browser, server.address, ONE_HAND, has_touch=True) as context:
        _sign_in(context, server, day)
        face = Face(context.new_page(), server, day)
        face.page.on("console", lambda message: _told(face, message))
        face.page.on("pageerror", lambda fault: face.complaints.append(str(fault)))
        face.open()
        yield face
        assert face.complaints == []


def _session_of(server: Server, user: User) -> str:
    """That person's sign-in, past the form."""
    client = Client()
    client.force_login(user)
    value = client.cookies[settings.SESSION_COOKIE_NAME].value
    server.know_session(value)
    return value


def _sign_in(context: BrowserContext, server: Server, day: QueueDay) -> None:
    value = _session_of(server, day.house.trimmer)
    context.add_cookies([{"name": settings.SESSION_COOKIE_NAME, "value": value, "url": server.address}])


def _told(face: Face, message: ConsoleMessage) -> None:
    # Without signal the browser itself says of each request that it failed; that is no fault of the page.
    if message.type in ("error", "warning") and "ERR_INTERNET_DISCONNECTED" not in message.text:
        face.complaints.append(message.text)
