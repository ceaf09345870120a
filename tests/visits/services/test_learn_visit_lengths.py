from datetime import UTC, datetime, timedelta

import pytest
from django.utils import timezone

from tests.factories import make_farm, make_house
from tests.visits.past_visits import make_past
from trimops.kernel.scope import Scope
from visits.domain.visit_lengths.learn_lengths import FEWEST_VISITS
from visits.models import LearnedLengths
from visits.selectors.expected_length import expected_at
from visits.services.learn_visit_lengths import learn_visit_lengths
from visits.services.set_figures import OwnFigures, set_figures
from visits.tasks import learn_lengths_task

NIGHT = datetime(2026, 4, 1, 1, 2, tzinfo=UTC)  # two o'clock in the summer time of the business


def rows(house):
    return LearnedLengths.objects.within(house.scope)


def test_what_the_visits_took_is_what_the_next_is_told(house):
    make_past(house, house.farm, 40, minutes=60, pace=14)
    before = expected_at(house.farm, head_count=12, corrective_count=0)
    row = learn_visit_lengths(business=house.business, at=NIGHT)
    after = expected_at(house.farm, head_count=12, corrective_count=0, van_id=house.van.pk)
    assert (row.visits, row.learned_at) == (40, NIGHT)
    assert not before.is_learned
    assert after.minutes == pytest.approx(60 + 14 * 12, abs=8)
    assert after.low < after.minutes < after.high
    assert (after.visits_here, after.visits_in_all) == (40, 40)


def test_a_farm_that_takes_longer_is_told_longer_than_its_neighbour(house):
    slow = make_farm(house.business, "High Croft", by=house.owner)
    make_past(house, house.farm, 30, pace=8)
    make_past(house, slow, 30, pace=15)
    learn_visit_lengths(business=house.business, at=NIGHT)
    usual, long = (expected_at(farm, head_count=16, corrective_count=0) for farm in (house.farm, slow))
    assert long.minutes - usual.minutes > 60


def test_with_too_few_visits_nothing_is_kept(house):
    make_past(house, house.farm, FEWEST_VISITS - 1)
    assert learn_visit_lengths(business=house.business, at=NIGHT) is None
    assert not rows(house).exists()


def test_a_second_night_with_the_same_history_changes_nothing(house):
    make_past(house, house.farm)
    first = learn_visit_lengths(business=house.business, at=NIGHT)
    again = learn_visit_lengths(business=house.business, at=NIGHT + timedelta(days=1))
    assert (again.rule, again.learned_at) == (first.rule, NIGHT)
    assert rows(house).count() == 1


def test_another_finished_visit_or_a_week_makes_it_learn_anew(house):
    make_past(house, house.farm)
    learn_visit_lengths(business=house.business, at=NIGHT)
    later = NIGHT + timedelta(days=8)
    assert learn_visit_lengths(business=house.business, at=later).learned_at == later
    make_past(house, make_farm(house.business, "High Croft", by=house.owner), 1)
    anew = learn_visit_lengths(business=house.business, at=later + timedelta(hours=1))
    assert (anew.visits, anew.learned_at) == (25, later + timedelta(hours=1))
    assert rows(house).count() == 1


def test_own_figures_are_what_learning_begins_from(house):
    make_past(house, house.farm, FEWEST_VISITS)
    usual = learn_visit_lengths(business=house.business, at=NIGHT).rule["mean"]
    set_figures(business=house.business, figures=OwnFigures({"pack_up": 60}, {}, {}))
    own = learn_visit_lengths(business=house.business, at=NIGHT).rule["mean"]
    pack_up = 2
    assert own[pack_up] > usual[pack_up]


def test_nothing_is_learned_from_another_business(house):
    other = make_house("Elm & Oak")
    make_past(other, other.farm)
    assert learn_visit_lengths(business=house.business, at=NIGHT) is None
    learn_visit_lengths(business=other.business, at=NIGHT)
    assert not LearnedLengths.objects.within(Scope(house.business.pk)).exists()


def test_the_nightly_job_learns_once_however_often_it_runs(house, monkeypatch):
    make_past(house, house.farm)
    monkeypatch.setattr(timezone, "now", lambda: NIGHT)
    for _ in range(2):
        learn_lengths_task(house.business.pk)
    assert rows(house).count() == 1
