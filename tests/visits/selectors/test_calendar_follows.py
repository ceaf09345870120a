"""A week of changes in any order: what a subscriber sees after each of them, against the rules of RFC 5545 and 5546."""

import random
from collections.abc import Callable
from contextlib import suppress
from datetime import datetime, timedelta
from decimal import Decimal

import icalendar
import pytest

from farms.services.save_farm import save_farm
from tests.factories import NOON, TUESDAY_TEN, House, make_house, make_van, wanted
from tests.random_examples import examples
from tests.visits.documents.feed_lint import faults_of
from tests.visits.selectors.calendar_read import subscribe, tag_and_bytes
from trimops.kernel.errors import RuleBroken
from visits.models import Van, Visit
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.expect_cows import expect_cows
from visits.services.finish_visit import SignOff, finish_visit
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.start_visit import start_visit
from visits.services.tell_hour import tell_hour

STEPS = 30
TIMED = ("DTSTART", "DTEND", "STATUS", "LOCATION", "GEO")
Step = Callable[[House, Visit, random.Random, datetime], object]


def _plan(house: House, visit: Visit, chance: random.Random, at: datetime) -> object:
    start = TUESDAY_TEN + timedelta(hours=chance.choice((0, 4, 24, 28, 48)))
    van = chance.choice(list(Van.objects.within(house.scope)))
    return plan_visit(visit=visit, van=van, start=start, at=at, by=house.owner)


def _farm(house: House, visit: Visit, chance: random.Random, at: datetime) -> object:
    house.farm.address = f"{chance.randint(1, 3)} Made-up Lane"
    house.farm.latitude = Decimal(chance.choice(("54.1", "54.2")))
    house.farm.access_notes = chance.choice(("", "Mind the dog"))
    return save_farm(farm=house.farm, at=at, by=house.owner)


STEP: list[Step] = [
    _plan,
    _plan,
    _farm,
    lambda house, visit, chance, at: put_off_visit(visit=visit, because="x", at=at, by=house.owner),
    lambda house, visit, chance, at: confirm_visit(visit=visit, at=at, by=house.owner),
    lambda house, visit, chance, at: tell_hour(visit=visit, at=at, by=house.owner),
    lambda house, visit, chance, at: expect_cows(
        visit=visit, count=chance.randint(1, 30), at=at, by=house.owner
    ),
    lambda house, visit, chance, at: (
        chance.random() < 0.3 and call_off_visit(visit=visit, because="x", at=at, by=house.owner)
    ),
    lambda house, visit, chance, at: (
        chance.random() < 0.3 and start_visit(visit=visit, checked=True, at=at, by=house.owner)
    ),
    lambda house, visit, chance, at: finish_visit(
        visit=visit, sign_off=SignOff("H", True), at=at, by=house.owner
    ),
]


def seen(secret: str, at: datetime) -> dict[str, icalendar.Event]:
    raw = tag_and_bytes(secret, at)[1]
    assert faults_of(raw) == []
    return {str(event["UID"]): event for event in icalendar.Calendar.from_ical(raw).events}


def states(house: House) -> dict[str, str]:
    return {f"{visit.uid}@visits.trimops": visit.state for visit in Visit.objects.within(house.scope)}


@pytest.mark.django_db
@pytest.mark.parametrize("seed", range(examples(60) // 20))
@pytest.mark.parametrize("wishes", [False, True])
def test_a_subscriber_can_follow_whatever_happens(seed, wishes):
    chance, house = random.Random(seed), make_house()
    make_van(house.business, house.owner, "Van 2")
    visits = [wanted(house.farm) for _ in range(4)]
    secret = subscribe(house, shows_wishes=wishes)
    before, was, at = seen(secret, NOON), states(house), NOON
    for _ in range(STEPS):
        at += timedelta(seconds=chance.choice((1, 60)))
        visit = Visit.objects.within(house.scope).get(pk=chance.choice(visits).pk)
        with suppress(RuleBroken):
            chance.choice(STEP)(house, visit, chance, at)
        after, now = seen(secret, at), states(house)
        gone = {
            uid for uid in before.keys() - after.keys() if before[uid]["STATUS"] != "TENTATIVE" or not wishes
        }
        assert gone == set(), "nothing that was shown goes without a word"
        for uid in before.keys() & after.keys():
            _follows(before[uid], after[uid], is_other_state=was[uid] != now[uid])
        before, was = after, now


def _follows(old: icalendar.Event, new: icalendar.Event, *, is_other_state: bool) -> None:
    is_other = is_other_state or any(_text(old, name) != _text(new, name) for name in TIMED)
    assert new["SEQUENCE"] - old["SEQUENCE"] == is_other
    if old.to_ical() != new.to_ical():
        assert new["LAST-MODIFIED"].dt > old["LAST-MODIFIED"].dt
    assert new["DTSTAMP"].dt == new["LAST-MODIFIED"].dt


def _text(event: icalendar.Event, name: str) -> bytes:
    return event[name].to_ical() if name in event else b""
