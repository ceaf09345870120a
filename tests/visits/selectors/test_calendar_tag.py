"""The tag of a feed: one query, the same while the bytes are the same, another whenever they are others."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal

import pytest

from farms.services.forget_farm import forget_farm
from farms.services.save_farm import save_farm
from tests.factories import MONDAY, NOON, TUESDAY_TEN, make_van, planned, wanted
from tests.visits.selectors.calendar_read import LATER, subscribe, tag_and_bytes
from trimops.accounts.models import Business
from visits.models import CalendarAddress, DayOff, OutBecause, VanOut, Visit
from visits.selectors.calendar_content import calendar_answer
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.end_van_out import end_van_out
from visits.services.expect_cows import expect_cows
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.save_van import set_day_off


def row_of(thing, **fields):
    """A row changed behind the back of every service."""
    type(thing).objects.within(thing.scope).filter(pk=thing.pk).update(**fields)


def van_out(house):
    return VanOut.objects.create(
        business=house.business,
        van=house.van,
        since=NOON + timedelta(days=2),
        until=NOON + timedelta(days=4),
        because=OutBecause.CRUSH,
        noted_at=NOON,
        noted_by=house.owner,
    )


def farm_with(**fields):
    def change(house, visit):
        for name, value in fields.items():
            setattr(house.farm, name, value)
        save_farm(farm=house.farm, at=LATER, by=house.owner)

    return change


def written(what, **fields):
    return lambda house, visit: row_of(visit if what == "visit" else getattr(house, what), **fields)


def business_with(**fields):
    return lambda house, visit: Business.objects.filter(pk=house.business.pk).update(**fields)


CHANGES = {
    "farm name": farm_with(name="Upper Croft"),
    "farm address": farm_with(address="Up the track"),
    "farm latitude": farm_with(latitude=Decimal("54.2")),
    "farm longitude": farm_with(longitude=Decimal("-2.31")),
    "farm access notes": farm_with(access_notes="Mind the dog"),
    "farm name behind the services": written("farm", name="Upper Croft"),
    "farm erased": lambda house, visit: forget_farm(farm=house.farm, at=LATER),
    "van name": written("van", name="Van 7"),
    "van's trimmer": lambda house, visit: row_of(house.van, trimmer=house.owner),
    "trimmer's name": lambda house, visit: (
        type(house.trimmer).objects.filter(pk=house.trimmer.pk).update(name="Al")
    ),
    "visit's van": lambda house, visit: row_of(visit, van=make_van(house.business, house.owner, "Van 2")),
    "cows": lambda house, visit: expect_cows(visit=visit, count=9, at=LATER, by=house.owner),
    "cows behind the services": written("visit", head_count=13),
    "reason": written("visit", reason="urgent"),
    "state": lambda house, visit: confirm_visit(visit=visit, at=LATER, by=house.owner),
    "hour": lambda house, visit: plan_visit(
        visit=visit, van=house.van, start=TUESDAY_TEN + timedelta(minutes=15), at=LATER, by=house.owner
    ),
    "end behind the services": written("visit", planned_finish=TUESDAY_TEN + timedelta(hours=9)),
    "sequence": written("visit", calendar_sequence=77),
    "last change": written("visit", changed_at=LATER + timedelta(seconds=1)),
    "called off": lambda house, visit: call_off_visit(visit=visit, because="Snow", at=LATER, by=house.owner),
    "put off": lambda house, visit: put_off_visit(visit=visit, because="Snow", at=LATER, by=house.owner),
    "another visit": lambda house, visit: planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=9)),
    "a visit erased": lambda house, visit: visit.delete(),
    "a wish": lambda house, visit: wanted(house.farm),
    "a day off": lambda house, visit: set_day_off(
        van=house.van, day=MONDAY, reason="", is_off=True, at=LATER
    ),
    "a van out": lambda house, visit: van_out(house),
    "business name": business_with(name="Rye Only"),
    "business time zone": business_with(timezone="Europe/Paris"),
    "alarm": lambda house, visit: CalendarAddress.objects.within(house.scope).update(alarm_minutes=45),
    "wishes no more": lambda house, visit: CalendarAddress.objects.within(house.scope).update(
        shows_wishes=False
    ),
}


@pytest.mark.parametrize("change", CHANGES.values(), ids=CHANGES)
def test_whatever_changes_the_bytes_changes_the_tag(house, change):
    visit = planned(house.farm, house.van)
    wanted(house.farm)
    secret = subscribe(house, alarm_minutes=30, shows_wishes=True)
    tag, raw = tag_and_bytes(secret)
    assert (tag, raw) == tag_and_bytes(secret)
    change(house, visit)
    new_tag, new_raw = tag_and_bytes(secret)
    assert new_raw != raw
    assert new_tag != tag


def test_whose_it_is_stands_in_its_name_and_its_tag(house):
    secrets = [subscribe(house, shows) for shows in (None, house.van, house.farm, house.trimmer)]
    tags, feeds = zip(*map(tag_and_bytes, secrets), strict=True)
    assert len(set(tags)) == len(set(feeds)) == 4


def test_a_day_off_taken_back_and_a_van_back_early_are_seen_too(house):
    secret = subscribe(house)
    out = van_out(house)
    set_day_off(van=house.van, day=MONDAY, reason="", is_off=True, at=LATER)
    seen = [tag_and_bytes(secret)]
    end_van_out(van_out=out, at=NOON + timedelta(days=3), by=house.owner)
    seen.append(tag_and_bytes(secret))
    DayOff.objects.within(house.scope).delete()
    seen.append(tag_and_bytes(secret))
    assert len({tag for tag, _ in seen}) == len({raw for _, raw in seen}) == 3


def test_the_tag_holds_through_a_day_and_all_that_does_not_show(house):
    visit = planned(house.farm, house.van)
    secret = subscribe(house)
    first = tag_and_bytes(secret, datetime(2026, 3, 2, 0, 0, tzinfo=UTC))
    row_of(visit, note="Not shown", signed_by="Nobody")
    row_of(house.farm, phone="0199 555 099", herd_size=3)
    planned(house.farm, house.van, NOON + timedelta(days=200))
    assert tag_and_bytes(secret, datetime(2026, 3, 2, 23, 59, 59, tzinfo=UTC)) == first


def test_a_visit_leaves_the_window_at_midnight_and_the_tag_goes_with_it(house):
    planned(house.farm, house.van, TUESDAY_TEN)
    secret = subscribe(house)
    edge = datetime(2026, 4, 1, tzinfo=UTC)  # 28 days after the day of the visit
    before, after = (tag_and_bytes(secret, at) for at in (edge - timedelta(seconds=1), edge))
    assert b"VEVENT" in before[1]
    assert b"VEVENT" not in after[1]
    assert before[0] != after[0]


def test_one_query_answers_who_has_the_newest_feed_and_who_has_not(house, django_assert_num_queries):
    for day in range(5):
        planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=day))
    secret = subscribe(house, house.farm)
    with django_assert_num_queries(1):
        found = calendar_answer(secret, LATER)
        assert found.etag.startswith('"')
    with django_assert_num_queries(0):
        assert len(found.content().visits) == 5


def test_a_field_that_somebody_adds_to_what_is_shown_must_be_read_first(house):
    """The feed is made of the text that the tag is made of: nothing else is at hand when it is made."""
    planned(house.farm, house.van)
    found = calendar_answer(subscribe(house), LATER)
    Visit.objects.within(house.scope).update(head_count=1)
    assert "12 cows" in found.content().visits[0].summary


def test_another_day_alone_is_no_other_feed(house):
    secret = subscribe(house)
    assert tag_and_bytes(secret, LATER) == tag_and_bytes(secret, LATER + timedelta(days=1))
