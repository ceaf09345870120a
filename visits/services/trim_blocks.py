"""Blocks on and off, as a trim says."""

from collections.abc import Sequence
from datetime import date

from visits.domain.actions import ActionKind
from visits.domain.crush_entry import ActionEntry, FootEntry
from visits.domain.recheck_due import RecheckFigures, block_off_due
from visits.models import Block, Trim


def note_blocks(trim: Trim, feet: Sequence[FootEntry], day: date, figures: RecheckFigures) -> None:
    """Take off what came off, put on what went on. A new block on a claw ends the one that was there (it was lost)."""
    _undo(trim)
    for foot in feet:
        for action in foot.actions:
            if action.kind is ActionKind.BLOCK_OFF:
                _take_off(trim, foot, action, day)
        for action in foot.blocks():
            _take_off(trim, foot, action, day)
            _put_on(trim, foot, action, day, figures)


def _undo(trim: Trim) -> None:
    """Forget what an earlier version of this very trim said."""
    blocks = Block.objects.within(trim.scope)
    blocks.filter(put_on_by=trim).delete()
    blocks.filter(off_by=trim).update(off_on=None, off_by=None)


def _take_off(trim: Trim, foot: FootEntry, action: ActionEntry, day: date) -> None:
    rows = Block.objects.within(trim.scope).filter(
        cow_id=trim.cow_id, foot=foot.foot.value, off_on__isnull=True
    )
    if action.claw is not None:
        rows = rows.filter(claw=action.claw.value)
    rows.update(off_on=day, off_by=trim)


def _put_on(trim: Trim, foot: FootEntry, action: ActionEntry, day: date, figures: RecheckFigures) -> None:
    if action.block_kind is None or action.claw is None:
        return
    block = Block(
        business_id=trim.business_id,
        cow_id=trim.cow_id,
        foot=foot.foot.value,
        claw=action.claw.value,
        kind=action.block_kind.value,
        put_on_by=trim,
        put_on=day,
        off_due=block_off_due(action.block_kind, day, figures),
    )
    block.full_clean()
    block.save()
