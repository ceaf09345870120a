"""When farms are told, and when they are left in peace."""

from datetime import time, timedelta

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON
from tests.visits.services.messages.told_farms import errands
from trimops.jobs import Job
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageRules
from visits.services.messages.save_message_rules import (
    RuleMakesNoSense,
    RulesWord,
    save_message_rules,
    switch_message,
)

USUAL = RulesWord(time(20), time(7), time(16), 20)
HOUR = timedelta(hours=1)


def keep(house, word=USUAL, at=NOON):
    return save_message_rules(business=house.business, word=word, at=at)


def switch(house, kind, on=True, at=NOON):
    return switch_message(business=house.business, kind=kind, on=on, at=at).switched_on


def test_hours_are_kept_and_nothing_is_switched_on_by_that(house):
    row = keep(house, RulesWord(time(21), time(6, 30), time(17), 30))
    assert (row.quiet_from, row.tomorrow_at, row.late_minutes, row.switched_on) == (
        time(21),
        time(17),
        30,
        [],
    )
    assert MessageRules.objects.within(house.scope).count() == 1
    keep(house)
    assert MessageRules.objects.within(house.scope).count() == 1


@pytest.mark.parametrize("clock", [time(20), time(23), time(3), time(6, 59)])
def test_tomorrow_is_not_told_in_the_quiet(house, clock):
    with pytest.raises(RuleMakesNoSense) as refused:
        keep(house, RulesWord(time(20), time(7), clock, 20))
    assert refused.value.field == "tomorrow_at"


def test_a_delay_of_no_minutes_is_refused(house):
    with pytest.raises(ValidationError):
        keep(house, RulesWord(time(20), time(7), time(16), 0))


def test_each_kind_is_switched_by_itself(house):
    switch(house, MessageKind.BOOKED)
    assert switch(house, MessageKind.LATE) == ["booked", "late"]
    assert switch(house, MessageKind.LATE) == ["booked", "late"]
    assert switch(house, MessageKind.BOOKED, on=False) == ["late"]


def test_a_report_is_not_switched_for_each_contact_says_who_gets_it(house):
    assert switch(house, MessageKind.REPORT) == []


def test_tomorrow_switched_on_before_its_hour_is_told_today_and_after_it_not(house):
    switch(house, MessageKind.TOMORROW, at=NOON + 5 * HOUR)
    assert errands(house, Job.TELL_TOMORROW) == []
    switch(house, MessageKind.TOMORROW)
    (errand,) = errands(house, Job.TELL_TOMORROW)
    assert (errand.ids, errand.due_at) == ({"business_id": house.business.pk}, NOON + 4 * HOUR)


def test_an_hour_set_earlier_holds_today(house):
    switch(house, MessageKind.TOMORROW)
    keep(house, RulesWord(time(20), time(7), time(14), 20))
    assert errands(house, Job.TELL_TOMORROW)[-1].due_at == NOON + 2 * HOUR
