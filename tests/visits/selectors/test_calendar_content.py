"""What a subscriber sees of the plan as it goes on, read by the icalendar library."""

from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest

from farms.services.save_farm import save_farm
from tests.factories import (
    MONDAY,
    NOON,
    TUESDAY_TEN,
    confirmed,
    make_farm,
    make_house,
    make_van,
    planned,
    under_way,
    wanted,
)
from tests.visits.documents.feed_lint import faults_of
from tests.visits.selectors.calendar_read import LATER, events, only, subscribe, tag_and_bytes
from visits.models import CalendarAddress, OutBecause, VanOut, Visit
from visits.selectors.calendar_content import calendar_answer
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.save_van import VanHours, save_van, set_day_off
from visits.services.tell_hour import tell_hour

HOUR = timedelta(hours=1)


def move(visit, van, start, at=LATER):
    return plan_visit(visit=visit, van=van, start=start, at=at, by=van.trimmer)


def test_a_visit_shows_its_hour_its_place_and_who_comes(house):
    planned(house.farm, house.van)
    event = only(subscribe(house))
    assert event["DTSTART"].dt == TUESDAY_TEN
    assert (event["STATUS"], event["LOCATION"]) == ("TENTATIVE", "Down the track, Nowhere")
    assert event["GEO"].to_ical() == "54.1;-2.3"
    assert event["DESCRIPTION"].startswith(f"Planned. Van 1, {house.trimmer.name}.")
    assert "0199" not in str(event)


def test_each_feed_shows_its_own(house):
    other = make_van(house.business, house.owner, "Van 2")
    farm = make_farm(house.business, "Hill End", by=house.owner)
    planned(house.farm, house.van)
    planned(farm, other)
    low, hill = "Low Croft: 12 cows (routine)", "Hill End: 12 cows (routine)"
    shown = {who: set(events(subscribe(house, shows))) for who, shows in {
        "office": None, "van": other, "farm": house.farm, "trimmer": house.trimmer, "driver of none": house.office,
    }.items()}  # fmt: skip
    assert shown == {
        "office": {low, hill}, "van": {hill}, "farm": {low}, "trimmer": {low}, "driver of none": set(),
    }  # fmt: skip


def test_another_businesss_visits_are_never_shown(house):
    theirs = make_house("Fell & Beck")
    planned(theirs.farm, theirs.van)
    assert events(subscribe(house)) == {}


def test_a_visit_called_off_stays_for_four_weeks_from_the_calling_off(house):
    visit = planned(house.farm, house.van)
    secret = subscribe(house)
    before = only(secret)["SEQUENCE"]
    off_at = TUESDAY_TEN + timedelta(days=20)  # because: nobody came, and only now it is said
    call_off_visit(visit=visit, because="Snow", at=off_at, by=house.owner)
    event = only(secret, off_at + timedelta(days=28))
    assert (event["STATUS"], event["TRANSP"], event["SEQUENCE"]) == ("CANCELLED", "TRANSPARENT", before + 1)
    assert event["SUMMARY"].startswith("Called off: Low Croft")
    assert events(secret, off_at + timedelta(days=30)) == {}


def test_a_visit_put_off_is_called_off_at_the_hour_it_had_and_comes_back_under_its_uid(house):
    visit = confirmed(house.farm, house.van)
    secret = subscribe(house, house.van)
    first = only(secret)
    put_off_visit(visit=visit, because="Lame bull in the yard", at=LATER, by=house.owner)
    gone = only(secret)
    assert (gone["STATUS"], gone["DTSTART"].dt, gone["DTEND"].dt) == (
        "CANCELLED", first["DTSTART"].dt, first["DTEND"].dt,
    )  # fmt: skip
    assert gone["SUMMARY"].startswith("Put off: ")
    move(visit, house.van, TUESDAY_TEN + timedelta(days=2))
    back = only(secret)
    assert (back["STATUS"], back["DTSTART"].dt) == ("TENTATIVE", TUESDAY_TEN + timedelta(days=2))
    assert first["UID"] == gone["UID"] == back["UID"]
    assert (gone["SEQUENCE"], back["SEQUENCE"]) == (first["SEQUENCE"] + 1, first["SEQUENCE"] + 2)


def test_a_visit_put_off_and_then_called_off_is_still_told(house):
    visit = planned(house.farm, house.van)
    put_off_visit(visit=visit, because="Rain", at=LATER, by=house.owner)
    call_off_visit(visit=visit, because="Sold up", at=LATER, by=house.owner)
    assert only(subscribe(house, house.trimmer))["SUMMARY"].startswith("Called off: ")


def test_a_wish_that_never_had_an_hour_is_shown_where_it_was_asked_for_on_its_last_day(house):
    visit = wanted(house.farm, due_until=date(2026, 3, 13))
    assert events(subscribe(house)) == {}
    secret = subscribe(house, house.van, shows_wishes=True)
    event = only(secret)
    assert (event["DTSTART"].dt, event["DTEND"].dt) == (date(2026, 3, 13), date(2026, 3, 14))
    assert (event["STATUS"], event["TRANSP"]) == ("TENTATIVE", "TRANSPARENT")
    move(visit, house.van, TUESDAY_TEN)
    after = only(secret)
    assert (after["UID"], after["DTSTART"].dt) == (event["UID"], TUESDAY_TEN)
    assert after["SEQUENCE"] == event["SEQUENCE"] + 1


def test_where_wishes_show_a_visit_put_off_moves_to_its_last_day(house):
    visit = planned(house.farm, house.van)
    put_off_visit(visit=visit, because="Rain", at=LATER, by=house.owner)
    event = only(subscribe(house, shows_wishes=True))
    assert (event["STATUS"], event["DTSTART"].dt) == ("TENTATIVE", visit.due_until)


def test_a_farms_address_never_shows_wishes_or_days_off(house):
    wanted(house.farm)
    set_day_off(van=house.van, day=MONDAY, reason="", is_off=True, at=NOON)
    assert events(subscribe(house, house.farm, shows_wishes=True)) == {}


@pytest.mark.parametrize("shows", ["van", "trimmer", None])
def test_a_day_off_is_a_whole_day(house, shows):
    set_day_off(van=house.van, day=MONDAY, reason="Wedding", is_off=True, at=NOON)
    event = only(subscribe(house, shows and getattr(house, shows)))
    assert (event["SUMMARY"], event["LAST-MODIFIED"].dt) == ("Van 1 stays in: Wedding", NOON)
    assert (event["DTSTART"].dt, event["DTEND"].dt) == (MONDAY, MONDAY + timedelta(days=1))


@pytest.mark.parametrize(
    ("hours", "start", "end"),
    [
        (3, datetime(2026, 3, 3, 10, tzinfo=UTC), datetime(2026, 3, 3, 13, tzinfo=UTC)),
        (20, date(2026, 3, 3), date(2026, 3, 5)),
        (24 * 26, date(2026, 3, 3), date(2026, 3, 30)),  # over the change of the clock
    ],
)
def test_a_van_out_is_hours_of_a_day_or_whole_days(house, hours, start, end):
    VanOut.objects.create(
        business=house.business, van=house.van, since=TUESDAY_TEN, until=TUESDAY_TEN + hours * HOUR,
        because=OutBecause.ILL, noted_at=NOON, noted_by=house.owner,
    )  # fmt: skip
    event = only(subscribe(house))
    assert (event["DTSTART"].dt, event["DTEND"].dt) == (start, end)
    assert event["SUMMARY"] == "Van 1 does not go out: trimmer ill"


def test_an_alarm_rings_only_before_work_that_is_to_come(house):
    planned(house.farm, house.van)
    call_off_visit(
        visit=planned(house.farm, house.van, TUESDAY_TEN + 4 * HOUR), because="x", at=NOON, by=house.owner
    )
    under_way(house.farm, house.van, TUESDAY_TEN - timedelta(days=1))
    set_day_off(van=house.van, day=MONDAY, reason="", is_off=True, at=NOON)
    text = tag_and_bytes(subscribe(house, alarm_minutes=90))[1].decode()
    assert text.count("BEGIN:VALARM") == 1
    assert "TRIGGER:-PT1H30M\r\n" in text
    assert "VALARM" not in tag_and_bytes(subscribe(house))[1].decode()


def test_the_sequence_rises_by_one_with_time_state_and_place_and_never_otherwise(house):
    visit = planned(house.farm, house.van)
    secret = subscribe(house)
    seen = [only(secret)["SEQUENCE"]]

    def after(step):
        step()
        seen.append(only(secret)["SEQUENCE"])
        return seen[-1] - seen[-2]

    def farm(**fields):
        for name, value in fields.items():
            setattr(house.farm, name, value)
        save_farm(farm=house.farm, at=LATER, by=house.owner)

    second = make_van(house.business, house.owner, "Van 2")
    later = TUESDAY_TEN + HOUR
    assert after(lambda: move(visit, house.van, TUESDAY_TEN)) == 0  # planned anew where it was
    assert after(lambda: move(visit, second, TUESDAY_TEN)) == 0  # another van is neither time nor place
    assert after(lambda: move(visit, house.van, later)) == 1
    assert after(lambda: tell_hour(visit=visit, at=LATER, by=house.owner)) == 0
    assert after(lambda: confirm_visit(visit=visit, at=LATER, by=house.owner)) == 1
    assert after(lambda: farm(access_notes="Mind the dog")) == 0
    assert after(lambda: farm(phone="0199 555 010")) == 0
    assert after(lambda: farm(address="Up the track")) == 1
    assert after(lambda: farm(latitude=Decimal("54.2"), name="Upper Croft")) == 1
    assert after(lambda: farm(latitude=Decimal("54.200000"))) == 0
    assert seen == sorted(seen)


def test_last_modified_moves_with_the_farm_and_with_the_van(house):
    planned(house.farm, house.van)
    secret = subscribe(house)
    assert only(secret)["LAST-MODIFIED"].dt == NOON
    house.farm.access_notes = "Mind the dog"
    save_farm(farm=house.farm, at=LATER, by=house.owner)
    assert only(secret)["LAST-MODIFIED"].dt == only(secret)["DTSTAMP"].dt == LATER
    house.van.name = "Van 7"
    hours = VanHours([0], NOON.time(), LATER.time(), 60, 5, 0, NOON.time(), LATER.time())
    save_van(van=house.van, hours=hours, at=LATER + HOUR)
    assert only(secret)["LAST-MODIFIED"].dt == LATER + HOUR


def test_nothing_is_shown_of_an_address_that_is_unknown_or_closed(house):
    secret = subscribe(house)
    assert calendar_answer(secret[::-1], LATER) is None
    CalendarAddress.objects.within(house.scope).update(revoked_at=NOON)
    assert calendar_answer(secret, LATER) is None


def test_uids_are_others_in_each_feed_but_for_visits(house):
    set_day_off(van=house.van, day=MONDAY, reason="", is_off=True, at=NOON)
    visit = planned(house.farm, house.van)
    first, second = (events(subscribe(house)) for _ in range(2))
    shared = {str(event["UID"]) for event in first.values()} & {
        str(event["UID"]) for event in second.values()
    }
    assert shared == {f"{visit.uid}@visits.trimops"}


def test_whatever_stands_in_the_diary_passes_the_lint(house):
    planned(house.farm, house.van)
    wanted(house.farm)
    set_day_off(van=house.van, day=MONDAY, reason="Wedding; all day, with cake", is_off=True, at=NOON)
    raw = tag_and_bytes(subscribe(house, alarm_minutes=15, shows_wishes=True))[1]
    assert faults_of(raw) == []
    assert raw.count(b"BEGIN:VEVENT") == 3
    assert Visit.objects.within(house.scope).count() == 2
