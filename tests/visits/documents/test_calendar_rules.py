"""Rules that would keep the libraries reckoning (each was tried: some took minutes, some had no end)."""

import time
from datetime import date
from zoneinfo import ZoneInfo

import pytest

from tests.visits.documents.own_calendar import DENTIST, calendar
from visits.documents.busy_times import read_busy_times
from visits.documents.calendar_rules import (
    MOST_CHANGES,
    MOST_EVENTS,
    MOST_STEPS_IN_ALL,
    WILD,
    CannotRead,
    refuse_too_much,
    steps_of,
)

UTC = ZoneInfo("UTC")
LAST = date(2026, 6, 30)
WILD_RULES = [
    *("FREQ=SECONDLY", "FREQ=MINUTELY", "FREQ=DAILY;INTERVAL=0", "FREQ=HOURLY;INTERVAL=0"),
    *("FREQ=HOURLY;BYMONTH=2;BYMONTHDAY=30", "FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30"),
    *("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "FREQ=DAILY;BYSETPOS=5", "FREQ=MONTHLY;BYMONTHDAY=-32"),
    "FREQ=DAILY;BYHOUR=" + ",".join(map(str, range(24))) + ";BYMINUTE=" + ",".join(map(str, range(60))),
]
TAME_RULES = [
    *(
        "FREQ=DAILY",
        "FREQ=WEEKLY;BYDAY=MO,TU",
        "FREQ=MONTHLY;BYDAY=-1FR",
        "FREQ=YEARLY",
        "FREQ=DAILY;BYMONTH=1",
    ),
    *("FREQ=MONTHLY;BYMONTHDAY=-1", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29", "FREQ=HOURLY;COUNT=5"),
    *(
        "FREQ=MONTHLY;BYSETPOS=-1;BYDAY=MO,TU,WE,TH,FR",
        "FREQ=DAILY;COUNT=1000000000",
        "FREQ=WEEKLY;INTERVAL=2",
    ),
]


def left_out(*rules, begun="20200101T090000Z"):
    """How many of the entries are left out; all of them read within a second."""
    entries = [f"DTSTART:{begun}\nDURATION:PT1H\nRRULE:{rule}" for rule in rules]
    began = time.monotonic()
    found = read_busy_times(calendar(*entries, DENTIST), date(2026, 3, 2), date(2026, 3, 8), UTC)
    assert time.monotonic() - began < len(entries) + 3
    assert found.times, "whatever is left out, the dentist is not"
    return found.left_out


@pytest.mark.parametrize("rule", WILD_RULES)
def test_a_wild_rule_is_left_out_at_once(rule):
    assert left_out(rule) == 1


@pytest.mark.parametrize("rule", TAME_RULES)
def test_a_rule_that_people_make_stays(rule):
    assert left_out(rule) == 0


def test_a_rule_since_before_there_were_such_calendars_is_wild():
    assert left_out("FREQ=DAILY", begun="15000101T090000Z") == 1
    assert left_out("FREQ=WEEKLY", begun="16010101T090000Z") == 0, "some programs begin there"


def test_many_rules_have_one_limit_together():
    often = ["FREQ=DAILY"] * 30
    assert 5 < left_out(*often, "FREQ=WEEKLY", begun="19500101T090000Z") < 20
    assert MOST_STEPS_IN_ALL // steps_of({"FREQ": ["DAILY"]}, date(1950, 1, 1), LAST) == 17


def test_until_ends_it_and_a_part_that_makes_no_sense_is_wild():
    assert steps_of({"FREQ": ["DAILY"], "UNTIL": [date(2020, 1, 10)]}, date(2020, 1, 1), LAST) == 11
    for rule in (
        {},
        {"FREQ": []},
        {"FREQ": ["DAILY"], "INTERVAL": ["x"]},
        {"FREQ": ["DAILY"], "UNTIL": [None]},
    ):
        assert steps_of(rule, date(2020, 1, 1), LAST) == WILD


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"begin:vevent\r\nend:vevent\r\n" * (MOST_EVENTS + 1), "entries"),
        (b"BEGIN:STANDARD\r\nEND:STANDARD\r\n" * (MOST_CHANGES + 1), "zones"),
    ],
)
def test_a_calendar_with_thousands_of_parts_is_refused_before_it_is_read(content, words):
    refuse_too_much(content[: len(content) // 2])
    with pytest.raises(CannotRead, match=words):
        refuse_too_much(content)
