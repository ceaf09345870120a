import pytest

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.swift.machine_weeks import at_the_desk, empty_orders, present_week
from visits.domain.planning.swift.machine_desk import chance, keep_best, pick, price, undo
from visits.domain.planning.swift.machine_search import go_on, load


def test_the_dice_repeat_by_seed_and_stay_in_their_range():
    week = made_up_week(12, 1, 1)
    (*_, one), (*_, two), (*_, other) = (at_the_desk(week, seed) for seed in (4, 4, 5))
    rolls = [chance(one.luck) for _ in range(2000)]
    assert rolls == [chance(two.luck) for _ in range(2000)]
    assert rolls[:5] != [chance(other.luck) for _ in range(5)]
    assert min(rolls) >= 0
    assert max(rolls) < 1
    assert sum(rolls) / 2000 == pytest.approx(0.5, abs=0.03)
    assert {pick(one.luck, 3) for _ in range(100)} == {0, 1, 2}


def test_an_undone_step_leaves_the_week_as_it_was():
    board, arrays, desk = at_the_desk(made_up_week(24, 2, 2))
    load(arrays, desk, *empty_orders(board))
    go_on(arrays, desk, 30, 1000.0, 1000.0)
    before, cost, homes = present_week(desk), price(arrays, desk), desk.home.copy()
    for _ in range(50):
        desk.money[0] = -1e18  # because: no step is then good enough to be kept
        go_on(arrays, desk, 1, 1e-6, 1e-6)
        assert present_week(desk) == before
        assert price(arrays, desk) == pytest.approx(cost)
        assert (desk.home == homes).all()
    undo(desk)
    assert present_week(desk) == before


def test_the_best_is_kept_apart_from_the_present():
    board, arrays, desk = at_the_desk(made_up_week(24, 2, 2))
    load(arrays, desk, *empty_orders(board))
    go_on(arrays, desk, 60, 50.0, 50.0)
    best = desk.money[1]
    go_on(arrays, desk, 60, 1e6, 1e6)
    assert desk.money[1] <= best
    assert desk.money[0] >= desk.money[1]
    keep_best(desk)
    assert desk.money[1] == desk.money[0]
