"""A person of a farm on a small phone: from the link in the mail to the report, a cow, and an hour taken."""

import re

import pytest
from django.core import mail
from playwright.sync_api import expect

from tests.browser.conftest import Site
from trimops.kernel.scope import Scope
from visits.models import HeldHour, Visit

pytestmark = pytest.mark.xdist_group("browser")
LINK = re.compile(r"\S+/my-farm/come-in/\S+")
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.fixture(autouse=True)
def _mail_leads_here(settings, live_server) -> None:
    """Before the round is made, whose finished visits send mail."""
    settings.SITE_ADDRESS = live_server.url


def test_from_the_mail_to_the_report_the_cow_the_request_the_offer_and_the_hour(site: Site) -> None:
    page, house = site.page, site.house
    page.set_viewport_size({"width": 360, "height": 640})
    heading = page.get_by_role("heading", level=1)

    page.goto(_link_of(site))
    page.get_by_role("button", name="Come in").click()
    expect(page.get_by_role("heading", name="For the vet")).to_be_visible()
    assert page.url.endswith(f"/my-farm/reports/{site.round.finished.pk}/")
    _fits(site)

    page.get_by_role("link", name="Cows", exact=True).click()
    page.get_by_label("Her number").fill("101")
    page.get_by_role("button", name="Find her").click()
    page.get_by_role("link", name="101", exact=True).click()
    expect(heading).to_have_text("Cow 101: 1 block on")
    expect(page.locator(".soles svg")).to_have_count(1)
    _fits(site)

    page.get_by_role("link", name="She is lame now: ask for a visit").click()
    expect(page.get_by_text("Ring your vet now, not us, if")).to_be_in_viewport()
    expect(page.get_by_label("Cow", exact=True).first).to_have_value("101")
    page.get_by_label("Score").first.select_option("2 (UK 0 to 3)")
    _fits(site)
    page.get_by_role("button", name="Show me hours").click()
    expect(heading).to_contain_text("when we could come")
    assert not re.search("Upper Fold|Thistle Bank|Long Meadow|Ash Hollow|£", page.inner_text("main"))
    _fits(site)

    page.get_by_role("button", name="Hold it").first.click()
    expect(heading).to_contain_text("Held for you until")
    expect(page.get_by_text("101, score 2 (UK 0 to 3)")).to_be_visible()
    _fits(site)
    page.get_by_role("button", name="Take it").click()
    expect(page.get_by_role("status").first).to_contain_text("The hour is yours: the visit is confirmed.")
    expect(heading).to_contain_text("Confirmed: ")

    held = HeldHour.objects.within(Scope(house.business.pk)).get(by=house.client)
    visit = Visit.objects.within(Scope(house.business.pk)).get(held_as=held)
    assert (visit.state, visit.farm, visit.planned_start) == ("confirmed", house.farm, held.start)
    assert [asked.cow for asked in visit.asked_cows.within(house.scope)] == [house.cow]


def _link_of(site: Site) -> str:
    """The link in the mail about the visit to their own farm."""
    wanted = f"%2Freports%2F{site.round.finished.pk}%2F"
    bodies = [message.body for message in mail.outbox if message.to == [site.house.client.email]]
    return next(found[0] for body in bodies if (found := LINK.search(body)) and wanted in found[0])


def _fits(site: Site) -> None:
    assert site.page.evaluate(WIDER) <= 0, f"{site.page.url} is wider than the phone"
