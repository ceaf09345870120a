from datetime import date

import pytest

from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import Calved, CowLife, CowSeen, FootSeen, HerdFacts, LesionSeen, a_year_before
from visits.domain.lesions import LesionCode
from visits.domain.visit_states import VisitReason

START, END = date(2025, 1, 1), date(2026, 1, 1)


def life(**fields):
    return CowLife(**{"cow": 1, "number": "1", "first_day": date(2024, 6, 1), **fields})


@pytest.mark.parametrize(
    ("fields", "days"),
    [
        ({}, 365),
        ({"first_day": date(2025, 12, 31)}, 1),
        ({"left_on": date(2025, 1, 11)}, 10),
        ({"left_on": date(2024, 12, 1)}, 0),
        ({"first_day": date(2026, 3, 1)}, 0),
    ],
)
def test_days_in_the_herd_are_those_between_coming_and_leaving(fields, days):
    assert life(**fields).days_between(START, END) == days


def test_a_cow_that_left_that_day_is_not_there_any_more():
    gone = life(left_on=date(2025, 5, 1))
    assert gone.is_there(date(2025, 4, 30))
    assert not gone.is_there(date(2025, 5, 1))


def test_her_lactation_on_a_day_is_that_of_the_calving_before():
    cow = life(calvings=(Calved(date(2024, 6, 1), 1), Calved(date(2025, 7, 1), 2)))
    assert cow.calving_before(date(2024, 5, 31)) is None
    assert cow.calving_before(date(2025, 6, 30)).lactation == 1
    assert cow.calving_before(date(2025, 7, 1)).lactation == 2


def test_a_herds_cow_years_and_size_are_the_sum_of_its_cows():
    herd = HerdFacts(END, (life(), life(cow=2, left_on=date(2025, 1, 11))), ())
    assert herd.cow_years(START, END) == pytest.approx(375 / 365.25)
    assert (herd.herd_on(date(2025, 1, 5)), herd.herd_on(date(2025, 2, 5))) == (2, 1)
    assert herd.by_cow[2].number == "1"
    assert herd.first_day is None


def test_cows_seen_are_found_by_their_day():
    feet = (
        FootSeen(Foot.LEFT_HIND, (LesionSeen(LesionCode.SU, Claw.LATERAL, 4),)),
        FootSeen(Foot.RIGHT_HIND, (LesionSeen(LesionCode.DD, Claw.SKIN, 10),)),
    )
    seen = CowSeen(1, date(2025, 3, 1), 7, VisitReason.ROUTINE, feet)
    herd = HerdFacts(END, (life(),), (seen,))
    assert list(herd.seen_between(START, END)) == [seen]
    assert list(herd.seen_between(START, date(2025, 3, 1))) == []
    assert herd.days_of_work == (date(2025, 3, 1),)


def test_a_year_before_the_leap_day_is_the_28th():
    assert a_year_before(date(2028, 2, 29)) == date(2027, 2, 28)
    assert a_year_before(date(2026, 5, 4)) == date(2025, 5, 4)
