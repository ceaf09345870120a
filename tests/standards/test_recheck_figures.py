"""Our default days against what is published (trade sources named beside each case)."""

import pytest

from visits.domain.actions import BlockKind
from visits.domain.mobility import MobilityScale, Urgency, urgency_of
from visits.domain.recheck_figures import RecheckFigures

USUAL = RecheckFigures()


@pytest.mark.parametrize(
    ("kind", "earliest", "latest", "source"),
    [
        (
            BlockKind.WOOD,
            21,
            28,
            "of no use after 3 weeks (German trial, Maierl and Fiedler); 4 weeks (Minnesota 2015)",
        ),
        (BlockKind.EVA, 7, 21, "drops off after 7 to 20 days (same German trial)"),
        (BlockKind.SHOE, 42, 49, "stays at least six weeks and must come off (AHDB 26 Aug 2021)"),
    ],
)
def test_a_block_is_looked_at_within_its_published_days(kind, earliest, latest, source):
    first, last = USUAL.block[kind]
    assert earliest <= first <= last <= latest, source


def test_no_block_is_due_later_than_the_day_it_is_called_overdue_but_a_shoe():
    """42 days is when a forgotten block is said loudly (trade-facts 3.5, common practice)."""
    assert all(
        days[1] < USUAL.overdue_days for kind, days in USUAL.block.items() if kind is not BlockKind.SHOE
    )


@pytest.mark.parametrize(
    ("score", "urgency", "days"),
    [(0, Urgency.NONE, None), (1, Urgency.NONE, None), (2, Urgency.SOON, 2), (3, Urgency.SAME_DAY, 0)],
)
def test_lame_cows_are_seen_as_soon_as_the_uk_score_sheet_and_leach_2012_say(score, urgency, days):
    """UK 0-3 sheet 2011: 2 as soon as practically possible, 3 urgent; Leach 2012, Vet J 193:626: within 48 h."""
    assert urgency_of(MobilityScale.UK, score) is urgency
    assert urgency.days == days
