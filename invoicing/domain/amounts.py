"""Amounts of an invoice by the rules of EN 16931: exact decimals, tax per category and rate on the summed net.

Rule names are the standard's (BR-CO-10 to BR-CO-17; text read in the official schematron, validation 1.3.16).
Rounding is half away from zero to the currency's minor unit.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import ROUND_FLOOR, Decimal
from enum import StrEnum

from trimops.kernel.money import round_money

ZERO = Decimal(0)


class RoundingRule(StrEnum):
    """Where tax is rounded. `PER_RATE` is EN 16931's; the others are allowed to some and lie within its tolerance."""

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
class AmountLine:
    """Quantity and unit price without tax, the tax category (UNCL 5305: S, Z, E, AE, O) and rate in percent.

    `allowance` is taken off the line (BT-136), not negative on a line that is not.
    """

    quantity: Decimal
    unit_price: Decimal
    tax_category: str
    tax_percent: Decimal
    allowance: Decimal = ZERO


@dataclass(frozen=True)
class WholeAmount:
    """An allowance (BG-20) or a charge (BG-21) on the whole document; `amount` not negative."""

    is_charge: bool
    amount: Decimal
    tax_category: str
    tax_percent: Decimal

    @property
    def signed(self) -> Decimal:
        return self.amount if self.is_charge else -self.amount


@dataclass(frozen=True)
class TaxShare:
    """One line of the tax breakdown: what is taxed at that rate, and the tax (BT-116, BT-117)."""

    category: str
    percent: Decimal
    taxable: Decimal
    tax: Decimal


@dataclass(frozen=True)
class InvoiceAmounts:
    """Totals in the invoice currency (BT-131, 106, 107, 108, 109, BG-23, 110, 112, 113, 114, 115)."""

    line_nets: tuple[Decimal, ...]
    line_sum: Decimal
    allowances: Decimal
    charges: Decimal
    net: Decimal
    tax_shares: tuple[TaxShare, ...]
    tax: Decimal
    gross: Decimal
    prepaid: Decimal
    rounding: Decimal
    payable: Decimal


def line_net(quantity: Decimal, unit_price: Decimal, digits: int = 2, allowance: Decimal = ZERO) -> Decimal:
    """Net of one line (BT-131): quantity x unit price less its allowance, rounded once."""
    return round_money(quantity * unit_price - allowance, digits)


def sum_of_line_nets(nets: Iterable[Decimal]) -> Decimal:
    """BR-CO-10: the sum of line nets is exactly the sum of the rounded lines."""
    return sum(nets, ZERO)


def sum_of_allowances(whole: Iterable[WholeAmount]) -> Decimal:
    """BR-CO-11: the allowances of the document."""
    return sum((part.amount for part in whole if not part.is_charge), ZERO)


def sum_of_charges(whole: Iterable[WholeAmount]) -> Decimal:
    """BR-CO-12: the charges of the document."""
    return sum((part.amount for part in whole if part.is_charge), ZERO)


def total_without_tax(line_sum: Decimal, allowances: Decimal = ZERO, charges: Decimal = ZERO) -> Decimal:
    """BR-CO-13: total without tax = sum of line nets - allowances + charges of the whole document."""
    return line_sum - allowances + charges


def total_tax(shares: Iterable[TaxShare]) -> Decimal:
    """BR-CO-14: the invoice's tax is the sum over categories and rates."""
    return sum((share.tax for share in shares), ZERO)


def total_with_tax(net: Decimal, tax: Decimal) -> Decimal:
    """BR-CO-15: total with tax = total without tax + tax."""
    return net + tax


def amount_due(gross: Decimal, paid: Decimal, rounding: Decimal = ZERO) -> Decimal:
    """BR-CO-16: due = total with tax - paid + rounding amount."""
    return gross - paid + rounding


def tax_of(taxable: Decimal, percent: Decimal, digits: int = 2) -> Decimal:
    """BR-CO-17: tax of a category and rate = taxable amount x rate / 100, rounded once."""
    return round_money(taxable * percent / 100, digits)


def invoice_amounts(
    lines: Sequence[AmountLine],
    whole: Sequence[WholeAmount] = (),
    digits: int = 2,
    rule: RoundingRule = RoundingRule.PER_RATE,
    *,
    prepaid: Decimal = ZERO,
    rounding: Decimal = ZERO,
) -> InvoiceAmounts:
    """All totals of an invoice or a credit note. An empty invoice is all zeros."""
    nets = tuple(line_net(line.quantity, line.unit_price, digits, line.allowance) for line in lines)
    parts = [(line.tax_category, line.tax_percent, net) for line, net in zip(lines, nets, strict=True)]
    parts += [(part.tax_category, part.tax_percent, part.signed) for part in whole]
    shares = _tax_shares(parts, digits, rule)
    line_sum, allowances, charges = sum_of_line_nets(nets), sum_of_allowances(whole), sum_of_charges(whole)
    net = total_without_tax(line_sum, allowances, charges)
    tax = total_tax(shares)
    gross = total_with_tax(net, tax)
    payable = amount_due(gross, prepaid, rounding)
    return InvoiceAmounts(
        nets, line_sum, allowances, charges, net, shares, tax, gross, prepaid, rounding, payable
    )


Part = tuple[str, Decimal, Decimal]


def _tax_shares(parts: Sequence[Part], digits: int, rule: RoundingRule) -> tuple[TaxShare, ...]:
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
    step = Decimal(1).scaleb(-digits)
    if rule is RoundingRule.TOTAL_DOWN:
        total = abs(whole).quantize(step, rounding=ROUND_FLOOR).copy_sign(whole)
    else:
        total = round_money(whole, digits)
    return _shared_out(exact, total, step)


def _shared_out(
    exact: Mapping[tuple[str, Decimal], Decimal], total: Decimal, step: Decimal
) -> dict[tuple[str, Decimal], Decimal]:
    """`total` shared out over the rates by largest remainder, so that BR-CO-14 holds to the minor unit."""
    shares = {key: amount.quantize(step, rounding=ROUND_FLOOR) for key, amount in exact.items()}
    missing = int((total - sum(shares.values(), ZERO)) / step)
    by_remainder = sorted(exact, key=lambda key: (shares[key] - exact[key], key))
    for key in by_remainder[:missing]:
        shares[key] += step
    return shares
