"""The second step in a real browser: a passkey is set up and signs in, an app's code, codes on paper."""

import os
import re
from pathlib import Path

import pytest
from allauth.mfa.totp.internal.auth import format_hotp_value, hotp_value, yield_hotp_counters_from_time
from axe_playwright_python.sync_playwright import Axe
from django.core.cache import cache
from django.utils import timezone
from playwright.sync_api import expect

from tests.browser.conftest import PHONE, Site
from tests.browser.second_step import PasskeyDevice
from tests.factories import PASSWORD
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import Guest, invite_person
from trimops.accounts.services.save_business import save_business

pytestmark = pytest.mark.xdist_group("browser")
AXE = Axe()
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
SMALL = "[...document.querySelectorAll('main button, main a.act')].filter((b) => b.offsetHeight && b.offsetHeight < 48)"
SHOTS = os.environ.get("TRIMOPS_SHOTS", "")


def look(site: Site, name: str) -> None:
    """The page as it stands can be read by everybody, fits a phone and a desk, and has large buttons."""
    for size in (PHONE, {"width": 1200, "height": 900}):
        site.page.set_viewport_size(size)
        assert site.page.evaluate(WIDER) <= 0, (name, size)
        if SHOTS:
            site.page.screenshot(path=Path(SHOTS) / f"{name}-{size['width']}.png", full_page=True)
    site.page.set_viewport_size(PHONE)
    assert site.page.evaluate(f"{SMALL}.map((b) => b.outerHTML)") == [], name
    found = AXE.run(site.page).response["violations"]
    assert [each["id"] for each in found] == [], name


def press(site: Site, name: str) -> None:
    site.page.get_by_role("button", name=name, exact=True).click()


def heading(site: Site, words: str) -> None:
    expect(site.page.get_by_role("heading", level=1)).to_have_text(re.compile(words))


def sign_in(site: Site, *, leads_to: str = "Week of|You sign in with your password alone") -> None:
    site.open("/account/login/")
    look(site, "login")
    site.page.get_by_label("Email").fill(site.house.owner.email)
    site.page.get_by_label("Password").fill(PASSWORD)
    press(site, "Sign in")
    # because: whoever opens the next address before the answer is there breaks this one off
    heading(site, leads_to)


def sign_out(site: Site) -> None:
    press(site, "Sign out")
    heading(site, "^Sign in$")


def prove(site: Site) -> None:
    heading(site, "Give your password once more")
    look(site, "reauthenticate")
    site.page.get_by_label("Password").fill(PASSWORD)
    press(site, "Go on")


def test_a_passkey_is_set_up_signs_in_by_itself_and_is_taken_away(door: Site) -> None:
    device = PasskeyDevice(door)
    door.house.business.needs_second_step = True
    save_business(business=door.house.business)
    sign_in(door)
    # Whoever has none is led there before anything else.
    heading(door, "You sign in with your password alone")
    expect(door.page.locator("main")).to_contain_text("asks everybody who works there for a second step")
    look(door, "second-step-none")
    door.page.get_by_role("link", name="Add a passkey").click()
    prove(door)

    heading(door, "Add a passkey")
    look(door, "passkey-add")
    press(door, "Add it")
    heading(door, "Write these 10 codes down now")
    look(door, "codes")
    assert device.keys() == 1
    door.page.get_by_role("link", name="I have written them down").click()
    heading(door, "You sign in in two steps")
    look(door, "second-step")
    door.open("/account/second-step/recovery-codes/")
    heading(door, "10 codes are left")
    assert not re.search(r"\d{8}", door.page.locator("main").inner_text())

    door.open("/")
    sign_out(door)
    press(door, "Use a passkey")
    heading(door, "Week of")

    door.open("/account/devices/")
    heading(door, "You are signed in")
    look(door, "devices")
    door.open("/account/second-step/webauthn/")
    heading(door, "You have 1 passkey")
    look(door, "passkeys")
    door.page.get_by_role("link", name="Call it otherwise").click()
    heading(door, "Give your password once more|What this passkey is called")
    if door.page.get_by_label("Password").count():
        prove(door)
    heading(door, "What this passkey is called")
    look(door, "passkey-name")
    door.page.get_by_label("What it is called").fill("My phone")
    press(door, "Keep it")
    door.page.get_by_role("link", name="Take it away").click()
    heading(door, "Take the passkey My phone away")
    look(door, "passkey-away")
    press(door, "Take it away")
    heading(door, "You have 0 passkeys")


def test_a_device_that_lost_its_passkey_is_told_so_in_words(door: Site) -> None:
    PasskeyDevice(door).forget()
    door.open("/account/login/")
    press(door, "Use a passkey")
    expect(door.page.get_by_role("alert")).to_contain_text("The passkey was not used")


def code_now(secret: str) -> str:
    return format_hotp_value(hotp_value(secret, next(yield_hotp_counters_from_time())))


def test_an_apps_code_and_a_code_on_paper_are_the_second_step(door: Site) -> None:
    sign_in(door)
    door.open("/account/second-step/totp/activate/")
    prove(door)
    heading(door, "Set up an app for codes")
    look(door, "app")
    secret = door.page.locator("code.key").inner_text()
    door.page.get_by_label("The six figures").fill("000000" if code_now(secret) != "000000" else "111111")
    press(door, "Set it up")
    expect(door.page.get_by_role("alert").first).to_contain_text("Incorrect code")
    door.page.get_by_label("The six figures").fill(code_now(secret))
    press(door, "Set it up")
    heading(door, "Write these 10 codes down now")
    paper = door.page.locator("ol.codes code").first.inner_text()

    door.open("/")
    sign_out(door)
    sign_in(door, leads_to="The second step")
    look(door, "second-step-asked")
    door.page.get_by_label("Figures of the app").fill(paper)
    press(door, "Sign in")
    heading(door, "Week of")

    door.open("/account/second-step/totp/deactivate/")
    heading(door, "Give")
    if door.page.get_by_label("Password").count():
        door.page.get_by_label("Password").fill(PASSWORD)
        press(door, "Go on")
    heading(door, "Take the app for codes away")
    look(door, "app-away")


def test_a_programs_token_is_made_and_seen_once(door: Site) -> None:
    sign_in(door)
    door.open("/people/me/programs/")
    heading(door, "No program has a token of yours")
    look(door, "programs-none")
    door.page.get_by_label("What the program is called").fill("Farm office")
    door.page.get_by_label("farms:see").first.check()
    press(door, "Make the token")
    # What was typed waits while the password is given once more.
    prove(door)
    heading(door, "The token of Farm office")
    expect(door.page.locator("code.key")).to_have_text(re.compile("^trimops_[0-9a-f]{64}$"))
    look(door, "programs-made")
    door.page.get_by_role("link", name="I have it").click()
    heading(door, "1 token for programs of yours")
    door.page.get_by_role("button", name=re.compile("^Revoke it")).click()
    expect(door.page.get_by_role("status")).to_contain_text("is revoked")


def test_the_people_page_and_a_part_fit_the_screen(door: Site) -> None:
    sign_in(door)
    guest = Guest(
        "somebody.with-a-long-name@ash-and-rye-foot-trimming.example.invalid", "A Guest", Role.OFFICE
    )
    invite_person(business=door.house.business, guest=guest, at=timezone.now(), by=door.house.owner)
    door.open("/people/")
    heading(door, "3 people work with")
    look(door, "people")
    door.page.get_by_role("link", name=re.compile("change what Office")).first.click()
    heading(door, "is office")
    look(door, "part")


def test_who_tries_too_often_reads_when_to_come_again(door: Site) -> None:
    cache.clear()
    for _ in range(11):
        door.open("/account/login/")
        door.page.get_by_label("Email").fill(door.house.owner.email)
        door.page.get_by_label("Password").fill("not-the-word")
        press(door, "Sign in")
        expect(door.page.locator("main")).to_contain_text(re.compile("Not done yet|Too often"))
    heading(door, "Too often: come again in 15 minutes")
    look(door, "too-often")
    door.complaints.clear()  # because: Chromium itself complains of the 429
    cache.clear()
