"""From "ready" to "issued and sent" without a mouse."""

import pytest
from playwright.sync_api import expect

from invoicing.models import FarmTerms, Invoice, Sending
from tests.browser.conftest import Site
from tests.factories import make_prices
from tests.invoicing.services.billing import worked

pytestmark = pytest.mark.xdist_group("browser")
HELD = (
    "document.activeElement.dispatchEvent(new KeyboardEvent('keydown', "
    "{key: 'Enter', repeat: true, bubbles: true, cancelable: true}))"
)
TOLD = "document.getElementById(document.activeElement.getAttribute('aria-describedby')).innerText"


@pytest.fixture
def desk(door: Site) -> Site:
    """Two finished visits that could not be drafted because the prices were missing."""
    house = door.house
    for days in (0, 1):
        worked(house, 1, days=days)
    make_prices(house.business)
    FarmTerms.objects.create(business=house.business, farm=house.farm, send_to=["farm@example.invalid"])
    door.be(house.office)
    return door


def test_enter_alone_leads_from_ready_to_issued_and_sent(desk: Site) -> None:
    page, house = desk.page, desk.house
    heading = page.get_by_role("heading", level=1)
    # because: the page puts the cursor where it belongs a moment after its heading is there
    focused = page.locator(":focus")
    desk.open("/invoices/")
    expect(heading).to_have_text("2 visits to bill")
    expect(focused).to_have_text("Draft 2 visits")
    page.keyboard.press("Enter")
    expect(heading).to_contain_text("2 drafts for £72.00")
    expect(focused).to_have_text("Look at the first")
    page.keyboard.press("Enter")
    expect(heading).to_have_text("Draft for Low Croft: £36.00")
    first = page.url
    expect(focused).to_have_text("Issue and send")
    assert "Work of Tue 3 Mar 2026" in page.evaluate(TOLD), "who hears the page is told what goes"
    page.keyboard.press("Enter")
    page.wait_for_url(lambda url: url != first)
    assert "INV-" in page.get_by_role("status").inner_text()
    expect(focused).to_have_text("Issue and send")
    page.keyboard.press("Enter")
    expect(heading).to_contain_text("nothing is overdue")
    assert Invoice.objects.within(house.scope).issued().count() == 2
    assert Sending.objects.within(house.scope).count() == 2


def test_a_key_held_down_issues_nothing(desk: Site) -> None:
    page, house = desk.page, desk.house
    desk.open("/invoices/")
    page.keyboard.press("Enter")
    page.get_by_role("link", name="Look at the first").press("Enter")
    expect(page.get_by_role("button", name="Issue and send")).to_be_focused()
    # The first "down" happened on the page before, as when somebody leans on the key; what follows are repeats.
    assert page.evaluate(HELD) is False, "a repeat is refused"
    assert not Invoice.objects.within(house.scope).issued().exists()
