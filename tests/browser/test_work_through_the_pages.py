"""The work itself through the browser: plan the week, put a cow down, bring in a herd list."""

import re

import pytest
from playwright.sync_api import Response, expect

from tests.browser.conftest import Site
from tests.browser.small_round import HERD_LIST

pytestmark = pytest.mark.xdist_group("browser")


@pytest.mark.parametrize("site", ["desk"], indirect=True)
def test_a_week_is_planned_watched_and_accepted(site: Site) -> None:
    site.be(site.house.owner)
    site.open(f"/week/?week={site.round.wanted.due_from}")
    heading = site.page.get_by_role("heading", level=1)
    expect(heading).to_contain_text("wanted, none planned")

    site.page.get_by_role("button", name="Plan this week").click()
    site.page.wait_for_url("**/week/?week=*")
    expect(site.page.get_by_text("Not in the diary until accepted.")).to_be_visible()
    assert site.page.locator(".week-board [data-stop]:visible").count() >= 1
    assert site.page.locator("svg.ribbon-wide:visible").count() >= 1
    assert site.page.locator("svg.ribbon-narrow:visible").count() == 0

    site.page.get_by_role("button", name="Accept the week").click()
    expect(site.page.get_by_role("status").first).to_contain_text("The week is in the diary")
    site.open(f"/visits/{site.round.wanted.pk}/")
    expect(site.page.get_by_role("link", name="Confirm the hour")).to_be_visible()


def test_a_cow_is_put_down_at_the_crush_and_stands_on_the_visit(site: Site) -> None:
    site.be(site.house.trimmer)
    site.open(f"/visits/{site.round.under_way.pk}/crush/")
    page = site.page
    page.get_by_role("button").filter(has_text="202").first.click()
    expect(page.get_by_role("heading", name="Cow 202")).to_be_visible()
    page.locator("[data-foot='LH']").click()
    page.locator("[data-place='lateral 3']").click()
    page.locator(".sheet [data-lesion='WLF']").click()
    page.locator("[data-save='main']:visible").click()
    expect(page.locator("body")).to_contain_text("Loose horn off the outer claw?")
    with page.expect_response(_brings_a_cow):
        page.locator("[data-save='sure']:visible").click()

    expect(page.get_by_text("Cow 202 is noted.")).to_be_visible()
    expect(page.locator(".line")).to_contain_text("All sent")
    site.open(f"/visits/{site.round.under_way.pk}/")
    expect(page.get_by_role("heading", level=1)).to_have_text("Thistle Bank: 2 of 12 cows done")
    row = page.get_by_role("row").filter(has_text="202")
    expect(row).to_contain_text("left hind: white line crack")


def test_a_herd_list_is_looked_at_before_it_changes_anything(site: Site) -> None:
    farm = site.house.farm
    site.be(site.house.office)
    site.open(f"/farms/{farm.pk}/herd-list/")
    kept = {"name": "herd.csv", "mimeType": "text/csv", "buffer": HERD_LIST}
    site.page.get_by_label("Herd list").set_input_files(kept)
    site.page.get_by_role("button", name="Look at it first").click()

    expect(site.page).to_have_title(re.compile("^herd.csv would add 1 cow and change 1"))
    expect(site.page.get_by_role("row").filter(has_text="502")).to_contain_text("2021-13-01")
    assert _find(site, "501") == 0, "nothing has changed yet"

    site.page.go_back()
    site.page.get_by_role("button", name="Apply the list").click()
    expect(site.page.get_by_role("status").first).to_contain_text("1 new, 1 changed")
    assert _find(site, "501") == 1
    assert _find(site, "502") == 0


def _brings_a_cow(answer: Response) -> bool:
    """The server has answered what the phone sent, and there was something in it."""
    if not answer.url.endswith("/crush/writings/"):
        return False
    return bool((answer.request.post_data_json or {}).get("writings"))


def _find(site: Site, number: str) -> int:
    """How many cows of the farm the page finds by that number."""
    site.open(f"/farms/{site.house.farm.pk}/?q={number}")
    return site.page.get_by_role("rowheader", name=number, exact=True).count()
