"""Coming in, going out, and what a stranger or the wrong person meets."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import Site
from tests.factories import PASSWORD

pytestmark = pytest.mark.xdist_group("browser")


def _sign_in(site: Site, email: str, password: str = PASSWORD) -> None:
    site.page.get_by_label("Email").fill(email)
    site.page.get_by_label("Password").fill(password)
    site.page.get_by_role("button", name="Sign in").click()


def test_an_owner_signs_in_to_the_week_and_out_again(site: Site) -> None:
    site.open("/farms/")
    _sign_in(site, site.round.house.owner.email)
    expect(site.page).to_have_title(re.compile("^5 farms on the round"))

    site.open("/")
    expect(site.page.get_by_role("heading", level=1)).to_contain_text("Week of")
    site.page.get_by_role("button", name="Sign out").click()

    expect(site.page.get_by_role("heading", level=1)).to_have_text("Sign in")
    site.open("/farms/")
    expect(site.page.get_by_role("heading", level=1)).to_have_text("Sign in")


def test_a_wrong_password_says_what_to_mend_and_lets_nobody_in(site: Site) -> None:
    site.open("/account/login/")
    _sign_in(site, site.round.house.owner.email, "not-the-word-at-all")

    expect(site.page.get_by_role("alert")).to_contain_text("Not done yet")
    assert site.page.get_by_role("button", name="Sign out").count() == 0


def test_a_farm_client_comes_to_their_own_farm(site: Site) -> None:
    site.open("/account/login/")
    _sign_in(site, site.round.house.client.email)

    expect(site.page.get_by_role("link", name="My farm")).to_have_attribute("aria-current", "page")
    expect(site.page.get_by_role("link", name="Farms", exact=True)).to_have_count(0)
