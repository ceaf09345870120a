"""A quantity as people type it, with comma or point, and a quantity as they read it."""

import re
from decimal import ROUND_DOWN, ROUND_FLOOR, Decimal

from trimops.paper.figures import decimals, quantity
from visits.domain.kit.stock_kinds import Unit

MOST = Decimal("99999999.99")
"""What a line of the ledger holds."""
HALF, POURED = Decimal("0.5"), Decimal(1)
_BLANKS = re.compile(r"[\s'\u2019\u00a0\u202f]")
_NUMBER = re.compile(r"[-\u2212+]?[0-9]+(?:[.,][0-9]+)?|[-\u2212+]?[.,][0-9]+", re.ASCII)
_UNCLEAR = re.compile(r"[-\u2212+]?[1-9][0-9]{0,2},[0-9]{3}", re.ASCII)


def read_quantity(text: str, places: int = 2) -> Decimal:
    """ "40", "2,5", "2.5", "1 200" and "-3" are numbers, to so many decimals at most.

    ValueError in words for what is none, and, with two decimals, for "1,200", which may be a thousand or little more
    than one.
    """
    packed = _BLANKS.sub("", text)
    if places < 3 and _UNCLEAR.fullmatch(packed):
        whole, rest = packed.split(",")
        raise ValueError(f"is that {whole}{rest} or {whole}.{rest}? Write it without the comma")
    if not _NUMBER.fullmatch(packed):
        raise ValueError(f"“{text.strip()}” is no number; write 40 or 2.5")
    found = Decimal(packed.replace(",", ".").replace("\u2212", "-"))
    if abs(found) > MOST:
        raise ValueError(f"“{text.strip()}” is more than can be kept")
    if decimals(found) > places:
        raise ValueError(f"“{text.strip()}” has more than {places} decimals")
    return found


def quantity_words(amount: Decimal, unit: Unit) -> str:
    """ "24", "1 pair", "3 pairs", "1,600 ml": what is counted by the piece needs no word."""
    figure = quantity(amount)
    if unit is Unit.EACH:
        return figure
    if unit is Unit.PAIR:
        return f"{figure} {'pair' if amount == 1 else 'pairs'}"
    return f"{figure} {unit.label}"


def seen_words(amount: Decimal, unit: Unit) -> str:
    """What lies there as one would see it: pieces down to whole and half ones, whole ml and g.

    A share of a pair of gloves or of a disc is used with each cow; what is left over of the half is not told.
    """
    step = HALF if unit.is_whole else POURED
    seen = (amount / step).to_integral_value(ROUND_FLOOR) * step
    if not unit.is_whole or seen == seen.to_integral_value():
        return quantity_words(seen, unit)
    whole = seen.to_integral_value(ROUND_DOWN)
    sign, figure = "\u2212" if seen < 0 else "", quantity(abs(whole)) if whole else ""
    return f"{sign}{figure}\u00bd{'' if unit is Unit.EACH else ' pair' if not whole else ' pairs'}"
