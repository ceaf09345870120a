from dataclasses import replace

import pytest

from tests.visits.domain.herd.small_herds import LONG_AGO, day, herd
from visits.domain.actions import BlockKind
from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import BlockOn, CowLife, RecheckTold
from visits.domain.herd.intervals import wilson
from visits.domain.herd.outcomes import (
    BlockOutcome,
    RecheckOutcome,
    block_outcome,
    block_outcomes,
    recheck_outcome,
    recheck_outcomes,
)

BLOCK = BlockOn(1, Foot.LEFT_HIND, Claw.MEDIAL, BlockKind.WOOD, day(0), day(28))
RECHECK = RecheckTold(1, Foot.LEFT_HIND, day(0), day(21), day(28))


def life(left=None):
    return CowLife(1, "1", LONG_AGO, None if left is None else day(left))


@pytest.mark.parametrize(
    ("off", "left", "today", "outcome"),
    [
        (28, None, 100, BlockOutcome.OFF_IN_TIME),
        (29, None, 100, BlockOutcome.OFF_LATE),
        (None, None, 28, BlockOutcome.NOT_YET_DUE),
        (None, None, 29, BlockOutcome.OVERDUE),
        (None, 28, 100, BlockOutcome.COW_LEFT),
        (None, 29, 100, BlockOutcome.LEFT_OVERDUE),
        (20, 29, 100, BlockOutcome.OFF_IN_TIME),
        (20, 25, 100, BlockOutcome.COW_LEFT),
        (20, None, 28, BlockOutcome.OFF_BEFORE_DUE),
        (20, None, 29, BlockOutcome.OFF_IN_TIME),
        (None, 20, 25, BlockOutcome.COW_LEFT),
        (None, 120, 100, BlockOutcome.OVERDUE),
    ],
)
def test_each_block_ends_in_one_way(off, left, today, outcome):
    block = replace(BLOCK, off_on=None if off is None else day(off))
    assert block_outcome(block, life(left), day(today)) is outcome


@pytest.mark.parametrize(
    ("looked", "closed", "left", "today", "outcome"),
    [
        (28, 28, None, 100, RecheckOutcome.KEPT_IN_TIME),
        (14, 14, None, 100, RecheckOutcome.KEPT_IN_TIME),
        (29, 29, None, 100, RecheckOutcome.KEPT_LATE),
        (14, 14, None, 28, RecheckOutcome.LOOKED_BEFORE_DUE),
        (14, 14, 20, 100, RecheckOutcome.COW_LEFT),
        (None, 10, None, 20, RecheckOutcome.NOT_YET_DUE),
        (None, 10, None, 29, RecheckOutcome.MISSED),
        (None, None, None, 28, RecheckOutcome.NOT_YET_DUE),
        (None, None, None, 29, RecheckOutcome.MISSED),
        (None, None, 28, 100, RecheckOutcome.COW_LEFT),
        (None, 27, 27, 100, RecheckOutcome.COW_LEFT),
        (None, None, 40, 100, RecheckOutcome.MISSED),
    ],
)
def test_each_recheck_ends_in_one_way(looked, closed, left, today, outcome):
    told = replace(
        RECHECK,
        looked_on=None if looked is None else day(looked),
        closed_on=None if closed is None else day(closed),
    )
    assert recheck_outcome(told, life(left), day(today)) is outcome


def test_the_share_of_blocks_in_time_is_of_those_that_came_due_while_the_cow_was_there():
    blocks = (
        *[replace(BLOCK, off_on=day(25))] * 6,
        replace(BLOCK, off_on=day(40)),
        replace(BLOCK, off_due=day(20)),
        BLOCK,
        replace(BLOCK, off_due=day(950)),
        replace(BLOCK, cow=2),
    )
    found = block_outcomes(herd(lives=[life(), replace(life(20), cow=2)], blocks=blocks))
    assert (found.in_time.count, found.in_time.total) == (6, 9)
    assert found.in_time.interval == wilson(6, 9)
    assert (found.counts[BlockOutcome.COW_LEFT], found.counts[BlockOutcome.NOT_YET_DUE]) == (1, 1)
    assert [block.off_due for block in found.overdue] == [day(20), day(28)]


def test_early_successes_do_not_count_before_those_still_pending_can():
    """Today is day 900. Half of what was due is late; of ten due tomorrow nine are seen to already."""
    past, ahead = replace(BLOCK, off_due=day(890)), replace(BLOCK, off_due=day(901))
    look, pending = replace(RECHECK, due_until=day(890)), replace(RECHECK, due_until=day(901))
    facts = herd(
        lives=[life()],
        blocks=(replace(past, off_on=day(889)), past, *[replace(ahead, off_on=day(880))] * 9, ahead),
        rechecks=(
            replace(look, looked_on=day(889)),
            look,
            *[replace(pending, looked_on=day(880))] * 9,
            pending,
        ),
    )
    blocks, rechecks = block_outcomes(facts), recheck_outcomes(facts)
    assert (blocks.in_time.count, blocks.in_time.total) == (1, 2)
    assert (rechecks.in_time.count, rechecks.kept.count, rechecks.kept.total) == (1, 1, 2)
    assert blocks.counts[BlockOutcome.OFF_BEFORE_DUE] == 9
    assert rechecks.counts[RecheckOutcome.LOOKED_BEFORE_DUE] == 9


def test_blocks_and_rechecks_of_a_year_are_those_due_in_it():
    facts = herd(
        lives=[life()],
        blocks=(BLOCK, replace(BLOCK, off_due=day(400), off_on=day(400))),
        rechecks=(RECHECK, replace(RECHECK, due_until=day(400), looked_on=day(410))),
    )
    blocks, rechecks = block_outcomes(facts, day(100), day(900)), recheck_outcomes(facts, day(100), day(900))
    assert (blocks.in_time.count, blocks.in_time.total) == (1, 1)
    assert (rechecks.in_time.count, rechecks.kept.count, rechecks.kept.total) == (0, 1, 1)
    assert block_outcomes(facts, day(0), day(400)).counts[BlockOutcome.OVERDUE] == 1


def test_a_late_look_is_kept_but_not_in_time():
    facts = herd(
        lives=[life()],
        rechecks=(RECHECK, replace(RECHECK, looked_on=day(30)), replace(RECHECK, looked_on=day(22))),
    )
    found = recheck_outcomes(facts)
    assert (found.in_time.count, found.kept.count, found.kept.total) == (1, 2, 3)
    assert found.counts[RecheckOutcome.MISSED] == 1


def test_nothing_due_makes_no_share():
    found = block_outcomes(herd(lives=[life()]))
    assert found.in_time.share is None
    assert found.in_time.interval is None
    assert set(found.counts.values()) == {0}


@pytest.mark.parametrize("outcomes", [BlockOutcome, RecheckOutcome])
def test_no_two_outcomes_are_written_in_the_same_words(outcomes):
    assert len({outcome.label for outcome in outcomes}) == len(outcomes)
