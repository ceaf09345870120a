from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.engine_model import SCALE, engine_entries, engine_model
from visits.domain.planning.engine_nodes import AFTER, BEFORE

MEAL_TIME = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("14:00")}


def test_arcs_carry_the_road_and_the_lateness_of_the_day():
    made = board(week(job("a", due="2026-03-01", late_cost_per_day=7)))
    assert engine_model(made).arcs[0] == {(0, 1): ((150 + 7) * SCALE, 12_000), (1, 0): (150 * SCALE, 12_000)}


def test_hygiene_never_falls_along_an_arc():
    arcs = engine_model(board(week(job("a"), job("b", "far"), hygiene={"near": 1}))).arcs[0]
    assert ((1, 2) in arcs, (2, 1) in arcs) == (False, True)


def test_patterns_of_one_job_exclude_each_other_and_share_no_arc():
    model = engine_model(board(week(job("a", windows=[window("09:00", "10:30"), window("14:00", "15:00")]))))
    assert model.groups == [([0, 1], 0)]
    assert (1, 2) not in model.arcs[0]


def test_a_shift_with_a_meal_may_stay_at_home_for_nothing_and_pays_its_fixed_cost_on_the_way_out():
    model = engine_model(board(week(job("a"), shifts=[shift(meal=MEAL_TIME, cost_fixed=9)])))
    at = {node.kind: place + 1 for place, node in enumerate(model.nodes)}
    arcs = model.arcs[0]
    assert (arcs[0, at[BEFORE]], arcs[at[BEFORE], 0]) == ((0, 0), (0, 0))
    assert arcs[0, 1][0] == arcs[at[BEFORE], 1][0] == (150 + 9) * SCALE
    assert (0, at[AFTER]) not in arcs
    assert model.groups[1] == ([1, 2, 3], None)


def test_the_size_of_the_tables_is_known_before_they_are_built():
    made = board(week(job("a"), job("b", "far"), shifts=[shift(meal=MEAL_TIME), shift(id="tue")]))
    assert engine_entries(made) == len(engine_model(made).nodes) ** 2 * 2
