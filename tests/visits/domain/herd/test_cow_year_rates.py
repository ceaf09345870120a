from datetime import date, timedelta

import pytest

from visits.domain.feet import Claw, Foot
from visits.domain.herd.case_history import cases_of
from visits.domain.herd.cow_year_rates import (
    counted_cases,
    cow_year_rate,
    cow_year_rates,
    watched_from,
)
from visits.domain.herd.facts import Calved, CowLife, CowSeen, FootSeen, HerdFacts, LesionSeen
from visits.domain.herd.intervals import poisson_exact
from visits.domain.herd.lesion_families import LesionFamily
from visits.domain.lesions import LesionCode
from visits.domain.visit_states import VisitReason

FIRST = date(2024, 1, 10)
LONG_AGO = date(2022, 1, 1)
YEAR = (date(2025, 1, 1), date(2026, 1, 1))


def looked(cow, day, *codes, foot=Foot.LEFT_HIND):
    lesions = tuple(LesionSeen(LesionCode(code), Claw.LATERAL) for code in codes)
    return CowSeen(cow, day, day.toordinal(), VisitReason.ROUTINE, (FootSeen(foot, lesions),))


def herd(*seen, lives=None, size=4):
    lives = lives or [CowLife(cow, str(cow), LONG_AGO) for cow in range(4)]
    ordered = tuple(sorted(seen, key=lambda look: look.day))
    return HerdFacts(date(2026, 3, 1), tuple(lives), ordered, herd_size=size)


def everyone_clean():
    return [looked(cow, FIRST) for cow in range(4)]


def rate(facts, what=None, start=YEAR[0], end=YEAR[1]):
    return cow_year_rate(facts, cases_of(facts), what, start, end)


def test_new_cases_are_told_per_100_cow_years_with_the_exact_interval():
    facts = herd(*everyone_clean(), looked(1, date(2025, 3, 1), "SU"), looked(2, date(2025, 5, 1), "WLA"))
    found = rate(facts)
    years = 4 * 365 / 365.25
    assert (found.cases, found.cow_years) == (2, pytest.approx(years))
    assert found.per_100 == pytest.approx(200 / years)
    wanted = poisson_exact(2).times(100 / years)
    assert (found.interval.low, found.interval.high) == pytest.approx((wanted.low, wanted.high))
    assert (found.start, found.end, found.is_complete) == (*YEAR, True)


def test_looks_at_one_lesion_are_one_case():
    days = [date(2025, 3, 1), date(2025, 3, 29), date(2025, 4, 26)]
    facts = herd(*everyone_clean(), *(looked(1, day, "SU") for day in days))
    assert rate(facts).cases == 1


def test_what_the_first_round_found_is_no_new_case_and_counting_starts_after_it():
    facts = herd(*(looked(cow, FIRST + timedelta(days=cow), "SU") for cow in range(4)))
    found = rate(facts, start=date(2023, 7, 1), end=date(2024, 7, 1))
    assert watched_from(facts) == found.start == date(2024, 1, 11)
    assert found.cases == 0
    assert found.cow_years == pytest.approx(4 * 172 / 365.25)


def test_a_first_look_soon_after_does_not_tell_new_from_old_but_a_late_one_does():
    soon, late = date(2024, 6, 1), date(2025, 6, 1)
    facts = herd(looked(0, FIRST), looked(1, soon, "SU"), looked(2, late, "SU"))
    assert [case.first for case in counted_cases(facts, cases_of(facts))] == [late]


def test_a_heifer_that_came_since_can_only_have_a_new_case():
    calved = date(2024, 4, 1)
    heifer = CowLife(9, "9", calved, calvings=(Calved(calved, 1),))
    facts = herd(*everyone_clean(), looked(9, date(2024, 6, 1), "SU"), lives=[*(herd().cows), heifer], size=5)
    assert [case.cow for case in counted_cases(facts, cases_of(facts))] == [9]


def test_a_cow_of_whom_nothing_is_known_before_her_first_look_has_no_new_case_there():
    day = date(2025, 6, 1)
    stranger = CowLife(9, "9", day)
    facts = herd(*everyone_clean(), looked(9, day, "SU"), lives=[*(herd().cows), stranger])
    assert counted_cases(facts, cases_of(facts)) == ()


def test_a_cow_that_is_not_on_the_list_has_no_time_and_so_no_case():
    facts = herd(*everyone_clean(), looked(77, date(2025, 6, 1), "SU"))
    assert counted_cases(facts, cases_of(facts)) == ()


def test_cows_that_left_count_with_the_time_they_were_there():
    lives = [CowLife(0, "0", LONG_AGO), CowLife(1, "1", LONG_AGO, left_on=date(2025, 7, 2))]
    facts = herd(looked(0, FIRST), looked(1, FIRST), lives=lives, size=2)
    assert rate(facts).cow_years == pytest.approx((365 + 182) / 365.25)


def test_without_cow_time_there_is_no_rate():
    for facts in (herd(), herd(looked(0, date(2026, 2, 1)))):
        found = rate(facts)
        assert (found.cases, found.cow_years, found.per_100, found.interval) == (0, 0, None, None)
        assert not found.is_complete


@pytest.mark.parametrize(("size", "complete"), [(4, True), (5, True), (6, False), (0, False)])
def test_a_herd_whose_cows_are_not_on_the_list_is_told_as_incomplete(size, complete):
    assert rate(herd(*everyone_clean(), size=size)).is_complete is complete


def test_the_rates_come_with_the_whole_first_then_families_and_the_frequent_lesion():
    facts = herd(
        *everyone_clean(),
        looked(1, date(2025, 3, 1), "SU"),
        looked(2, date(2025, 5, 1), "WLA"),
        looked(3, date(2025, 5, 1), "TU", "HHE"),
    )
    found = cow_year_rates(facts, cases_of(facts), *YEAR, heel_erosion=LesionFamily.OTHER)
    assert [(each.code, each.cases) for each in found] == [
        (None, 4),
        (LesionFamily.INFECTIOUS, 0),
        (LesionFamily.CLAW_HORN, 3),
        (LesionFamily.OTHER, 1),
        (LesionCode.U, 2),
        (LesionCode.HHE, 1),
        (LesionCode.WL, 1),
    ]
    assert found[4].what == "ulcer"


def test_a_kind_is_refused_because_its_cases_stand_under_the_parent():
    with pytest.raises(ValueError, match="cases of SU are gathered as U"):
        rate(herd(*everyone_clean()), LesionCode.SU)
