"""Without a mouse, and in bright sun."""

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import Site

pytestmark = pytest.mark.xdist_group("browser")
FOCUSED = "document.activeElement.innerText"
OUTLINE = "getComputedStyle(document.activeElement).outlineStyle"
MOST_TABS = 25


def test_the_main_action_is_reached_by_tab_and_pressed_by_enter(site: Site) -> None:
    site.be(site.round.house.trimmer)
    site.open(f"/visits/{site.round.under_way.pk}/")

    for _ in range(MOST_TABS):
        site.page.keyboard.press("Tab")
        if site.page.evaluate(FOCUSED) == "To the crush":
            break
    assert site.page.evaluate(FOCUSED) == "To the crush"
    assert site.page.evaluate(OUTLINE) == "solid", "the focus can be seen"
    site.page.keyboard.press("Enter")

    expect(site.page.get_by_role("heading", level=1)).to_contain_text("1 of 12 cows done")


def test_the_first_tab_skips_to_the_page(door: Site) -> None:
    door.be(door.house.trimmer)
    door.open("/visits/")

    door.page.keyboard.press("Tab")
    expect(door.page.locator(":focus")).to_have_text("Skip to the page")
    door.page.keyboard.press("Enter")

    expect(door.page.locator("#main")).to_be_focused()


def test_the_outdoor_theme_is_black_on_white_and_remembered(door: Site) -> None:
    door.open("/account/login/")
    button = door.page.get_by_role("button", name="Outdoor")
    expect(button).to_have_attribute("aria-pressed", "false")

    button.click()
    expect(button).to_have_attribute("aria-pressed", "true")
    door.page.reload()

    expect(button).to_have_attribute("aria-pressed", "true")
    colours = "[getComputedStyle(document.body).color, getComputedStyle(document.body).backgroundColor]"
    assert door.page.evaluate(colours) == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]
