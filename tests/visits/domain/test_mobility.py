from datetime import date

import pytest

from visits.domain.mobility import (
    DueRange,
    MobilityScale,
    ScoreOutsideScale,
    Urgency,
    due_range,
    is_lame,
    most_urgent,
    share_lame,
    urgency_of,
    worst_score,
)

DAY = date(2026, 3, 2)
UK, FIVE = MobilityScale.UK, MobilityScale.SPRECHER


@pytest.mark.parametrize(
    ("scale", "score", "lame", "urgency"),
    [
        (UK, 0, False, Urgency.NONE),
        (UK, 1, False, Urgency.NONE),
        (UK, 2, True, Urgency.SOON),
        (UK, 3, True, Urgency.SAME_DAY),
        (FIVE, 1, False, Urgency.NONE),
        (FIVE, 2, False, Urgency.NONE),
        (FIVE, 3, True, Urgency.SOON),
        (FIVE, 4, True, Urgency.SAME_DAY),
        (FIVE, 5, True, Urgency.SAME_DAY),
    ],
)
def test_a_score_counts_on_its_own_scale(scale, score, lame, urgency):
    """UK 0-3: lame from 2 (score sheet 2011); 1-5: commonly lame from 3, same day from 4 by analogy."""
    assert is_lame(scale, score) is lame
    assert urgency_of(scale, score) is urgency


@pytest.mark.parametrize(("scale", "score"), [(UK, 4), (UK, -1), (FIVE, 0), (FIVE, 6)])
def test_a_score_the_scale_does_not_have_is_refused(scale, score):
    with pytest.raises(ScoreOutsideScale, match=scale.label):
        urgency_of(scale, score)


@pytest.mark.parametrize(
    ("urgency", "last"),
    [
        (Urgency.SAME_DAY, date(2026, 3, 2)),
        (Urgency.SOON, date(2026, 3, 4)),
        (Urgency.NONE, date(2026, 3, 30)),
    ],
)
def test_the_visit_is_due_as_soon_as_the_urgency_says(urgency, last):
    assert due_range(urgency, DAY) == DueRange(DAY, last)


def test_the_most_pressing_of_several_counts():
    assert most_urgent([Urgency.NONE, Urgency.SAME_DAY, Urgency.SOON]) is Urgency.SAME_DAY
    assert most_urgent([]) is Urgency.NONE


def test_a_range_that_ends_before_it_starts_cannot_be():
    with pytest.raises(ValueError, match="before it starts"):
        DueRange(date(2026, 3, 3), DAY)


@pytest.mark.parametrize(
    ("other", "both"),
    [
        (DueRange(date(2026, 3, 4), date(2026, 3, 9)), DueRange(date(2026, 3, 4), date(2026, 3, 5))),
        (DueRange(date(2026, 3, 5), date(2026, 3, 5)), DueRange(date(2026, 3, 5), date(2026, 3, 5))),
        (DueRange(date(2026, 3, 6), date(2026, 3, 9)), None),
    ],
)
def test_two_ranges_share_the_days_in_both(other, both):
    mine = DueRange(DAY, date(2026, 3, 5))
    assert mine.overlap(other) == both
    assert other.overlap(mine) == both


def test_the_share_of_lame_cows_counts_all_that_were_scored():
    assert share_lame(UK, [0, 1, 2, 3]) == 0.5
    assert share_lame(UK, []) is None


def test_the_worst_of_scores_on_two_sheets_is_the_one_that_presses_most():
    assert worst_score([(FIVE, 3), (UK, 3), (UK, 2)]) == (UK, 3)
    assert worst_score([(UK, 2), (FIVE, 3)]) == (UK, 2), "alike: the first"
    assert worst_score([]) is None
