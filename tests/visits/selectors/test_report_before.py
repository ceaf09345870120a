from datetime import date, timedelta

import pytest
from django.db import transaction

from tests.factories import (
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    make_house,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.domain.visit_states import VisitReason
from visits.selectors.report_before import counted_before

YEAR = timedelta(days=364)


@pytest.fixture(scope="module")
def house(django_db_setup, django_db_blocker):
    """Made once for the file; what a test adds goes with the test."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield make_house()
        transaction.set_rollback(True)


@pytest.fixture(autouse=True)
def _each_by_itself(db):
    """Every test ends where it began."""


def done(house, cows, *, after=timedelta(0), sick=1, **wish):
    """A finished visit on which the first `sick` cows had a sole ulcer."""
    visit = under_way(house.farm, house.van, TUESDAY_TEN + after, **wish)
    for place, cow in enumerate(cows):
        put_down(visit, cow, blocked_foot() if place < sick else trimmed_foot())
    return finish(visit, house.trimmer)


def counted(visit):
    return counted_before(visit, visit.finished_at.date())


def herd_of(house, count):
    house.farm.herd_size = count
    house.farm.save()
    return [house.cow, *(make_cow(house.farm, str(200 + n)) for n in range(count - 1))]


def test_a_visit_stands_beside_the_last_and_the_same_season_a_year_ago(house):
    cows = herd_of(house, 4)
    done(house, cows[:2], after=-YEAR, sick=2)
    done(house, cows[:3], after=-timedelta(days=90), sick=0)
    found = counted(done(house, cows[:1]))
    assert [(c.label, c.cows_seen, c.whole_herd) for c in found.compared] == [
        ("last time, 3 Dec 2025", 3, True),
        ("a year ago, 4 Mar 2025", 2, False),
    ]
    assert [(f.lesion, f.cows, f.before) for f in found.findings] == [("sole ulcer", 1, (0, 2))]
    assert not found.whole_herd


def test_three_cows_in_four_at_a_routine_visit_are_the_whole_herd(house):
    cows = herd_of(house, 4)
    assert counted(done(house, cows[:3])).whole_herd
    assert not counted(done(house, cows[:3], after=timedelta(days=60), reason=VisitReason.URGENT)).whole_herd


def test_visits_of_one_round_are_taken_together_and_not_set_against_each_other(house):
    cows = herd_of(house, 4)
    done(house, cows[:2])
    found = counted(done(house, cows[2:], after=timedelta(days=2)))
    assert found.whole_herd
    assert found.round_note == "With the other visits since 3 Mar 2026: 4 of 4 cows seen."
    assert found.compared == ()


def test_a_visit_by_need_is_compared_with_none(house):
    cows = herd_of(house, 4)
    done(house, cows, after=-timedelta(days=90))
    found = counted(done(house, cows[:1], reason=VisitReason.RECHECK))
    assert (found.compared, [f.cows for f in found.findings]) == ((), [1])


def test_a_lesion_seen_only_before_is_told_with_a_nought(house):
    cows = herd_of(house, 4)
    done(house, cows, after=-timedelta(days=90))
    (finding,) = counted(done(house, cows, sick=0)).findings
    assert (finding.cows, finding.before) == (0, (1,))


def test_later_visits_count_for_nothing(house):
    cows = herd_of(house, 4)
    visit = done(house, cows[:1])
    done(house, cows, after=timedelta(days=30))
    assert counted_before(visit, date(2026, 3, 3)).compared == ()
