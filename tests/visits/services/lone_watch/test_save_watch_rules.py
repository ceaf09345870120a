"""Switched on only where it can tell somebody."""

from dataclasses import replace
from datetime import timedelta

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, make_van
from tests.visits.services.lone_watch.watched import WISH, add_contact, again, rules, watch_of
from visits.models import WatchContact
from visits.services.lone_watch.save_watch_rules import CannotTellAnybody, save_watch_rules


def save(house, at=NOON, **changes):
    return save_watch_rules(business=house.business, wish=replace(WISH, **changes), at=at, by=house.owner)


def test_a_business_has_one_set_of_rules(house):
    save(house, grace_minutes=45)
    assert rules(house).grace_minutes == 45


def test_where_nothing_can_leave_it_is_refused_and_may_still_be_switched_off(house, settings):
    settings.EMAIL_HOST = ""
    with pytest.raises(CannotTellAnybody, match="no mail server"):
        save(house)
    save(house, is_on=False)
    assert not rules(house).is_on


def test_where_nobody_keeps_the_time_it_is_refused(house):
    with pytest.raises(CannotTellAnybody, match="timetable"):
        save(house, at=NOON + timedelta(hours=1))


def test_a_van_for_which_there_is_nobody_is_named(house):
    WatchContact.objects.within(house.scope).update(van=house.van)
    make_van(house.business, house.owner, "Van 2")
    with pytest.raises(CannotTellAnybody, match=r"nobody to tell for Van 2:"):
        save(house)


def test_who_is_told_by_sms_does_not_count_where_none_can_be_sent(house, settings):
    settings.SMS = "file"
    WatchContact.objects.within(house.scope).exclude(told_by="sms").delete()
    with pytest.raises(CannotTellAnybody, match="nobody to tell"):
        save(house)
    add_contact(house, "A. Aunt", phone="0199 555 030", email="aunt@home.example", told_by="both")
    assert save(house).is_on


def test_minutes_are_held_within_bounds(house):
    with pytest.raises(ValidationError):
        save(house, grace_minutes=0)


def test_switched_off_open_watches_end(house):
    watch = watch_of(house)
    save(house, is_on=False)
    assert again(watch).is_over
