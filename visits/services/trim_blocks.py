"""Blocks on and off, as trims say."""

from collections.abc import Iterable, Sequence
from datetime import date

from django.db.models import Q

from trimops.kernel.scope import Scope
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.recheck_due import RecheckFigures, StandingBlock, block_off_due
from visits.models import Block
from visits.services.stored_cow import StoredCow

Key = tuple[int, str, str, str, date]


class BlocksOfCows:
    """The blocks of some cows as if `trims` had never been; then each trim is noted in turn, then `save`."""

    def __init__(self, scope: Scope, trims: Sequence[StoredCow], figures: RecheckFigures) -> None:
        self.scope, self.figures = scope, figures
        keys = [cow.trim.pk for cow in trims]
        said_by_them = Q(put_on_by_id__in=keys) | Q(off_by_id__in=keys)
        rows = Block.objects.within(scope).filter(cow_id__in={cow.trim.cow_id for cow in trims})
        found = list(rows.filter(Q(off_on__isnull=True) | said_by_them).order_by("pk"))
        self.before = {row.pk: _said(row) for row in found}
        undone = set(keys)
        self.spare: dict[Key, Block] = {_key(row): row for row in found if row.put_on_by_id in undone}
        self.rows = [row for row in found if row.put_on_by_id not in undone]
        for row in self.rows:
            if row.off_by_id in undone:
                row.off_on, row.off_by_id = None, None

    def note(self, cow: StoredCow) -> None:
        """Take off what came off, put on what went on. A new block on a claw ends the one there (it was lost)."""
        for foot in cow.entry.feet:
            for action in foot.actions:
                if action.kind is ActionKind.BLOCK_OFF:
                    self._take_off(cow, foot, action)
            for action in foot.blocks():
                self._take_off(cow, foot, action)
                self._put_on(cow, foot, action)

    def standing(self, cow: StoredCow) -> list[StandingBlock]:
        """Blocks on this cow from before, still on."""
        return [
            StandingBlock(Foot(row.foot), Claw(row.claw), BlockKind(row.kind), row.put_on)
            for row in self._on(cow)
            if row.put_on_by_id != cow.trim.pk
        ]

    def save(self) -> None:
        """What ends first, so that no claw bears two blocks even for a moment."""
        blocks = Block.objects.within(self.scope)
        if self.spare:
            blocks.filter(pk__in=[row.pk for row in self.spare.values()]).delete()
        changed = [row for row in self.rows if row.pk is not None and _said(row) != self.before[row.pk]]
        for ended in (True, False):
            same = [row for row in changed if (row.off_on is not None) is ended]
            blocks.bulk_update(same, ["off_on", "off_by", "off_due"])
        Block.objects.bulk_create([row for row in self.rows if row.pk is None])

    def _on(self, cow: StoredCow) -> Iterable[Block]:
        return (row for row in self.rows if row.cow_id == cow.trim.cow_id and row.off_on is None)

    def _take_off(self, cow: StoredCow, foot: FootEntry, action: ActionEntry) -> None:
        for row in self._on(cow):
            if row.foot == foot.foot.value and action.claw in (None, Claw(row.claw)):
                row.off_on, row.off_by_id = cow.day, cow.trim.pk

    def _put_on(self, cow: StoredCow, foot: FootEntry, action: ActionEntry) -> None:
        if action.block_kind is None or action.claw is None:
            return
        block = Block(
            business_id=cow.trim.business_id,
            cow_id=cow.trim.cow_id,
            foot=foot.foot.value,
            claw=action.claw.value,
            kind=action.block_kind.value,
            put_on_by=cow.trim,
            put_on=cow.day,
        )
        block = self.spare.pop(_key(block), block)
        block.off_on, block.off_by_id = None, None
        block.off_due = block_off_due(action.block_kind, cow.day, self.figures)
        self.rows.append(block)


def _key(row: Block) -> Key:
    return row.put_on_by_id, row.foot, row.claw, row.kind, row.put_on


def _said(row: Block) -> tuple[object, ...]:
    return row.off_on, row.off_by_id, row.off_due
