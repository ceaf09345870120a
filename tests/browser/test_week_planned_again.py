"""Something changed, through the browser: old against new, a promise broken by a tick, a draft mended and copied."""

from collections.abc import Iterator

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from tests.browser.conftest import PHONE, Site, _watched
from tests.visits.services.changed_week import SEVEN, ChangedWeek, make_week

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def changed(db) -> ChangedWeek:
    return make_week()


@pytest.fixture
def page(changed, browser, served, monkeypatch) -> Iterator[Site]:
    """Tuesday at seven on a phone; the first van's crush is broken and a new plan is proposed."""
    monkeypatch.setattr("trimops.web.scoped_page.timezone.now", lambda: SEVEN)
    plan = changed.planned_again(changed.out())
    with _watched(browser, served, PHONE, changed.house) as site:
        site.be(changed.house.owner)
        assert site.open(reverse("replan", args=[plan.pk])) == 200
        yield site


def test_a_plan_that_breaks_a_promise_is_accepted_only_with_its_tick(
    page: Site, changed: ChangedWeek
) -> None:
    accept = page.page.get_by_role("button", name="Accept the new plan")
    accept.click()
    expect(page.page.get_by_text("The diary is as it was")).to_be_visible()
    page.page.get_by_label("Break this promise").check()
    accept.click()
    expect(page.page.get_by_text("The new plan is in the diary")).to_be_visible()
    assert changed.stored("firm").van == changed.second


def test_a_draft_is_mended_and_the_links_carry_it(page: Site) -> None:
    draft = page.page.get_by_label("Told", exact=True)
    text = page.page.locator("li", has=draft).get_by_role("link", name="Text")
    assert "our%20kit%20has%20broken%20down" in text.get_attribute("href")
    draft.fill("We are late & sorry")
    assert text.get_attribute("href").endswith("body=We%20are%20late%20%26%20sorry")


def test_a_draft_is_copied_or_marked_for_copying(page: Site) -> None:
    draft = page.page.get_by_label("Told", exact=True)
    row = page.page.locator("li", has=draft)
    row.get_by_role("button", name="Copy").click()
    expect(row.get_by_role("status")).to_contain_text("op")
    assert row.get_by_role("status").text_content() in ("Copied", "Marked: copy it now")
