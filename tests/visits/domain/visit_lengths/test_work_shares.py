from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.visits.domain.visit_lengths.made_history import BROUGHT, made_visit
from visits.domain.visit_lengths.finished_visit import Asked, Work
from visits.domain.visit_lengths.work_shares import WorkShares, learn_shares, work_ahead


def asked(cows=20, corrective=2, farm=1):
    return Asked(farm, 1, BROUGHT, cows, corrective)


def test_before_anything_was_seen_the_work_is_what_was_asked():
    ahead = work_ahead(WorkShares(), asked())
    assert ahead.work == Work(18, 2, 0, 0)
    assert ahead.corrective_variance == 0


def with_work(functional, corrective, check=0.0, blocks=0.0, farm=1, cows=20, named=0):
    return replace(
        made_visit(farm, cows=cows, corrective=named), work=Work(functional, corrective, check, blocks)
    )


def test_cows_that_turn_out_lame_are_expected_again():
    shares = learn_shares([with_work(14, 6, blocks=3) for _ in range(30)])
    assert shares.rest_corrective == pytest.approx(0.3, abs=0.02)
    assert shares.blocks == pytest.approx(0.5, abs=0.06)
    work = work_ahead(shares, asked(20, 0)).work
    assert (work.corrective, work.blocks) == (pytest.approx(6, abs=0.4), pytest.approx(3, abs=0.4))


def test_a_farm_with_many_lame_cows_is_told_from_one_with_few():
    visits = [with_work(19, 1, farm=farm) for farm in range(2, 8) for _ in range(10)]
    shares = learn_shares([*visits, *(with_work(10, 10) for _ in range(10))])
    assert shares.rest_at(1) > 0.4
    assert shares.rest_at(2) < 0.1
    assert shares.rest_at(99) == shares.rest_corrective


def test_named_cows_that_are_only_looked_at_are_learned_from_visits_where_all_are_named():
    shares = learn_shares([with_work(0, 1, 3, cows=4, named=4) for _ in range(60)])
    assert shares.named.corrective == pytest.approx(0.25, abs=0.07)
    assert shares.named.check == pytest.approx(0.75, abs=0.07)


def test_cows_that_do_not_come_are_expected_not_to_come():
    shares = learn_shares([with_work(16, 0) for _ in range(60)])
    assert work_ahead(shares, asked(20, 0)).work.cows == pytest.approx(16, abs=0.4)


def test_more_lame_than_cows_is_refused():
    with pytest.raises(ValueError, match="cannot be"):
        work_ahead(WorkShares(), asked(2, 3))


visits = st.lists(
    st.tuples(st.integers(1, 40), st.integers(0, 10), st.integers(0, 10), st.integers(0, 5)), max_size=20
)


@given(made=visits, cows=st.integers(1, 60), lame=st.integers(0, 60))
def test_whatever_was_seen_the_work_ahead_adds_up(made, cows, lame):
    history = [with_work(f, c, k, b, cows=f + c + k, named=min(c, 3)) for f, c, k, b in made]
    shares = learn_shares(history)
    ahead = work_ahead(shares, asked(cows, min(lame, cows)))
    parts = (ahead.work.functional, ahead.work.corrective, ahead.work.check, ahead.work.blocks)
    assert min(parts) >= -1e-9
    assert ahead.work.cows == pytest.approx(cows * shares.turn_out)
    assert ahead.corrective_variance >= 0
