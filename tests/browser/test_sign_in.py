"""Coming in, going out, and what a stranger or the wrong person meets."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import Site
from tests.factories import PASSWORD

pytestmark = pytest.mark.xdist_group("browser")


def _sign_in(door: Site, email: str, password: str = PASSWORD) -> None:
    door.page.get_by_label("Email").fill(email)
    door.page.get_by_label("Password").fill(password)
    door.page.get_by_role("button", name="Sign in").click()


def test_an_owner_signs_in_to_the_week_and_out_again(door: Site) -> None:
    door.open("/farms/")
    _sign_in(door, door.house.owner.email)
    expect(door.page).to_have_title(re.compile("^1 farm on the round"))

    door.open("/")
    expect(door.page.get_by_role("heading", level=1)).to_contain_text("Week of")
    door.page.get_by_role("button", name="Sign out").click()

    expect(door.page.get_by_role("heading", level=1)).to_have_text("Sign in")
    door.open("/farms/")
    expect(door.page.get_by_role("heading", level=1)).to_have_text("Sign in")


def test_a_wrong_password_says_what_to_mend_and_lets_nobody_in(door: Site) -> None:
    door.open("/account/login/")
    _sign_in(door, door.house.owner.email, "not-the-word-at-all")

    expect(door.page.get_by_role("alert")).to_contain_text("Not done yet")
    assert door.page.get_by_role("button", name="Sign out").count() == 0


def test_a_farm_client_comes_to_their_own_farm(door: Site) -> None:
    door.open("/account/login/")
    _sign_in(door, door.house.client.email)

    expect(door.page.get_by_role("link", name="My farm")).to_have_attribute("aria-current", "page")
    expect(door.page.get_by_role("link", name="Farms", exact=True)).to_have_count(0)
