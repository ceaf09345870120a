from datetime import date, timedelta

import pytest

from visits.domain.draft_order import DraftCandidate, DraftRules, draft_order

DAY = date(2026, 3, 2)
RECENT = DAY - timedelta(days=20)


def _cow(number, **said):
    return DraftCandidate(int(number), number, **{"last_trim": RECENT, **said})


def _in(days):
    return DAY + timedelta(days=days)


def _numbers(order):
    return [line.number for line in order.present]


def test_cows_come_in_order_of_need():
    cows = [
        _cow("6", last_trim=_in(-200)),
        _cow("5", calved_on=_in(-80), last_trim=_in(-120)),
        _cow("4", is_heifer=True, calving_due=_in(40)),
        _cow("3", dry_off_due=_in(5)),
        _cow("2", recheck_words="block on left hind"),
        _cow("1", lame_words="scored 2 on Monday"),
        _cow("0"),
    ]
    assert _numbers(draft_order(cows, DAY, 10)) == ["1", "2", "3", "4", "5", "6"]


def test_the_list_is_cut_at_the_expected_count_and_the_rest_waits_for_next_time():
    cows = [_cow(str(n), lame_words="lame") for n in (12, 3, 100)]
    order = draft_order(cows, DAY, 2)
    assert _numbers(order) == ["3", "12"]
    assert [line.number for line in order.left_for_next] == ["100"]


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


def test_a_farm_may_leave_out_the_rules_that_sources_disagree_on():
    cows = [
        _cow("1", calved_on=_in(-80), last_trim=_in(-100)),
        _cow("2", is_heifer=True, calving_due=_in(40)),
    ]
    rules = DraftRules(use_milk_days=False, use_heifers=False)
    assert _numbers(draft_order(cows, DAY, 5, rules)) == []


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ({"calving_due": _in(27)}, "calves in 27 days"),
        ({"calving_due": _in(28)}, ""),
        ({"dry_off_due": DAY}, "not on the same day"),
    ],
)
def test_a_lame_cow_near_calving_or_on_her_dry_off_day_comes_with_a_warning(said, words):
    """Less than 28 days to calving: OR of abortion 2.4 (Thomsen 2020, last four weeks)."""
    (line,) = draft_order([_cow("1", lame_words="lame", **said)], DAY, 5).present
    assert words in line.warning
    assert bool(line.warning) is bool(words)


def test_a_cow_wanted_for_routine_waits_when_calving_is_less_than_four_weeks_off():
    order = draft_order([_cow("1", last_trim=_in(-300), calving_due=_in(10))], DAY, 5)
    assert order.present == ()
    assert "calves in 10 days" in order.left_for_next[0].warning


def test_the_cow_longest_without_a_trim_comes_first_among_those():
    cows = [_cow("1", last_trim=_in(-160)), _cow("2", last_trim=_in(-400)), _cow("3", last_trim=_in(-200))]
    assert _numbers(draft_order(cows, DAY, 2)) == ["2", "3"]


def test_a_cow_never_trimmed_comes_before_those_with_a_trim_on_file():
    cows = [_cow("1", last_trim=_in(-400)), _cow("2", last_trim=None)]
    assert _numbers(draft_order(cows, DAY, 5)) == ["2", "1"]


def test_every_reason_of_a_cow_is_told():
    (line,) = draft_order([_cow("1", lame_words="lame", dry_off_due=_in(4))], DAY, 5).present
    assert line.why == "lame; dry-off in 4 days"
