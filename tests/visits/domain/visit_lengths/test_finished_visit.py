from dataclasses import replace
from datetime import timedelta

from tests.visits.domain.visit_lengths.made_history import FIRST_DAY, made_visit
from visits.domain.visit_lengths.finished_visit import MOST_VISITS, Work, usable


def test_a_start_pressed_by_mistake_and_a_finish_of_the_next_day_teach_nothing():
    kept = usable([made_visit(minutes=2), made_visit(minutes=200), made_visit(minutes=17 * 60)])
    assert [visit.minutes for visit in kept] == [200]


def test_a_visit_without_a_cow_teaches_nothing():
    assert usable([replace(made_visit(), work=Work(0, 0, 0, 0))]) == []


def test_visits_come_oldest_first_and_only_those_of_three_years():
    days = [FIRST_DAY, FIRST_DAY - timedelta(days=1100), FIRST_DAY - timedelta(days=700)]
    kept = usable([made_visit(day=day) for day in days])
    assert [visit.day for visit in kept] == [days[2], days[0]]


def test_the_newest_are_kept_where_there_are_very_many():
    kept = usable([made_visit(day=FIRST_DAY + timedelta(days=n // 4)) for n in range(MOST_VISITS + 40)])
    assert len(kept) == MOST_VISITS
    assert kept[0].day == FIRST_DAY + timedelta(days=10)


def test_the_cows_of_a_visit_are_those_of_every_kind():
    assert Work(3, 2, 1, 5).cows == 6
