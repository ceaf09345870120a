"""Blocks on and off, as a trim says."""

from datetime import timedelta

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.recheck_figures import RecheckFigures
from visits.models import Block
from visits.services.stored_cow import StoredCow
from visits.services.trim_blocks import BlocksOfCows

DAY = TUESDAY_TEN.date()
OFF_INNER = FootEntry(Foot.LEFT_HIND, actions=(ActionEntry(ActionKind.BLOCK_OFF, Claw.MEDIAL),))


def next_visit(house, visit, days=24):
    finish(visit, house.trimmer)
    return under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=days))


def blocks(house):
    return Block.objects.within(house.scope).order_by("pk")


def test_a_block_stands_from_its_day_until_its_kind_says(house, visit):
    put_down(visit, house.cow, blocked_foot(kind=BlockKind.WOOD))
    (block,) = blocks(house)
    assert (block.put_on, block.off_due) == (DAY, DAY + timedelta(days=28))


def test_a_shoe_stays_longer_than_a_block(house, visit):
    put_down(visit, house.cow, blocked_foot(kind=BlockKind.SHOE))
    assert blocks(house).get().off_due == DAY + timedelta(days=49)


def test_block_off_ends_it_with_the_trim_that_took_it(house, visit):
    put_down(visit, house.cow, blocked_foot())
    later = put_down(next_visit(house, visit), house.cow, OFF_INNER)
    (block,) = blocks(house)
    assert (block.off_on, block.off_by) == (DAY + timedelta(days=24), later)


def test_block_off_without_a_claw_takes_whatever_is_on_the_foot_and_leaves_the_other_foot(house, visit):
    put_down(visit, house.cow, blocked_foot(), blocked_foot(Foot.RIGHT_HIND))
    off = FootEntry(Foot.LEFT_HIND, actions=(ActionEntry(ActionKind.BLOCK_OFF),))
    put_down(next_visit(house, visit), house.cow, off)
    assert [(block.foot, block.off_on is None) for block in blocks(house)] == [("LH", False), ("RH", True)]


def test_a_new_block_on_a_claw_ends_the_one_that_was_lost(house, visit):
    put_down(visit, house.cow, blocked_foot())
    put_down(next_visit(house, visit), house.cow, blocked_foot(kind=BlockKind.RUBBER))
    assert [(block.kind, block.off_on is None) for block in blocks(house)] == [
        ("wood", False),
        ("rubber", True),
    ]


def test_another_cows_block_stays_on(house, visit):
    other = make_cow(house.farm, "102")
    put_down(visit, house.cow, blocked_foot())
    put_down(visit, other, blocked_foot())
    put_down(next_visit(house, visit), house.cow, OFF_INNER)
    assert Block.objects.within(house.scope).get(off_on__isnull=True).cow == other


def test_mending_the_trim_that_took_a_block_off_puts_it_back(house, visit):
    put_down(visit, house.cow, blocked_foot())
    again = next_visit(house, visit)
    put_down(again, house.cow, OFF_INNER)
    put_down(again, house.cow, trimmed_foot(), at=again.started_at + timedelta(hours=1))
    assert blocks(house).get().off_on is None


def test_noting_the_same_feet_again_leaves_the_same_block(house, visit):
    trim = put_down(visit, house.cow, blocked_foot())
    before = blocks(house).get()
    cow = StoredCow(trim, CowEntry(feet=(blocked_foot(),)), DAY, NOON)
    again = BlocksOfCows(house.scope, [cow], RecheckFigures())
    again.note(cow)
    assert again.standing(cow) == []
    again.save()
    assert blocks(house).get() == before
