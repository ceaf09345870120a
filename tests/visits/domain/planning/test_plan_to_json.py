from tests.visits.domain.planning.hand_made import job, planned, week


def test_the_document_has_the_keys_of_the_contract_and_instants_with_offset():
    plan = planned(week(job("a", minutes=60.005, due="2026-03-01")))
    assert list(plan) == ["format", "engine", "seed", "seconds", "cost", "bound", "shifts", "left_out"]
    (day,) = plan["shifts"]
    assert list(day) == ["id", "leave", "return", "work_minutes", "km", "cows", "meal", "stops"]
    assert day["stops"] == [
        {
            "job": "a",
            "arrive": "2026-03-02T07:20:00+00:00",
            "start": "2026-03-02T07:20:00+00:00",
            "finish": "2026-03-02T08:20:00.300+00:00",
            "travel_minutes": 20,
            "km": 15,
            "days_late": 1,
        }
    ]
    assert (plan["format"], day["meal"], day["return"]) == (
        "trimops-week-plan/1",
        None,
        "2026-03-02T08:40:00.300+00:00",
    )
