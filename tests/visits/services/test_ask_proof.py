import pytest

from tests.factories import wanted
from trimops.jobs import Job
from visits.services import ask_proof as asking
from visits.services.ask_proof import NotToBeProven, ask_proof


def test_the_proof_is_left_to_a_job(house, proposed, monkeypatch):
    wanted(house.farm)
    plan, begun = proposed(), []
    monkeypatch.setattr(
        asking, "enqueue", lambda job, business_id, **ids: begun.append((job, business_id, ids))
    )
    ask_proof(week_plan=plan)
    assert begun == [(Job.PROVE_WEEK, house.business.pk, {"week_plan_id": plan.pk})]


def test_what_cannot_be_proven_says_why(house, proposed, monkeypatch):
    wanted(house.farm)
    plan = proposed()
    monkeypatch.setattr(asking, "MOST_JOBS", 0)
    with pytest.raises(NotToBeProven, match="too large"):
        ask_proof(week_plan=plan)
    plan.plan = None
    with pytest.raises(NotToBeProven, match="plan the week first"):
        ask_proof(week_plan=plan)
