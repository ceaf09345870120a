from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from visits.domain.draft_count import count_with, count_without
from visits.domain.draft_order import DraftCandidate, Need, draft_order
from visits.domain.draft_rules import DraftRules
from visits.domain.mobility import MobilityScale

DAY = date(2026, 3, 2)
RECENT = DAY - timedelta(days=20)
UK, SPRECHER = MobilityScale.UK, MobilityScale.SPRECHER


def _cow(number, **said):
    return DraftCandidate(int(number), number, **{"last_trim": RECENT, **said})


def _lame(number, score=2, scale=UK, **said):
    return _cow(number, scale=scale, score=score, score_words=f"{scale.label}: {score}", **said)


def _due(number, until=DAY, **said):
    return _cow(number, due_words=("left hind: wooden block",), due_until=until, **said)


def _asked(number, why="long toes", **said):
    return _cow(number, is_asked=True, asked_words=(why,), **said)


def _in(days):
    return DAY + timedelta(days=days)


def _numbers(order):
    return [line.number for line in order.present]


def _left(order):
    return [line.number for line in order.left_for_next]


def test_cows_come_in_order_of_need():
    cows = [
        _cow("7", last_trim=_in(-200)),
        _cow("6", calved_on=_in(-80), last_trim=_in(-120)),
        _cow("5", is_heifer=True, calving_due=_in(40)),
        _cow("4", dry_off_due=_in(5)),
        _asked("3"),
        _due("2"),
        _lame("1"),
        _cow("0"),
    ]
    order = draft_order(cows, DAY, 10)
    assert _numbers(order) == ["1", "2", "3", "4", "5", "6", "7"]
    assert [line.need for line in order.present] == list(Need)


def test_the_very_lame_come_before_the_lame_whatever_the_score_sheet():
    cows = [_lame("1", 2), _lame("2", 4, SPRECHER), _lame("3", 3), _lame("4", 2, SPRECHER)]
    order = draft_order(cows, DAY, 10)
    assert _numbers(order) == ["2", "3", "1"], "2 on the sheet of 1 to 5 is not lame"


def test_of_two_that_are_due_the_one_due_longer_comes_first():
    order = draft_order([_due("1", _in(3)), _due("2", _in(-9))], DAY, 10)
    assert _numbers(order) == ["2", "1"]


def test_the_list_is_cut_at_the_expected_count_and_the_rest_waits_for_next_time():
    order = draft_order([_lame(str(n)) for n in (12, 3, 100)], DAY, 2)
    assert _numbers(order) == ["3", "12"]
    assert _left(order) == ["100"]


def test_what_was_promised_comes_even_below_the_cut():
    cows = [_lame("1"), _lame("2"), _due("3"), _asked("4"), _cow("5", dry_off_due=_in(5))]
    order = draft_order(cows, DAY, 1)
    assert _numbers(order) == ["3", "4"]
    assert _left(order) == ["1", "2", "5"]


def test_the_places_that_are_left_go_to_lame_cows_first_and_these_are_told_first():
    cows = [_lame("1"), _lame("2"), _due("3"), _asked("4"), _cow("5", dry_off_due=_in(5))]
    assert _numbers(draft_order(cows, DAY, 3)) == ["1", "3", "4"]
    assert _numbers(draft_order(cows, DAY, 4)) == ["1", "2", "3", "4"]


@settings(max_examples=examples(60))
@given(st.lists(st.tuples(st.booleans(), st.booleans(), st.booleans()), max_size=12), st.integers(1, 14))
def test_counting_with_the_list_changes_nothing_and_one_cow_more_is_one_cow_more(herd, count):
    cows = [
        _cow(
            str(n),
            scale=UK,
            score=2 if lame else 0,
            score_words="scored",
            is_asked=asked,
            dry_off_due=_in(5) if dries else None,
        )
        for n, (lame, asked, dries) in enumerate(herd)
    ]
    order = draft_order(cows, DAY, count)
    if order.present:
        again = draft_order(cows, DAY, max(count, len(order.present)))
        assert again == order
    more = draft_order([*cows, _asked("99")], DAY, count_with(count, order, 99))
    assert [line.number for line in more.present if line.cow_id != 99] == _numbers(order)
    for line in order.present:
        rest = [cow for cow in cows if cow.cow_id != line.cow_id]
        less = draft_order(rest, DAY, count_without(count, order, line.cow_id))
        kept = [other.number for other in order.present if other.cow_id != line.cow_id]
        assert set(kept) <= set(_numbers(less))
        if len(order.present) >= count > 1:
            assert _numbers(less) == kept


def test_what_another_visit_is_to_see_to_comes_if_a_place_is_left_and_before_the_routine():
    cows = [_due("1", due_elsewhere=True), _asked("2"), _cow("3", dry_off_due=_in(5))]
    assert _numbers(draft_order(cows, DAY, 1)) == ["2"]
    assert _numbers(draft_order(cows, DAY, 2)) == ["1", "2"]
    assert _left(draft_order(cows, DAY, 1)) == ["1", "3"]


@pytest.mark.parametrize(("ahead", "wanted"), [(2, False), (3, True), (10, True), (11, False), (0, False)])
def test_the_look_before_drying_off_is_three_to_ten_days_ahead(ahead, wanted):
    """AHDB trim-list article: 3 to 10 days before dry-off, not on the day."""
    assert bool(_numbers(draft_order([_cow("1", dry_off_due=_in(ahead))], DAY, 5))) is wanted


@pytest.mark.parametrize(("ahead", "wanted"), [(28, False), (29, True), (60, True), (61, False)])
def test_heifers_are_wanted_before_calving_but_not_in_the_last_four_weeks(ahead, wanted):
    cows = [_cow("1", is_heifer=True, calving_due=_in(ahead))]
    assert bool(_numbers(draft_order(cows, DAY, 5))) is wanted


@pytest.mark.parametrize(("since", "wanted"), [(59, False), (60, True), (100, True), (101, False)])
def test_cows_are_wanted_between_60_and_100_days_in_milk(since, wanted):
    """Griffiths 2018, Front Vet Sci 5:65."""
    cows = [_cow("1", calved_on=_in(-since), last_trim=_in(-since - 10))]
    assert bool(_numbers(draft_order(cows, DAY, 5))) is wanted


def test_a_cow_trimmed_well_after_calving_is_not_wanted_again_for_her_days_in_milk():
    cows = [_cow("1", calved_on=_in(-90), last_trim=_in(-50))]
    assert _numbers(draft_order(cows, DAY, 5)) == []


def test_a_farm_may_leave_out_the_rules_that_sources_disagree_on_but_not_what_presses():
    cows = [
        _cow("1", calved_on=_in(-80), last_trim=_in(-200)),
        _cow("2", is_heifer=True, calving_due=_in(40)),
        _cow("3", dry_off_due=_in(5)),
        _due("4"),
        _lame("5"),
        _asked("6"),
    ]
    rules = DraftRules(use_dry_off=False, use_heifers=False, use_milk_days=False, use_long_ago=False)
    assert _numbers(draft_order(cows, DAY, 5, rules)) == ["5", "4", "6"]


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ({"calving_due": _in(27)}, "calves in 27 days: ask the vet first"),
        ({"calving_due": _in(1)}, "calves in 1 day: ask the vet first"),
        ({"calving_due": _in(28)}, ""),
        ({"dry_off_due": DAY}, "dry-off is that day: not on the same day"),
    ],
)
def test_a_lame_cow_near_calving_or_on_her_dry_off_day_comes_with_a_warning(said, words):
    """Less than 28 days to calving: OR of abortion 2.4 (Thomsen 2020, last four weeks)."""
    (line,) = draft_order([_lame("1", **said)], DAY, 5).present
    assert line.warning == words


def test_a_cow_wanted_for_routine_waits_when_calving_is_less_than_four_weeks_off():
    order = draft_order([_cow("1", last_trim=_in(-300), calving_due=_in(10))], DAY, 5)
    assert order.present == ()
    assert "calves in 10 days" in order.left_for_next[0].warning


def test_a_cow_that_waits_takes_no_place_from_the_next():
    cows = [_cow("1", last_trim=_in(-300), calving_due=_in(10)), _cow("2", last_trim=_in(-200))]
    assert _numbers(draft_order(cows, DAY, 1)) == ["2"]


def test_the_cow_longest_without_a_trim_comes_first_among_those():
    cows = [_cow("1", last_trim=_in(-160)), _cow("2", last_trim=_in(-400)), _cow("3", last_trim=_in(-200))]
    assert _numbers(draft_order(cows, DAY, 2)) == ["2", "3"]


def test_a_cow_without_a_trim_on_file_counts_from_the_day_since_when_she_is_known():
    cows = [
        _cow("1", last_trim=_in(-400)),
        _cow("2", last_trim=None, known_since=_in(-500)),
        _cow("3", last_trim=None, known_since=_in(-149)),
        _cow("4", last_trim=None),
        _cow("5", last_trim=None, known_since=_in(-500), is_heifer=True),
    ]
    order = draft_order(cows, DAY, 5)
    assert _numbers(order) == ["2", "1"]
    assert order.present[0].why == "no trim known since 18 Oct 2024"


def test_every_reason_of_a_cow_is_told_and_her_score_with_its_sheet():
    (line,) = draft_order([_lame("1", dry_off_due=_in(4))], DAY, 5).present
    assert line.why == "lame, UK 0 to 3: 2; dry-off in 4 days"
    (line,) = draft_order([_asked("1", scale=UK, score=1, score_words="UK 0 to 3: 1")], DAY, 5).present
    assert line.reasons == ("UK 0 to 3: 1", "long toes")


def test_what_was_said_when_she_was_asked_for_is_not_said_again():
    asked = _due("1", is_asked=True, asked_words=("re-check, left hind: wooden block",))
    (line,) = draft_order([asked], DAY, 5).present
    assert (line.need, line.why) == (Need.DUE, "re-check, left hind: wooden block")


def test_lame_and_re_checked_cows_are_counted():
    order = draft_order([_lame("1"), _due("2"), _asked("3"), _cow("4", dry_off_due=_in(4))], DAY, 5)
    assert order.corrective == 2
    assert order.has(3)
    assert not order.has(9)


@pytest.mark.parametrize(("need", "presses"), [(Need.LAME, True), (Need.ASKED, True), (Need.DRY_OFF, False)])
def test_only_what_presses_comes_near_calving(need, presses):
    assert need.presses is presses
