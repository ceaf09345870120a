"""Taps after the cow's number is put in: two for a sound cow, seven for a sole ulcer with all that goes with it.

Counted are pointer events of touches that the page itself saw. The number is in once its last figure stands in the
field; choosing the cow that it names is the first tap.
"""

import pytest
from playwright.sync_api import expect

from tests.browser import crush_plans as plans
from tests.browser.crush_arrived import content_on_server, trims_of
from tests.browser.crush_expected import content_of
from tests.browser.crush_hand import Hand
from tests.browser.crush_phone import Phone, Server
from tests.browser.crush_phone_store import waiting
from tests.browser.crush_photos import camera
from tests.browser.crush_plans import CowPlan
from tests.browser.crush_taps import count_taps, taps
from tests.browser.crush_yard import begun, make_yard
from visits.models import Recheck

pytestmark = pytest.mark.xdist_group("browser")
SOUND, ULCER = "305", "310"  # neither on the list of the day: both come by their number


class CountingHand(Hand):
    """Forgets the taps that the number took."""

    def type_number(self, number: str) -> None:
        super().type_number(number)
        taps(self.page)


@pytest.fixture
def yard(transactional_db):
    return begun(make_yard())


def test_a_sound_cow_takes_two_taps_and_a_blocked_sole_ulcer_seven(yard, browser, tmp_path):
    with Server(tmp_path / "server") as server, Phone(browser, tmp_path / "phone", server) as phone:
        phone.be(yard.house.trimmer)
        hand = CountingHand(phone.open(yard.path), camera(1))
        expect(phone.page.locator("a[href='#/number']").first).to_be_visible()
        count_taps(phone.page)

        sound = _taps_of(hand, plans.sound(SOUND))
        ulcer = _taps_of(hand, plans.bare_ulcer(ULCER))

        expect(phone.page.locator(".line-sent")).to_contain_text("All sent")
        assert waiting(phone.page) == 0
        server.bring_back()
    assert len(sound) <= 2, sound
    assert len(ulcer) <= 7, ulcer
    _stand_on_the_server(yard)


def _taps_of(hand: Hand, plan: CowPlan) -> list[str]:
    hand.put_down(plan)
    return taps(hand.page)


def _stand_on_the_server(yard) -> None:
    """So few taps, and yet four feet trimmed, a block on the partner claw, a wrap and a re-check by the rule."""
    trims = trims_of(yard)
    assert content_on_server(trims[SOUND]) == content_of(plans.sound(SOUND))
    assert content_on_server(trims[ULCER]) == content_of(plans.bare_ulcer(ULCER))
    again = Recheck.objects.within(yard.house.scope).open().get(from_trim=trims[ULCER])
    assert (again.foot, again.cause) == ("LH", "block")
    assert (again.due_until - again.due_from).days == 7
