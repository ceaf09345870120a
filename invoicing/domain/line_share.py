"""A line of which some pieces of work are billed elsewhere, or left off."""

from collections.abc import Set
from dataclasses import replace
from decimal import Decimal

from invoicing.domain.pricing import DraftLine
from trimops.kernel.money import round_money

QUANTITY_DIGITS = 4


def line_without(line: DraftLine, taken: Set[str], digits: int = 2) -> DraftLine | None:
    """The line for the pieces of work that are not taken, at the price it has for all; None when none is left.

    A line that names no work is given back as it is. The price of a step stays that of the whole number: it is the
    visit that reached it.
    """
    left = tuple(key for key in line.keys if key not in taken)
    if len(left) == len(line.keys):
        return line
    if not left:
        return None
    share = Decimal(len(left)) / len(line.keys)
    return replace(
        line,
        quantity=round_money(line.quantity * share, QUANTITY_DIGITS),
        allowance=round_money(line.allowance * share, digits),
        why=f"{len(left)} of {len(line.keys)}; the others are billed already or left off",
        keys=left,
    )
