"""What has been done of a day, by the diary and the clock."""

from datetime import datetime

import pytest

from tests.visits.domain.planning.hand_made import monday, week
from visits.domain.planning.replan.begun_day import DayVisit, VanDay, begun_visits, day_so_far
from visits.domain.planning.replan.drives import Drives

DRIVES = Drives(week())


def at(clock):
    return datetime.fromisoformat(monday(clock))


def visit(name, clock, site="near", minutes=60, **seen):
    seen = {key: at(value) for key, value in seen.items()}
    return DayVisit(name, site, at(clock), minutes, 10, {"near": 0, "middle": 2, "far": 1}[site], **seen)


def day(*visits, **changes):
    return VanDay("mon", "yard", visits, **changes)


def begun(now, *visits, **changes):
    return [each.job for each in begun_visits(day(*visits, **changes), DRIVES, at(now))]


TWO = (visit("a", "09:00"), visit("b", "11:00", "far"))


@pytest.mark.parametrize(
    ("now", "names"), [("08:39", []), ("08:40", ["a"]), ("10:19", ["a"]), ("10:20", ["a", "b"])]
)
def test_a_visit_is_begun_once_its_drive_must_have_begun(now, names):
    assert begun(now, *TWO) == names


def test_what_was_put_down_as_started_counts_and_so_does_what_came_before_it():
    assert begun("07:30", visit("a", "09:00"), visit("b", "11:00", started="10:50")) == ["a", "b"]


def test_a_visit_that_runs_late_is_begun():
    assert begun("07:30", *TWO, late=("a", at("11:00"))) == ["a"]


def so_far(now, *visits, **changes):
    van_day = day(*visits, **changes)
    return day_so_far(van_day, begun_visits(van_day, DRIVES, at(now)), DRIVES, at(now))


def test_the_day_so_far_ends_with_the_last_visit_begun():
    found = so_far(
        "11:30",
        visit("a", "09:00", "middle", started="09:10", finished="10:20"),
        visit("b", "11:00", "far", started="11:00"),
    )
    assert (found.shift, found.job) == ("mon", "b")
    assert (found.start, found.free) == (at("11:00"), at("12:00"))
    # Forty minutes from the yard to the first farm.
    assert (found.left, found.cows_before, found.hygiene_before) == (at("08:30"), 10, 2)


def test_a_visit_that_should_be_done_by_now_keeps_the_van_until_now():
    assert so_far("12:34", visit("a", "09:00", started="09:00")).free == at("12:34")


def test_a_van_that_is_done_stands_there_until_now():
    assert so_far("10:30", visit("a", "09:00", started="09:00", finished="09:50")).free == at("10:30")


def test_word_from_the_yard_goes_before_any_reckoning():
    under_way = so_far("09:30", visit("a", "09:00", started="09:10"), late=("a", at("12:20")))
    assert (under_way.start, under_way.free) == (at("09:10"), at("12:20"))
    on_its_way = so_far("09:30", visit("a", "09:00"), late=("a", at("12:20")), meal_had=True)
    assert (on_its_way.start, on_its_way.free, on_its_way.meal_had) == (at("11:20"), at("12:20"), True)


def test_a_late_visit_begins_no_sooner_than_the_one_before_ends():
    two = visit("a", "09:00", minutes=90), visit("b", "11:00", minutes=120)
    assert so_far("10:45", *two, late=("b", at("12:00"))).start == at("10:30")


def test_instants_are_whole_minutes():
    odd = DayVisit("a", "near", at("09:00"), 60, 10, 0, at("09:00").replace(second=42))
    found = so_far("09:30", odd)
    assert (found.start, found.free) == (at("09:00"), at("10:00"))
    late = at("11:00").replace(microsecond=5)
    assert so_far("09:30", odd, late=("a", late)).free == at("11:01")
