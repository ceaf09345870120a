"""A cow with a lesion and a block put down without a finger on the glass: Tab, Enter and letters alone."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.crush_arrived import content_on_server, trims_of
from tests.browser.crush_expected import content_of
from tests.browser.crush_phone import Phone, Server
from tests.browser.crush_plans import bare_ulcer
from tests.browser.crush_yard import begun, make_yard

pytestmark = pytest.mark.xdist_group("browser")
NUMBER = "310"
MOST_STEPS = 60
IS_AT = "(what) => document.activeElement?.matches(what) === true"


@pytest.fixture
def yard(transactional_db):
    return begun(make_yard())


@pytest.fixture
def server(yard, tmp_path):
    with Server(tmp_path / "server") as server:
        yield server


@pytest.fixture
def phone(yard, server, browser, tmp_path):
    with Phone(browser, tmp_path / "phone", server) as phone:
        phone.be(yard.house.trimmer)
        yield phone


def test_a_cow_is_put_down_by_keyboard_alone_and_the_focus_comes_back_from_the_sheet(yard, server, phone):
    page = phone.open(yard.path)
    expect(page.locator("a[href='#/number']").first).to_be_visible()

    go_to(page, "a[href='#/number']")
    page.keyboard.press("Enter")
    expect(page.locator("#k-number")).to_be_focused()
    page.keyboard.type(NUMBER)
    page.keyboard.press("Enter")
    expect(page.locator("h1", has_text=NUMBER)).to_be_visible()
    go_to(page, "[data-foot='LH']")
    page.keyboard.press("Enter")
    expect(page.locator(".sole")).to_be_visible()
    go_to(page, "[data-place='lateral 4']")
    page.keyboard.press("Enter")
    expect(page.locator(".sheet")).to_be_focused()
    for what in ("[data-lesion='SU']", "[data-action='block wood']", "[data-action='wrap']"):
        go_to(page, what)
        page.keyboard.press("Enter")
        page.wait_for_timeout(50)
    expect(page.locator("[data-action='wrap']")).to_have_attribute("aria-pressed", "true")
    page.keyboard.press("Escape")
    expect(page.locator(".sheet")).to_have_count(0)
    expect(page.locator("[data-place='lateral 4']")).to_be_focused()
    go_to(page, ".bar [data-save='main']")
    page.keyboard.press("Enter")
    expect(page.get_by_text(f"Cow {NUMBER} is noted.")).to_be_visible()
    expect(page.locator("main")).to_be_focused()

    expect(page.locator(".line-sent")).to_contain_text("All sent")
    server.bring_back()
    assert content_on_server(trims_of(yard)[NUMBER]) == content_of(bare_ulcer(NUMBER))


def go_to(page: Page, what: str) -> None:
    """Tab on until the focus stands there, and see that one can see where it stands."""
    for _ in range(MOST_STEPS):
        page.keyboard.press("Tab")
        if page.evaluate(IS_AT, what):
            return
    raise AssertionError(f"{what} is not reached by {MOST_STEPS} steps of the Tab key")
