"""How often the phone tries: soon, then more seldom, and now and then for what other phones wrote."""

import pytest
from playwright.sync_api import Page, Route

from tests.browser.conftest import Site
from tests.browser.crush_harness import CrushDay, add, fetch_and_sit, make_crush_day, start

pytestmark = pytest.mark.xdist_group("browser")
WRITINGS = "**/crush/writings/"


@pytest.fixture
def day(transactional_db) -> CrushDay:
    return make_crush_day()


@pytest.fixture
def page(day, browser, live_server) -> Page:
    """A page whose clock stands until the test lets it run."""
    context = browser.new_context()
    site = Site(live_server.url, context.new_page(), day.house)
    site.be(day.house.trimmer)
    site.open("/farms/")
    fetch_and_sit(site.page, day)
    site.page.clock.install()
    yield site.page
    context.close()


class Tries:
    """Counts the tries, and answers each with that status or lets it go on to the server."""

    def __init__(self, page: Page, status: int | None = None, headers: dict[str, str] | None = None) -> None:
        self.page, self.status, self.headers, self.count = page, status, headers or {}, 0
        page.route(WRITINGS, self._answer)

    def _answer(self, route: Route) -> None:
        self.count += 1
        if self.status is None:
            route.continue_()
        else:
            route.fulfill(status=self.status, headers=self.headers)

    def within(self, seconds: int) -> int:
        """How many come in so long a time."""
        before = self.count
        for _ in range(seconds // 5):
            self.page.clock.run_for(5_000)
            # Sending itself goes by the real clock.
            self.page.wait_for_timeout(25)
        return self.count - before


def test_what_others_wrote_is_asked_for_about_once_a_minute(day, page):
    tries = Tries(page)
    start(page, day)
    page.wait_for_function("() => window.said.at(-1)?.sent_at")
    # Between three quarters of a minute and one and a quarter, not all phones at once.
    assert 6 <= tries.within(600) <= 14


def test_pauses_grow_while_the_server_is_in_trouble_up_to_a_minute(day, page):
    tries = Tries(page, 503)
    add(page, day, 1)
    start(page, day)
    page.wait_for_function("() => window.said.at(-1)?.trouble === 'server'")
    soon, later = tries.within(60), tries.within(300)
    assert 3 <= soon <= 7
    assert 3 <= later <= 8


def test_a_server_that_names_a_time_is_left_alone_until_then(day, page):
    tries = Tries(page, 503, {"Retry-After": "600"})
    add(page, day, 1)
    start(page, day)
    page.wait_for_function("() => window.said.at(-1)?.trouble === 'server'")
    assert tries.within(590) == 0
    assert tries.within(60) == 1


def test_taps_in_a_dead_spot_do_not_make_it_try_more_often(day, page):
    tries = Tries(page, 503, {"Retry-After": "600"})
    start(page, day)
    page.wait_for_function("() => window.said.at(-1)?.trouble === 'server'")
    before = tries.count
    for _ in range(5):
        add(page, day, 1)
    assert tries.within(60) == 0
    assert tries.count == before
    page.evaluate("window.dispatchEvent(new Event('online'))")
    page.wait_for_timeout(300)
    assert tries.count == before + 1, "but the signal's coming back does"
