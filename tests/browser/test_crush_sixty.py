"""A whole day without signal, the browser killed twice, and on the server all of it as it was tapped.

Sixty cows in `make bench`, twenty-four in `make long`, one of each kind in `make test`.

One load with signal, then the server is stopped. The kills come where the seed says, in the middle of a cow; what the
screen had said to be kept must be there again. Then the server comes up, and its rows are held against the taps.
"""

import os
from collections import Counter
from random import Random

import pytest
from playwright.sync_api import expect

from tests.browser.crush_arrived import content_on_server, kit_used, photos_of, trims_of, writings_of
from tests.browser.crush_expected import content_of, used_of
from tests.browser.crush_hand import Hand
from tests.browser.crush_mend import Mended, mend_some
from tests.browser.crush_mix import sixty_cows, some_of
from tests.browser.crush_phone import Phone, Server
from tests.browser.crush_phone_store import kept_photos, waiting
from tests.browser.crush_photos import camera
from tests.browser.crush_yard import Yard, make_yard

pytestmark = pytest.mark.xdist_group("browser")
SEED = 1125
COWS = int(os.environ.get("TRIMOPS_COWS", "24" if os.environ.get("TRIMOPS_LONG") == "1" else "10"))
MOST_PHOTO_BYTES = 200_000


@pytest.fixture
def yard(transactional_db) -> Yard:
    return make_yard()


@pytest.fixture
def server(yard, tmp_path):
    with Server(tmp_path / "server") as server:
        yield server


@pytest.fixture
def phone(yard, server, browser, tmp_path):
    with Phone(browser, tmp_path / "phone", server) as phone:
        phone.be(yard.house.trimmer)
        yield phone
        phone.page.screenshot(path=tmp_path / "last.png")


def test_a_day_noted_without_signal_and_with_two_kills_arrives_as_it_was_tapped(yard, server, phone):
    plans = some_of(sixty_cows(SEED), COWS)
    hand = _open_once(phone, server, yard)
    kills = _kill_points(Random(SEED), hand, plans)
    for plan in plans:
        for place, act in enumerate(hand.acts(plan)):
            act()
            if (plan.number, place) in kills:
                _kill(phone, hand, yard)
    mended = mend_some(hand, plans, Random(SEED))
    pictures = kept_photos(phone.page)
    assert waiting(phone.page) == len(plans) + sum(len(mend.versions) for mend in mended.values()) + len(
        pictures
    )

    server.start()
    phone.page.evaluate("dispatchEvent(new Event('online'))")  # as when the phone finds its signal again
    expect(phone.page.locator(".line-sent")).to_contain_text("All sent")
    assert waiting(phone.page) == 0
    server.bring_back()

    _same_cows(yard, hand, plans, mended)
    _same_photos(yard, plans, pictures)
    assert phone.complaints == []


def _open_once(phone, server, yard) -> Hand:
    phone.open(yard.path)
    phone.wait_until_kept()
    expect(phone.page.locator("h1", has_text="Before the first cow")).to_be_visible()
    server.stop()
    phone.open()
    hand = Hand(phone.page, camera(SEED))
    hand.begin()
    return hand


def _kill_points(dice, hand, plans) -> set[tuple[str, int]]:
    """Two places (cow, act) in the middle of cows that take more than opening and keeping."""
    inside = [
        (plan.number, place) for plan in plans for place in range(1, sum(1 for _ in hand.acts(plan)) - 1)
    ]
    return set(dice.sample(inside, 2))


def _kill(phone, hand, yard) -> None:
    phone.kill()
    hand.page = phone.reopen()
    phone.open(yard.path)
    expect(hand.page.locator(".q-next", has_text="Go on with")).to_be_visible()


def _same_cows(yard: Yard, hand: Hand, plans, mended: dict[str, Mended]) -> None:
    trims = trims_of(yard)
    assert Counter(trims.keys()) == Counter(plan.number for plan in plans), "each cow of the day, none twice"
    for plan in plans:
        mend = mended.get(plan.number, Mended(plan, []))
        trim, writings = trims[plan.number], writings_of(yard, plan.number)
        assert content_on_server(trim) == content_of(mend.last), plan
        assert kit_used(trim) == {yard.kit[name].name: number for name, number in used_of(mend.last).items()}
        assert trim.crush_seconds == pytest.approx(hand.stays[plan.number].seconds, abs=2), plan
        assert [row.is_gone for row in writings] == [False, *(is_gone for is_gone in mend.versions)], plan
        assert {row.record for row in writings} == {trim.client_id}
        assert trim.version == len(writings)


def _same_photos(yard: Yard, plans, pictures) -> None:
    arrived = photos_of(yard)
    sent = {(str(row.uid), row.foot, str(row.record), row.size, row.sha256) for row in arrived}
    assert sent == {(one.uid, one.foot, one.record, one.size, one.sha256) for one in pictures}
    assert max(row.size for row in arrived) <= MOST_PHOTO_BYTES
    meant = Counter()
    for plan in plans:
        meant[plan.number, ""] += plan.photos
        for foot in plan.feet:
            meant[plan.number, foot.foot] += foot.photos
    assert Counter((row.trim.cow.number, row.foot) for row in arrived) == +meant, (
        "each picture hangs on its foot"
    )
