from datetime import date, timedelta

import pytest

from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.recheck_due import RecheckCause, RecheckFigures, StandingBlock, block_off_due, rechecks_for

ON = date(2026, 3, 2)
USUAL = RecheckFigures()
LH, RH, LAT, MED, SKIN = Foot.LEFT_HIND, Foot.RIGHT_HIND, Claw.LATERAL, Claw.MEDIAL, Claw.SKIN
TRIM = ActionEntry(ActionKind.LENGTH, LAT)
LAME = {"mobility_scale": MobilityScale.UK, "mobility_score": 2}


def _block(kind=BlockKind.WOOD):
    return ActionEntry(ActionKind.BLOCK, MED, kind)


def _due(foot, standing=(), **cow):
    return rechecks_for(CowEntry((foot,), **cow), ON, USUAL, standing)


def _days(due):
    return (due.due_from - ON).days, (due.due_until - ON).days


@pytest.mark.parametrize("kind", BlockKind)
def test_a_block_brings_the_cow_back_in_the_days_of_its_kind(kind):
    (due,) = _due(FootEntry(LH, actions=(_block(kind),)))
    assert (due.foot, due.cause, _days(due)) == (LH, RecheckCause.BLOCK, USUAL.block[kind])
    assert due.what == f"{kind.label} on inner claw"
    assert block_off_due(kind, ON, USUAL) == due.due_until


@pytest.mark.parametrize(
    ("finding", "days"),
    [
        (FindingEntry(LesionCode.SU, LAT, 4, 2), (21, 28)),
        (FindingEntry(LesionCode.WLA, LAT, 3, 2), (21, 28)),
        (FindingEntry(LesionCode.DD, SKIN, 10, 2, DDStage.M2), (3, 7)),
        (FindingEntry(LesionCode.DD, SKIN, 10, 2), (3, 7)),
        (FindingEntry(LesionCode.IP, SKIN, 9, 2), (2, 3)),
    ],
)
def test_a_lesion_brings_the_cow_back_in_the_days_of_its_kind(finding, days):
    """trade-facts 3.5; DD and foul from memory."""
    (due,) = _due(FootEntry(LH, findings=(finding,), actions=(TRIM,)))
    assert (due.cause, _days(due)) == (RecheckCause.LESION, days)


@pytest.mark.parametrize(
    "finding",
    [
        FindingEntry(LesionCode.SH, LAT, 5, 1),
        FindingEntry(LesionCode.CC, LAT),
        FindingEntry(LesionCode.DD, SKIN, 10, 1, DDStage.M0),
        FindingEntry(LesionCode.DD, SKIN, 10, 1, DDStage.M4),
    ],
)
def test_what_needs_no_second_look_brings_nobody_back(finding):
    assert _due(FootEntry(LH, findings=(finding,), actions=(TRIM,))) == []


def test_a_lame_cow_that_was_only_trimmed_is_scored_again():
    (due,) = _due(FootEntry(LH, has_pain=True, actions=(TRIM,)), **LAME)
    assert (due.cause, _days(due)) == (RecheckCause.LAME_TRIM, (10, 14))


@pytest.mark.parametrize(
    ("foot", "score"),
    [
        (FootEntry(LH, has_pain=True, actions=(TRIM,)), 1),
        (FootEntry(LH, actions=(TRIM,)), 2),
        (FootEntry(LH, has_pain=True), 2),
    ],
)
def test_a_sound_cow_or_a_foot_with_nothing_seen_or_done_is_not(foot, score):
    assert _due(foot, mobility_scale=MobilityScale.UK, mobility_score=score) == []


def test_a_foot_has_one_recheck_the_earliest_and_it_names_all_reasons():
    dd = FindingEntry(LesionCode.DD, SKIN, 10, 2, DDStage.M2)
    (due,) = _due(FootEntry(LH, findings=(dd,), actions=(_block(),)))
    assert (due.cause, _days(due)) == (RecheckCause.LESION, (3, 7))
    assert due.what == "wooden block on inner claw; digital dermatitis"


def test_each_foot_has_its_own():
    entry = CowEntry((FootEntry(LH, actions=(_block(),)), FootEntry(RH, actions=(_block(BlockKind.SHOE),))))
    assert [due.foot for due in rechecks_for(entry, ON, USUAL)] == [LH, RH]


def test_a_block_left_on_from_before_is_not_lost_when_the_foot_is_looked_at_for_another_reason():
    standing = [StandingBlock(LH, MED, BlockKind.WOOD, ON - timedelta(days=5))]
    (due,) = _due(FootEntry(LH), standing)
    assert (due.cause, _days(due)) == (RecheckCause.BLOCK, (16, 23))


def test_a_block_left_on_too_long_is_due_at_once():
    (due,) = _due(FootEntry(LH), [StandingBlock(LH, MED, BlockKind.WOOD, ON - timedelta(days=60))])
    assert _days(due) == (0, 0)


@pytest.mark.parametrize(
    ("action", "left"),
    [
        (ActionEntry(ActionKind.BLOCK_OFF, MED), 0),
        (ActionEntry(ActionKind.BLOCK_OFF), 0),
        (ActionEntry(ActionKind.BLOCK_OFF, LAT), 1),
        (TRIM, 1),
    ],
)
def test_a_block_taken_off_brings_nobody_back(action, left):
    standing = [StandingBlock(LH, MED, BlockKind.WOOD, ON - timedelta(days=5))]
    assert len(_due(FootEntry(LH, actions=(action,)), standing)) == left


def test_a_new_block_on_the_claw_counts_from_today():
    standing = [StandingBlock(LH, MED, BlockKind.WOOD, ON - timedelta(days=20))]
    (due,) = _due(FootEntry(LH, actions=(_block(),)), standing)
    assert _days(due) == (21, 28)


def test_a_block_on_a_foot_that_was_not_lifted_keeps_its_own_open_recheck():
    standing = [StandingBlock(RH, MED, BlockKind.WOOD, ON - timedelta(days=5))]
    assert _due(FootEntry(LH), standing) == []


def _by_hand(days, *, findings=(), actions=(), standing=()):
    foot = FootEntry(LH, look_again_days=days, findings=findings, actions=actions)
    return rechecks_for(CowEntry(feet=(foot,)), ON, USUAL, standing)


def test_days_set_by_hand_take_the_place_of_the_rules_days():
    """The span of a week is our own: as wide as a wooden block's, so that the feet of a farm still gather."""
    (due,) = _by_hand(9, findings=(FindingEntry(LesionCode.SU, Claw.LATERAL, 4, 2),))
    assert (due.cause, due.what, _days(due)) == (RecheckCause.LESION, "sole ulcer", (9, 16))


def test_days_set_by_hand_are_kept_for_a_foot_on_which_the_rule_sees_nothing():
    (due,) = _by_hand(9)
    assert (due.cause, due.what, _days(due)) == (RecheckCause.BY_HAND, "to be looked at again", (9, 16))
    assert due.cause.label == "To be looked at again"


def test_days_set_by_hand_may_also_be_later_than_the_rules():
    block = ActionEntry(ActionKind.BLOCK, Claw.MEDIAL, BlockKind.WOOD)
    (due,) = _by_hand(40, actions=(block,))
    assert (due.cause, _days(due)) == (RecheckCause.BLOCK, (40, 47))


def test_no_need_by_hand_ends_a_lesions_days_but_not_a_blocks():
    """A block that nobody comes back for harms the cow: it stays in sight whatever was set."""
    ulcer = FindingEntry(LesionCode.SU, Claw.LATERAL, 4, 2)
    assert _by_hand(0, findings=(ulcer,)) == []
    block = ActionEntry(ActionKind.BLOCK, Claw.MEDIAL, BlockKind.WOOD)
    (due,) = _by_hand(0, findings=(ulcer,), actions=(block,))
    assert (due.cause, _days(due)) == (RecheckCause.BLOCK, USUAL.block[BlockKind.WOOD])


@pytest.mark.parametrize("days", [0, 60])
def test_a_block_still_on_from_before_is_followed_whatever_was_set_by_hand(days):
    on = StandingBlock(LH, Claw.MEDIAL, BlockKind.WOOD, ON - timedelta(days=10))
    (due,) = _by_hand(days, standing=(on,))
    assert (due.cause, _days(due)) == (RecheckCause.BLOCK, (11, 18))
