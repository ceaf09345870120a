"""Signing out of a phone that keeps days at the crush."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Site
from tests.browser.crush_harness import CrushDay, add, call, fetch_and_sit, make_crush_day
from tests.browser.test_crush_sender import PICTURE

pytestmark = pytest.mark.xdist_group("browser")
ELSEWHERE = "/farms/"
KEPT = "async () => (await (await import('/static/visits/crush/store_counts.js')).everyDay()).map((day) => day.who)"
PAPERS = """async () => {
  const { read } = await import("/static/visits/crush/phone_db.js");
  return read(["papers"], (transaction) => transaction.objectStore("papers").count());
}"""


@pytest.fixture
def day(transactional_db) -> CrushDay:
    return make_crush_day()


@pytest.fixture
def page(day, door: Site) -> Page:
    sit(door, day, day.house.trimmer)
    return door.page


def sit(door: Site, day: CrushDay, user) -> None:
    door.page.context.clear_cookies()
    door.be(user)
    door.open(ELSEWHERE)
    fetch_and_sit(door.page, day)


def press(page: Page) -> None:
    page.get_by_role("button", name="Sign out").first.click()


def is_out(page: Page) -> bool:
    page.wait_for_url("**/account/login/**")
    return not any(cookie["name"] == "sessionid" for cookie in page.context.cookies())


def test_nobody_signs_out_while_cows_wait_and_the_way_to_them_is_shown(day, page):
    record, *_ = [add(page, day, cow)["record"] for cow in (1, 2, 3)]
    page.evaluate(PICTURE, [day.visit.pk, record])
    press(page)

    said = page.locator(".messages")
    expect(said).to_contain_text("3 cows and 1 photo of Low Croft wait to be sent.")
    expect(said.get_by_role("link", name="Open Low Croft at the crush")).to_be_focused()
    assert said.get_by_role("link").get_attribute("href") == day.path
    page.reload()
    expect(page.get_by_role("button", name="Sign out")).to_be_visible()
    assert page.evaluate(PAPERS) == 1


def test_the_page_of_its_own_that_asks_refuses_too(day, page, door):
    add(page, day, 1)
    door.open("/account/logout/")
    page.locator("main").get_by_role("button", name="Sign out").click()
    expect(page.locator(".messages")).to_contain_text("1 cow of Low Croft waits to be sent.")


def test_a_start_that_was_not_told_and_a_cow_half_put_down_hold_too(day, page):
    call(page, "store.js", "putDraft", day.visit.pk, "c1", {"half": 1})
    press(page)
    expect(page.locator(".messages")).to_contain_text("1 cow of Low Croft is begun and not noted yet.")
    call(page, "store.js", "putBegun", day.visit.pk, {"at": "2026-03-02T08:00:00Z", "checked": True})
    press(page)
    expect(page.locator(".messages")).to_contain_text("the start of the visit of Low Croft waits to be sent.")


def test_when_nothing_waits_the_days_leave_the_phone_and_the_person_too(day, page):
    assert page.evaluate(PAPERS) == 1
    press(page)
    assert is_out(page)
    assert page.evaluate(PAPERS) == 0
    assert call(page, "store.js", "loadVisit", day.visit.pk)["papers"] is None


def test_what_a_colleague_has_not_sent_stays_for_them_and_holds_nobody_else(day, page, door):
    add(page, day, 1)
    trimmer = page.evaluate(KEPT)[0]
    sit(door, day, day.house.owner)
    assert len(page.evaluate(KEPT)) == 2
    press(page)
    assert is_out(page)
    assert page.evaluate(KEPT) == [trimmer]


@pytest.mark.parametrize(
    "broken",
    [
        "Object.defineProperty(window, 'indexedDB', {value: undefined})",
        "delete Window.prototype.indexedDB; delete window.indexedDB",
        "indexedDB.open = () => { throw new DOMException('no', 'SecurityError'); }",
        "indexedDB.databases = () => Promise.reject(new Error('no'))",
        "indexedDB.databases = () => new Promise(() => {})",
    ],
)
def test_a_browser_that_keeps_nothing_just_signs_out(broken, day, page):
    page.evaluate(f"() => {{ {broken} }}")
    press(page)
    assert is_out(page)


def test_a_phone_that_never_was_at_a_crush_signs_out_and_makes_no_database(day, door):
    door.be(day.house.office)
    door.open(ELSEWHERE)
    press(door.page)
    assert is_out(door.page)
    assert door.page.evaluate("indexedDB.databases()") == []
