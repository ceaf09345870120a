"""Tax of an invoice by category and rate, rounded where the business rounds it (BR-CO-17 of EN 16931)."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import ROUND_DOWN, Decimal
from enum import StrEnum

from trimops.kernel.money import round_money

ZERO = Decimal(0)
Part = tuple[str, Decimal, Decimal]  # category, percent, net


class RoundingRule(StrEnum):
    """Where tax is rounded. `PER_RATE` is that of EN 16931; the others are allowed to some (ask your accountant).

    `TOTAL` and `TOTAL_DOWN` stay within one unit a rate; `PER_LINE` may drift by half a unit a line (`tax_is_near`).
    """

    PER_RATE = "per_rate"
    PER_LINE = "per_line"
    TOTAL = "total"
    TOTAL_DOWN = "total_down"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    RoundingRule.PER_RATE: "Once for each rate",
    RoundingRule.PER_LINE: "On each line",
    RoundingRule.TOTAL: "Once, on the total",
    RoundingRule.TOTAL_DOWN: "Once, on the total, downwards",
}


@dataclass(frozen=True)
class TaxShare:
    """One line of the tax breakdown: what is taxed at that rate, and the tax (BT-116, BT-117)."""

    category: str
    percent: Decimal
    taxable: Decimal
    tax: Decimal


def tax_of(taxable: Decimal, percent: Decimal, digits: int = 2) -> Decimal:
    """BR-CO-17: tax of a category and rate = taxable amount x rate / 100, rounded once."""
    return rounded(taxable * percent / 100, digits)


def tax_is_near(taxable: Decimal, percent: Decimal, tax: Decimal) -> bool:
    """What the official rules demand of BR-CO-17: less than one unit away (they compare absolute values)."""
    return abs(abs(tax) - round_money(abs(taxable) * percent / 100)) < 1


def tax_shares(parts: Sequence[Part], digits: int, rule: RoundingRule) -> tuple[TaxShare, ...]:
    """By category, the highest rate first."""
    taxable: dict[tuple[str, Decimal], Decimal] = {}
    for category, percent, net in parts:
        taxable[category, percent] = taxable.get((category, percent), ZERO) + net
    taxes = _taxes(parts, taxable, digits, rule)
    return tuple(
        TaxShare(category, percent, taxable[category, percent], taxes[category, percent])
        for category, percent in sorted(taxable, key=lambda key: (key[0], -key[1]))
    )


def _taxes(
    parts: Sequence[Part], taxable: Mapping[tuple[str, Decimal], Decimal], digits: int, rule: RoundingRule
) -> dict[tuple[str, Decimal], Decimal]:
    if rule is RoundingRule.PER_RATE:
        return {key: tax_of(amount, key[1], digits) for key, amount in taxable.items()}
    if rule is RoundingRule.PER_LINE:
        taxes = dict.fromkeys(taxable, ZERO)
        for category, percent, net in parts:
            taxes[category, percent] += tax_of(net, percent, digits)
        return taxes
    exact = {key: amount * key[1] / 100 for key, amount in taxable.items()}
    whole = sum(exact.values(), ZERO)
    total = _towards_nought(whole, digits) if rule is RoundingRule.TOTAL_DOWN else rounded(whole, digits)
    return _shared_out(exact, total, digits)


def _shared_out(
    exact: Mapping[tuple[str, Decimal], Decimal], total: Decimal, digits: int
) -> dict[tuple[str, Decimal], Decimal]:
    """`total` shared out over the rates by largest remainder, so that BR-CO-14 holds to the minor unit.

    Each share is cut towards nought; what is missing (or too much) goes, a unit each, to those cut most.
    """
    shares = {key: _towards_nought(amount, digits) for key, amount in exact.items()}
    step = Decimal(1).scaleb(-digits)
    missing = int((total - sum(shares.values(), ZERO)) / step)
    way = -1 if missing < 0 else 1
    most_cut = sorted(exact, key=lambda key: ((shares[key] - exact[key]) * way, key))
    for key in most_cut[: abs(missing)]:
        shares[key] += step * way
    return shares


def rounded(amount: Decimal, digits: int) -> Decimal:
    """Rounded half away from zero; nought has no sign (else "-0.00" is printed)."""
    return round_money(amount, digits) + ZERO


def _towards_nought(amount: Decimal, digits: int) -> Decimal:
    return amount.quantize(Decimal(1).scaleb(-digits), rounding=ROUND_DOWN) + ZERO
