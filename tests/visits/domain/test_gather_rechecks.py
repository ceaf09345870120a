from datetime import date, timedelta
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from visits.domain.gather_rechecks import OpenRecheck, gather_rechecks

TODAY = date(2026, 3, 2)


def _open(number, first, last, farm=1):
    return OpenRecheck(number, farm, TODAY + timedelta(days=first), TODAY + timedelta(days=last))


def _days(group):
    return group.ids, (group.due_from - TODAY).days, (group.due_until - TODAY).days


def test_cows_whose_days_meet_share_one_visit_on_the_days_that_fit_all():
    (group,) = gather_rechecks([_open(1, 21, 28), _open(2, 25, 32), _open(3, 14, 26)], TODAY)
    assert _days(group) == ((3, 1, 2), 25, 26)


def test_cows_whose_days_do_not_meet_get_a_visit_each():
    groups = gather_rechecks([_open(1, 21, 28), _open(2, 3, 7)], TODAY)
    assert [_days(group) for group in groups] == [((2,), 3, 7), ((1,), 21, 28)]


def test_what_is_overdue_is_due_today():
    (group,) = gather_rechecks([_open(1, -20, -5), _open(2, -3, 9)], TODAY)
    assert _days(group) == ((1, 2), 0, 0)


def test_farms_are_never_mixed():
    groups = gather_rechecks([_open(1, 3, 7, farm=1), _open(2, 3, 7, farm=2)], TODAY)
    assert [(group.farm_id, group.ids) for group in groups] == [(1, (1,)), (2, (2,))]


def test_nothing_open_is_no_visit():
    assert gather_rechecks([], TODAY) == []


spans = st.tuples(st.integers(-5, 12), st.integers(0, 6))


@settings(max_examples=examples(200), deadline=None)
@given(st.lists(spans, max_size=7))
def test_every_cow_is_in_one_group_that_fits_her_and_no_fewer_groups_would_do(found):
    rechecks = [_open(number, first, first + length) for number, (first, length) in enumerate(found)]
    groups = gather_rechecks(rechecks, TODAY)
    assert sorted(number for group in groups for number in group.ids) == list(range(len(found)))
    by_id = {item.id: item for item in rechecks}
    for group in groups:
        assert TODAY <= group.due_from <= group.due_until
        for number in group.ids:
            assert by_id[number].due_from <= group.due_from
            assert group.due_until <= max(by_id[number].due_until, TODAY)
    assert len(groups) == _most_apart(rechecks)


def _most_apart(rechecks) -> int:
    """The largest set of ranges no two of which meet, by trying every set: the least number of visits (duality)."""
    ranges = [(max(item.due_from, TODAY), max(item.due_until, TODAY)) for item in rechecks]
    best = 0
    for chosen in range(1 << len(ranges)):
        picked = sorted(span for bit, span in enumerate(ranges) if chosen >> bit & 1)
        if all(a[1] < b[0] for a, b in pairwise(picked)):
            best = max(best, len(picked))
    return best
