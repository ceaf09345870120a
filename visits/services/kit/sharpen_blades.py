"""Blades were sharpened: one, or several in one evening."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from visits.domain.kit.blade_kinds import (
    BladeFault,
    BladeKind,
    BladeState,
    EdgeBefore,
    EdgeFelt,
    SharpenMethod,
)
from visits.domain.kit.put_right import PutRight, ways_to_put_right
from visits.models import Blade, Sharpening
from visits.selectors.kit.blade_standing import standing_of
from visits.services.kit.change_blade_state import BladeStateWord, change_blade_state
from visits.services.kit.settle_blade import settle_blade


class SharpeningRefused(RuleBroken):
    """The sharpening cannot be noted; the message names the blade and says what to mend."""

    code = "sharpening_refused"


@dataclass(frozen=True)
class SharpenedBlade:
    """One blade: how its edge was before, how the new one feels, its angle, cows of the old edge counted by hand (None:
    by the log), and whether a chip is ground out."""

    blade: Blade
    before: EdgeBefore = EdgeBefore.NOT_SAID
    felt: EdgeFelt | None = None
    angle: Decimal | None = None
    minutes: Decimal | None = None
    cows_by_hand: int | None = None
    chip_is_out: bool = False


@dataclass(frozen=True)
class SharpenWord:
    """How all of them were sharpened, when, and by whom."""

    blades: Sequence[SharpenedBlade]
    sharpened_at: datetime
    method: SharpenMethod | None = None
    grit: int | None = None
    done_by: str = ""
    note: str = ""


@transaction.atomic
def sharpen_blades(*, word: SharpenWord, at: datetime, by: User) -> list[Sharpening]:
    """Each blade has a new edge from `sharpened_at` on. One noted as sharpened at that very moment is left as it is, so
    sending the form twice notes once. All or none: SharpeningRefused, or ValidationError, names what to mend.
    """
    if not word.blades:
        raise SharpeningRefused("No blade is chosen: tick at least one.")
    if word.sharpened_at > at:
        raise SharpeningRefused("This is still to come: give the hour at which it was sharpened.")
    found: list[Sharpening] = []
    for each in sorted(word.blades, key=lambda each: each.blade.pk):
        blade = each.blade.locked()
        rows = Sharpening.objects.within(blade.scope).filter(blade=blade, at=word.sharpened_at)
        found.append(rows.first() or _sharpen(blade, each, word, by))
    return found


def _sharpen(blade: Blade, each: SharpenedBlade, word: SharpenWord, by: User) -> Sharpening:
    _refuse(blade, each, word)
    row = Sharpening(
        business_id=blade.business_id,
        blade=blade,
        at=word.sharpened_at,
        method=word.method.value if word.method else "",
        grit=word.grit,
        angle=each.angle,
        minutes=each.minutes,
        done_by=word.done_by.strip(),
        felt=each.felt.value if each.felt else "",
        before=each.before.value,
        cows_since_last=each.cows_by_hand,
        note=word.note.strip(),
    )
    row.full_clean()
    row.save()
    if each.chip_is_out:
        back = BladeStateWord(BladeState.IN_USE, put_right=PutRight.GROUND_OUT)
        change_blade_state(blade=blade, word=back, at=word.sharpened_at, by=by)
    else:
        settle_blade(blade=blade)
    return row


def _refuse(blade: Blade, each: SharpenedBlade, word: SharpenWord) -> None:
    standing = standing_of(blade)
    if standing.state is BladeState.RETIRED:
        raise SharpeningRefused(f"{blade.name} is retired: say first that it is in use again.")
    unmended = [
        f
        for f in standing.open_faults
        if PutRight.GROUND_OUT not in ways_to_put_right(BladeKind(blade.kind), f)
    ]
    if unmended:
        fault = min(unmended)
        raise SharpeningRefused(
            f"{blade.name}: {fault.label.lower()}. Grinding does not mend that; it stays out of use."
        )
    if each.chip_is_out and BladeFault.CHIPPED not in standing.open_faults:
        raise SharpeningRefused(f"{blade.name} is not noted as chipped: nothing is to be ground out.")
    if each.chip_is_out and word.sharpened_at < standing.since:
        raise SharpeningRefused(
            f"{blade.name} chipped after that hour: give the hour at which the chip was ground out."
        )
    if local_day(word.sharpened_at, blade.business.zone) < blade.bought_on:
        raise SharpeningRefused(f"{blade.name} was bought after that day: mend the one or the other.")
