"""How much of a product goes into a tub. Arithmetic only: what to use and how strong, the label and local rules say."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from typing import Literal

from visits.domain.kit.stock_kinds import Unit

_SPACES = str.maketrans("", "", " \t\u00a0\u2009\u202f")
_NUMBER = r"([0-9]{1,6}(?:[.,][0-9]{1,4})?)"
_PARTS = re.compile(rf"1(?::|in|to){_NUMBER}")
_PERCENT = re.compile(rf"{_NUMBER}%(?:(w|v)/v)?")
_PER_LITRE = re.compile(rf"{_NUMBER}(g|ml)(?:/|per)(?:l|litre)")

MeasuredIn = Literal["ml", "g"]


@dataclass(frozen=True)
class Dilution:
    """`share` of product in what is ready mixed: ml per ml, or g per ml. `units` says which of the two it may be."""

    share: Fraction
    units: Sequence[MeasuredIn]


def read_dilution(text: str) -> Dilution | None:
    """A dilution as labels and trimmers write it; None where it is none of these, or more product than tub.

    "1:100", "1 in 100", "1 to 100": one part in a hundred parts **ready mixed**, so that 10 l take 100 ml and water up
    to 10 l (common practice, and the sum of trade-facts 5.1). Some labels mean one part and a hundred parts of water,
    which would be 99 ml: less than a hundredth apart at 1:100, but a tenth at 1:10, so the label decides.
    Of a powder the parts are grams to millilitres, as per cent w/v. "2 %" says nothing of weight or volume: it is both.
    "20 g/l" and "10 ml per l" are what they say.
    """
    plain = text.lower().translate(_SPACES)
    if found := _PARTS.fullmatch(plain):
        parts = _fraction(found[1])
        return _sensible(1 / parts, ("ml", "g")) if parts else None
    if found := _PERCENT.fullmatch(plain):
        either: dict[str | None, Sequence[MeasuredIn]] = {"w": ("g",), "v": ("ml",), None: ("ml", "g")}
        return _sensible(_fraction(found[1]) / 100, either[found[2]])
    if found := _PER_LITRE.fullmatch(plain):
        return _sensible(_fraction(found[1]) / 1000, ("g",) if found[2] == "g" else ("ml",))
    return None


def disinfectant_amount(
    dilution: str, litres: Decimal, *, counted_in: Unit | None = None
) -> tuple[Decimal, MeasuredIn] | None:
    """What goes into so many litres ready mixed, to 0.01, in ml or g; None where the dilution cannot be read.

    1:100 in 10 l is 100 ml; 2 % w/v in 10 l is 200 g (trade-facts 5.1). Where the dilution says neither weight nor
    volume, a product that is `counted_in` grams is weighed and any other is measured in ml.
    """
    read = read_dilution(dilution)
    if read is None or not litres > 0:
        return None
    unit: MeasuredIn = "g" if counted_in is Unit.GRAM and "g" in read.units else read.units[0]
    exact = read.share * Fraction(litres) * 1000
    amount = Decimal(exact.numerator * 100) / Decimal(exact.denominator)
    return amount.quantize(Decimal(1), ROUND_HALF_UP) / 100, unit


def _fraction(number: str) -> Fraction:
    return Fraction(number.replace(",", "."))


def _sensible(share: Fraction, units: Sequence[MeasuredIn]) -> Dilution | None:
    """Nothing, and more product than tub, are slips of the thumb."""
    return Dilution(share, units) if 0 < share <= 1 else None
