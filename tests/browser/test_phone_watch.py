"""The beat of the phone at the crush, and the tap that answers the watch, with and without a network."""

import json
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Route

from tests.browser.phone_modules import module_alone

pytestmark = pytest.mark.xdist_group("browser")
ASKS = {
    "state": "asked",
    "farm": "Low Croft",
    "asked_at": "2026-03-03T12:00:00Z",
    "answer_until": "2026-03-03T12:10:00Z",
}
WATCHES = {**ASKS, "state": "watching", "asked_at": None, "answer_until": None}
BEGIN = """async ([address, is_watched]) => {
  const { startWatch } = await import(address);
  window.app = { visit: 7, papers: { is_watched }, watch: null, drawn: 0, redraw() { this.drawn += 1; } };
  window.app.watcher = startWatch(window.app);
  await window.app.watcher.beat();
}"""


class Office:
    """The other end: what it says next, and what it has heard."""

    def __init__(self) -> None:
        self.heard: list[dict[str, object]] = []
        self.watch: dict[str, object] | None = WATCHES
        self.is_there = True

    def answer(self, route: Route) -> None:
        if not self.is_there:
            route.abort()
            return
        self.heard.append(json.loads(route.request.post_data or "{}"))
        route.fulfill(json={"watch": self.watch})


@pytest.fixture
def phone(browser: Browser) -> Iterator[tuple]:
    office = Office()
    with module_alone(browser, "watch.js") as module:
        module.page.clock.install()
        module.page.route("**/api/v1/visits/7/heard/", office.answer)
        yield module.page, module.address, office


def waits(page, office, count):
    """Let time pass until the office has heard so often."""
    for _ in range(50):
        if len(office.heard) >= count:
            return
        page.wait_for_timeout(20)
    assert len(office.heard) == count


def test_it_beats_every_three_minutes_and_nobody_is_asked(phone):
    page, address, office = phone
    page.evaluate(BEGIN, [address, True])
    for beats in (2, 3):
        page.clock.fast_forward(181_000)
        waits(page, office, beats)
    assert office.heard == [{}, {}, {}]
    assert page.evaluate("app.watch.asks") is False


def test_where_the_business_has_no_watch_nothing_is_sent(phone):
    page, address, office = phone
    page.evaluate(BEGIN, [address, False])
    page.clock.fast_forward(600_000)
    assert office.heard == []


def test_the_question_shows_and_a_tap_answers_it(phone):
    page, address, office = phone
    office.watch = ASKS
    page.evaluate(BEGIN, [address, True])
    assert page.evaluate("app.watch") == {
        "asks": True,
        "farm": "Low Croft",
        "until": ASKS["answer_until"],
        "isTold": False,
        "said": "",
    }
    office.watch = WATCHES
    page.evaluate("app.watcher.say('more')")
    assert office.heard[-1]["well"] == "more"
    assert office.heard[-1]["ago"] < 5
    assert page.evaluate("app.watch.asks || app.watch.said") == ""


def test_a_tap_without_a_network_is_kept_and_sent_with_its_age(phone):
    page, address, office = phone
    office.watch = ASKS
    page.evaluate(BEGIN, [address, True])
    office.is_there = False
    page.evaluate("app.watcher.say('done')")
    assert page.evaluate("[app.watch.said, app.watch.isUnheard]") == ["done", True]
    assert len(office.heard) == 1

    page.clock.fast_forward(14_000)
    office.is_there, office.watch = True, None
    page.clock.fast_forward(2_000)
    waits(page, office, 2)
    assert office.heard[-1]["well"] == "done"
    assert 14 <= office.heard[-1]["ago"] < 60
    page.wait_for_function("app.watch.said === ''")
