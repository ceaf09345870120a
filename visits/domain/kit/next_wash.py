"""What stands between one yard and the next: washed, to be washed, or not without asking.

Cleansing and disinfecting equipment, vehicle and clothes before and after each contact is published advice (gov.uk for
livestock keepers, trade-facts 5.2); that cleaner herds come before dirtier ones is common practice, no source.
"""

from dataclasses import dataclass
from enum import StrEnum

from farms.domain.hygiene import HygieneLevel


class WashStand(StrEnum):
    """How things stand before the next farm."""

    DONE = "done"
    DUE = "due"
    URGENT = "urgent"


@dataclass(frozen=True)
class NextWash:
    """How things stand, in words, and why."""

    stand: WashStand
    what: str
    why: str


def next_wash(*, to: HygieneLevel, before: HygieneLevel | None, is_washed: bool) -> NextWash:
    """`before`: the level of the yard that crush and boots were in last, None where that is not known.

    `is_washed`: a wash-down is noted since they left it.
    """
    stricter = before is not None and before > to
    if before is HygieneLevel.RESTRICTED and to < before:
        done = "A wash-down is noted" if is_washed else "No wash-down is noted"
        return NextWash(
            WashStand.URGENT,
            "Ask before you drive there",
            f"{done} after a herd with a serious infection or a restriction. Whether you may go on to another farm "
            "on the same day, that farm, its vet and your local rules say.",
        )
    if is_washed:
        return NextWash(WashStand.DONE, "Washed down", "A wash-down is noted since the last yard.")
    if before is None:
        return NextWash(
            WashStand.DUE, "Set off clean", "No yard before it is known: check crush, knives and boots."
        )
    if stricter:
        return NextWash(
            WashStand.URGENT,
            "Wash down before you drive",
            f"The last herd ({before.label.lower()}) is less clean than the next ({to.label.lower()}).",
        )
    return NextWash(
        WashStand.DUE,
        "Wash down before you drive",
        "Clean and disinfect after each farm and before the next.",
    )
