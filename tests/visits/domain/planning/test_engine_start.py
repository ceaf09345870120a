from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.engine_model import engine_model
from visits.domain.planning.engine_nodes import AFTER, BEFORE, MEAL
from visits.domain.planning.engine_start import start_nodes

MEAL_TIME = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("14:00")}


def kinds(problem, orders):
    model = engine_model(board(problem))
    named = {at: node.kind if node.job is None else node.job for at, node in enumerate(model.nodes)}
    return [(shift, [named[node] for node in own]) for shift, own in start_nodes(model, orders)]


def test_a_round_calls_at_the_pattern_it_is_timed_in():
    problem = week(job("a", windows=[window("07:00", "07:30"), window("14:00", "15:00")]))
    model = engine_model(board(problem))
    assert start_nodes(model, ((0,),)) == [(0, [0])]


def test_the_meal_stands_where_it_is_eaten():
    day = shift(meal=MEAL_TIME)
    assert kinds(week(job("a", windows=[window("13:00", "15:00")]), shifts=[day]), ((0,),)) == [
        (0, [BEFORE, 0])
    ]
    assert kinds(week(job("a", windows=[window("10:00", "12:00")]), shifts=[day]), ((0,),)) == [
        (0, [0, AFTER])
    ]
    both = [job("a", windows=[window("09:00", "12:10")], minutes=190)]
    both += [job("b", windows=[window("12:10", "15:00")], minutes=120)]
    assert kinds(week(*both, shifts=[day]), ((0, 1),)) == [(0, [0, MEAL, 1])]


def test_an_unused_shift_with_a_meal_stays_at_home_and_one_without_is_not_listed():
    days = [shift(meal=MEAL_TIME), shift(id="m2")]
    assert kinds(week(job("a"), shifts=days), ((), ())) == [(0, [BEFORE])]
