"""A person says what becomes of a blade: at grinding, out of use, retired, or back in use."""

from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import FieldRefused
from visits.domain.cautions import BLADE_BROKEN
from visits.domain.kit.blade_kinds import BladeFault, BladeKind, BladeState
from visits.domain.kit.put_right import PutRight, ways_to_put_right
from visits.models import Blade, BladeEvent
from visits.selectors.kit.blade_standing import standing_of
from visits.services.kit.settle_blade import settle_blade


class BladeStateRefused(FieldRefused):
    """The blade cannot become that; the message says what to mend."""

    code = "blade_state_refused"


@dataclass(frozen=True)
class BladeStateWord:
    """What it becomes, why it goes out of use, and how a fault was put right before it comes back."""

    state: BladeState
    fault: BladeFault | None = None
    put_right: PutRight | None = None
    note: str = ""


@transaction.atomic
def change_blade_state(*, blade: Blade, word: BladeStateWord, at: datetime, by: User) -> Blade:
    """Keep the word with who and when, and settle the blade. The same word again changes nothing.

    A blade with an open fault comes back only with a word on how it was put right, and that must be a way such a fault
    can be. "A new one in its place" on a blade in use begins a new edge, and a disc's hours, from nought.
    BladeStateRefused names the field to mend.
    """
    row = blade.locked()
    standing = standing_of(row)
    if word.state is BladeState.BOUGHT:
        raise BladeStateRefused("state", "It was bought once. Say what it is now: in use, at grinding, out.")
    if word.state is BladeState.OUT_OF_USE and word.fault is None:
        raise BladeStateRefused("fault", "Say why it is out of use, so that nobody takes it by mistake.")
    is_replaced = word.state is BladeState.IN_USE and word.put_right is PutRight.REPLACED
    if (standing.state, standing.fault) == (word.state, word.fault) and not is_replaced:
        return row
    if word.state is BladeState.IN_USE:
        faults = _faults_put_right(BladeKind(row.kind), standing.open_faults, word.put_right)
    else:
        faults = [word.fault]
    for fault in faults:
        _keep(row, word, fault, at, by)
    return settle_blade(blade=row)


def _faults_put_right(
    kind: BladeKind, open_faults: frozenset[BladeFault], put_right: PutRight | None
) -> list[BladeFault | None]:
    """The faults that the word puts right; one word of its own is kept of each."""
    if not open_faults:
        return [BladeFault.WORN if put_right is PutRight.REPLACED else None]
    if put_right is None:
        raise BladeStateRefused("put_right", "Say how it was put right: only then is it taken in hand again.")
    for fault in sorted(open_faults):
        if put_right not in ways_to_put_right(kind, fault):
            ways = " or ".join(way.label.lower() for way in ways_to_put_right(kind, fault))
            raise BladeStateRefused("put_right", f"{fault.label}: only when {ways}. {BLADE_BROKEN}")
    return [*sorted(open_faults)]


def _keep(blade: Blade, word: BladeStateWord, fault: BladeFault | None, at: datetime, by: User) -> None:
    said = [word.put_right.label] if word.put_right else []
    row = BladeEvent(
        business_id=blade.business_id,
        blade=blade,
        state=word.state.value,
        fault=fault.value if fault else "",
        note=". ".join([*said, *([word.note.strip()] if word.note.strip() else [])]),
        at=at,
        by=by,
    )
    row.full_clean()
    row.save()
