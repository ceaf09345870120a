"""The planner thinks in a worker's process; the page, in another, tells it to stop."""

from datetime import timedelta

import pytest
from django.utils import timezone

from tests.factories import make_farm, make_house, wanted
from tests.services.test_job_worker import wait_for
from tests.services.worker import worker
from trimops.celery import app
from trimops.kernel.clock import monday_of
from visits.domain.planning.audit import audit_week
from visits.models import WeekPlan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.stop_thinking import stop_thinking

pytestmark = pytest.mark.services


def test_it_is_seen_thinking_from_outside_and_stops_with_the_best_so_far(
    transactional_db, tmp_path, monkeypatch
):
    monkeypatch.setenv("TRIMOPS_PLAN_SECONDS", "600")
    house, now = make_house(), timezone.now()
    monday = monday_of(now.date()) + timedelta(days=7)
    for n in range(12):
        farm = make_farm(house.business, f"Farm {n}", by=house.owner, latitude=54 + n / 50)
        wanted(farm, due_from=monday, due_until=monday + timedelta(days=6))

    def stored():
        return WeekPlan.objects.within(house.scope).get()

    with worker(app, tmp_path / "worker.log"):
        ask_week_plan(business=house.business, monday=monday, at=now, by=house.owner)
        wait_for(lambda: stored().cost_history, seconds=120)
        assert (stored().state, stored().plan) == ("thinking", None)
        stop_thinking(week_plan=stored(), at=timezone.now())
        wait_for(lambda: stored().state != "thinking", seconds=60)

    plan = stored()
    assert (plan.state, plan.failure) == ("proposed", "")
    assert audit_week(plan.problem, plan.plan) == []
