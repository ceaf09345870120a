"""The farm does not want the hour that is held for it."""

from datetime import datetime

from django.db import transaction

from trimops.kernel.errors import RuleBroken
from visits.models import HeldHour, HeldState


class HourIsNotHeld(RuleBroken):
    """It has run out, or was taken or let go already."""

    code = "hour_is_not_held"


@transaction.atomic
def let_go_offer(*, held: HeldHour, at: datetime) -> HeldHour:
    """Anybody may have the hour again."""
    row = held_now(held, at)
    row.state, row.ended_at = HeldState.LET_GO.value, at
    row.save()
    return row


def held_now(held: HeldHour, at: datetime) -> HeldHour:
    """The row read anew and locked, if it is in force; else HourIsNotHeld. Call inside a transaction."""
    row = held.locked()
    if not row.is_in_force(at):
        word = "has run out" if row.state == HeldState.HELD else f"is {row.get_state_display().lower()}"
        raise HourIsNotHeld(f"The hour {word}: look for one again, it may still be free.")
    return row
