from tests.bench.planning.bench_weeks import compared


def test_on_a_made_week_the_planner_is_cheaper_than_both_ways_of_the_head():
    (ours, _), (due, _), (area, _) = compared(12, 1, 101, seconds=2)
    assert ours < due
    assert ours < area
