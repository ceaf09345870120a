from visits.domain.planning.reasons.plan_mark import plan_mark

PLAN = {
    "cost": {"total": 5},
    "seconds": 9.9,
    "shifts": [{"id": "mon", "stops": [{"job": "a", "start": "2026-03-02T09:00:00+00:00"}]}],
    "left_out": [{"job": "b", "reason": "no-room", "detail": "."}],
}


def test_only_who_is_where_and_when_makes_the_mark():
    assert plan_mark(PLAN) == plan_mark(PLAN | {"seconds": 1, "cost": {"total": 6}})
    assert len(plan_mark(PLAN)) == 16


def test_another_hour_another_shift_or_another_job_left_out_makes_another():
    stop = {"job": "a", "start": "2026-03-02T09:01:00+00:00"}
    others = [
        PLAN | {"shifts": [{"id": "mon", "stops": [stop]}]},
        PLAN | {"shifts": [PLAN["shifts"][0] | {"id": "tue"}]},
        PLAN | {"left_out": []},
    ]
    assert len({plan_mark(each) for each in (PLAN, *others)}) == 4
