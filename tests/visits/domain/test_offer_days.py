from datetime import date

import pytest

from visits.domain.mobility import MobilityScale
from visits.domain.offer_days import asked_until
from visits.domain.visit_states import VisitReason

MONDAY = date(2026, 3, 2)


@pytest.mark.parametrize(
    ("reason", "days"), [(VisitReason.URGENT, 2), (VisitReason.RECHECK, 7), (VisitReason.ROUTINE, 28)]
)
def test_the_days_go_by_why_the_visit_is_wanted(reason, days):
    assert (asked_until(reason, MONDAY) - MONDAY).days == days


@pytest.mark.parametrize(("score", "days"), [(0, 28), (1, 28), (2, 2), (3, 0)])
def test_a_lame_cow_hurries_even_a_routine_visit(score, days):
    assert (asked_until(VisitReason.ROUTINE, MONDAY, MobilityScale.UK, score) - MONDAY).days == days


def test_a_sound_cow_does_not_slow_an_urgent_visit():
    assert (asked_until(VisitReason.URGENT, MONDAY, MobilityScale.UK, 0) - MONDAY).days == 2
