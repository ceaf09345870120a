"""The generator's memory of open re-checks and standing blocks: at most one re-check open per foot."""

from collections.abc import Iterable
from datetime import date, timedelta
from random import Random

from trimops.portal.demo.chances import happens
from trimops.portal.demo.past import BlockSpell, Past, RecheckSpell, SeenKey
from visits.domain.actions import ActionKind
from visits.domain.crush_entry import CowEntry
from visits.domain.feet import Claw, Foot
from visits.domain.recheck_due import RecheckFigures, StandingBlock, block_off_due, rechecks_for

SEEN_BY_FARM_AFTER = timedelta(days=5)


class OpenFeet:
    """What is still open at one farm, by cow and foot."""

    def __init__(self, farm: int, past: Past, figures: RecheckFigures, farm_looks_itself: float) -> None:
        self._farm, self._past, self._figures = farm, past, figures
        self._farm_looks_itself = farm_looks_itself
        self._rechecks: dict[tuple[int, Foot], RecheckSpell] = {}
        self._blocks: dict[tuple[int, Foot, Claw], BlockSpell] = {}

    def due_by(self, day: date) -> list[RecheckSpell]:
        """Re-checks that may be looked at on `day`, cow by cow."""
        waiting = (spell for spell in self._rechecks.values() if spell.closed_on is None)
        found = (spell for spell in waiting if spell.due.due_from <= day)
        return sorted(found, key=lambda spell: (spell.cow, spell.due.foot))

    def standing(self, cow: int) -> list[StandingBlock]:
        return [
            StandingBlock(spell.foot, spell.claw, spell.kind, spell.put_on)
            for spell in self._blocks.values()
            if spell.cow == cow
        ]

    def take(self, chance: Random, key: SeenKey, entry: CowEntry, day: date) -> None:
        """Close what was looked at, take blocks off and put them on, open what must be seen again."""
        cow = key[1]
        standing = self.standing(cow)
        for foot in entry.feet:
            self._close(self._rechecks.pop((cow, foot.foot), None), key, day)
        self._move_blocks(key, entry, day)
        for due in rechecks_for(entry, day, self._figures, standing):
            spell = RecheckSpell(self._farm, cow, due, opened_by=key)
            self._past.rechecks.append(spell)
            self._rechecks[cow, due.foot] = spell
            if due.due_until - day <= timedelta(days=7) and happens(chance, self._farm_looks_itself):
                spell.closed_on = day + SEEN_BY_FARM_AFTER
                spell.closed_because = "the farm looked: dry and walking well"

    def let_go(self, day: date) -> None:
        """Forget what the farm has looked at itself by `day`."""
        gone = [key for key, spell in self._rechecks.items() if spell.closed_on and spell.closed_on <= day]
        for key in gone:
            del self._rechecks[key]

    def forget(self, cow: int, day: date) -> None:
        """She left the herd: her re-checks are closed, a block on her is lost from sight."""
        for key in [key for key in self._rechecks if key[0] == cow]:
            spell = self._rechecks.pop(key)
            if spell.closed_on is None or spell.closed_on > day:
                spell.closed_on, spell.closed_because = day, "she left the herd"
        for place in [place for place in self._blocks if place[0] == cow]:
            del self._blocks[place]

    def _close(self, spell: RecheckSpell | None, key: SeenKey, day: date) -> None:
        if spell is not None:
            spell.closed_by, spell.closed_on, spell.closed_because = key, day, "looked at"

    def _move_blocks(self, key: SeenKey, entry: CowEntry, day: date) -> None:
        cow = key[1]
        for foot in entry.feet:
            off = (a.claw for a in foot.actions if a.kind in (ActionKind.BLOCK_OFF, ActionKind.BLOCK))
            self._take_off(((cow, foot.foot, claw) for claw in off if claw), key, day)
            for action in foot.blocks():
                if action.claw is None or action.block_kind is None:
                    continue
                due = block_off_due(action.block_kind, day, self._figures)
                spell = BlockSpell(self._farm, cow, foot.foot, action.claw, action.block_kind, day, due, key)
                self._past.blocks.append(spell)
                self._blocks[cow, foot.foot, action.claw] = spell

    def _take_off(self, places: Iterable[tuple[int, Foot, Claw]], key: SeenKey, day: date) -> None:
        for place in places:
            if (spell := self._blocks.pop(place, None)) is not None:
                spell.off_on, spell.off_by = day, key
