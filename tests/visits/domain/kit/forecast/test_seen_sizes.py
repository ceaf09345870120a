from decimal import Decimal

import pytest

from tests.visits.domain.kit.forecast.made_models import RECHECK, ROUTINE, URGENT, made
from visits.domain.kit.forecast.first_guess import WORTH_VISITS, FirstGuess, first_guess
from visits.domain.kit.forecast.seen_sizes import seen_sizes
from visits.domain.kit.stock_kinds import UsePer
from visits.domain.kit.use_rules import Recipe

NO_RECIPE = first_guess([])
GLUE = first_guess([Recipe(UsePer.BLOCK, Decimal(40))])


def test_sizes_are_counted_by_cows_and_by_how_much_their_visit_weighs():
    seen = seen_sizes([made([40, 40, 80]), made([40])], [1.0, 0.5])
    assert dict(seen.sizes) == {Decimal(40): 2.5, Decimal(80): 1.0}
    assert seen.users == (3, 1)
    assert dict(seen.used[ROUTINE]) == {Decimal(160): 1.0, Decimal(40): 0.5}


def test_what_is_beyond_the_cows_is_the_visit_s():
    whole = made([40, 40])
    wash = made(280, sizes=whole.sizes, reason=RECHECK)
    less = made(60, sizes=whole.sizes, reason=RECHECK)
    seen = seen_sizes([whole, wash, less], [1.0, 1.0, 1.0])
    assert dict(seen.parts[ROUTINE]) == {Decimal(0): 1.0}
    assert dict(seen.parts[RECHECK]) == {Decimal(200): 1.0, Decimal(-20): 1.0}


def test_a_visit_called_off_says_nothing_of_what_visits_use():
    seen = seen_sizes([made(0, routine=0, is_made=False)], [1.0])
    assert not seen.parts[ROUTINE]
    assert not seen.used[ROUTINE]


def test_a_visit_of_which_nothing_was_written_down_is_no_visit_without_a_wash_down():
    seen = seen_sizes([made(0, routine=0, sizes=()), made(200, routine=0, sizes=())], [1.0, 1.0])
    assert dict(seen.parts[ROUTINE]) == {Decimal(200): 1.0}


def test_of_a_sum_alone_the_usual_measure_is_taken_for_a_cow_s():
    past = [made(120), made(40), made(80), made(0), made(60, routine=1)]
    seen = seen_sizes(past, [1.0] * 5)
    assert seen.users == (6, 2, 4, 0, 1)
    assert dict(seen.sizes) == {Decimal(20): 13.0}
    assert seen.parts[ROUTINE] == {Decimal(0): 4.0, Decimal(40): 1.0}


def test_what_is_guessed_counts_as_one_cow_beside_those_seen():
    seen = seen_sizes([made([80, 80, 80])], [1.0])
    assert seen.size_cells(GLUE, Decimal(40)).tolist() == [0, 0.25, 0.75]
    assert seen_sizes([], []).size_cells(GLUE, Decimal(40)).tolist() == [0, 1]
    assert seen_sizes([], []).size_cells(NO_RECIPE, Decimal(1)).tolist() == [0, 1]


def test_what_visits_use_as_a_whole_starts_from_the_recipe_and_is_told_by_reason():
    washed = FirstGuess(NO_RECIPE.chances, (), Decimal(200))
    none = seen_sizes([], []).visit_cells(washed, Decimal(200))
    assert all((cells.first, cells.chances.tolist()) == (1, [1.0]) for cells in none.values())
    past = [made(200, sizes=())] * 95 + [made(0, sizes=(), reason=URGENT)] * 95
    told = seen_sizes(past, [1.0] * 190).visit_cells(NO_RECIPE, Decimal(200))
    assert (told[ROUTINE].chances @ [0, 1], told[URGENT].chances @ [0, 1]) == pytest.approx(
        (0.97, 0.03), abs=0.01
    )
    assert told[RECHECK].chances @ [0, 1] == pytest.approx(95 / (190 + WORTH_VISITS))


def test_amounts_are_those_seen_and_only_without_any_those_guessed():
    assert dict(seen_sizes([made([80])], [1.0]).amounts(GLUE)) == {Decimal(80): 1.0}
    assert Decimal(40) in seen_sizes([made([])], [1.0]).amounts(GLUE)
