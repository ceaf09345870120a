"""Amounts of an invoice by the rules of EN 16931: exact decimals, tax per category and rate on the summed net.

Rule names are the standard's (BR-CO-10 to BR-CO-17; text read in the official schematron, validation 1.3.16).
Rounding is half away from zero to the currency's minor unit. Whatever is handed in finer than that (an allowance, a
prepayment) is rounded first, so that each figure on paper is the figure that was added. Turning all signs turns all
results: nothing depends on which way money flows.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from invoicing.domain.tax_shares import ZERO, RoundingRule, TaxShare, rounded, tax_is_near, tax_of, tax_shares

__all__ = [
    "AmountLine",
    "InvoiceAmounts",
    "RoundingRule",
    "TaxShare",
    "WholeAmount",
    "amount_due",
    "invoice_amounts",
    "line_net",
    "sum_of_allowances",
    "sum_of_charges",
    "sum_of_line_nets",
    "tax_is_near",
    "tax_of",
    "total_tax",
    "total_with_tax",
    "total_without_tax",
]


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
    """Net of one line (BT-131): quantity x unit price less its allowance as printed (BT-136), rounded once."""
    return rounded(quantity * unit_price - rounded(allowance, digits), digits)


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
    whole = [replace(part, amount=rounded(part.amount, digits)) for part in whole]
    prepaid, rounding = rounded(prepaid, digits), rounded(rounding, digits)
    nets = tuple(line_net(line.quantity, line.unit_price, digits, line.allowance) for line in lines)
    parts = [(line.tax_category, line.tax_percent, net) for line, net in zip(lines, nets, strict=True)]
    parts += [(part.tax_category, part.tax_percent, part.signed) for part in whole]
    shares = tax_shares(parts, digits, rule)
    line_sum, allowances, charges = sum_of_line_nets(nets), sum_of_allowances(whole), sum_of_charges(whole)
    net = total_without_tax(line_sum, allowances, charges)
    tax = total_tax(shares)
    gross = total_with_tax(net, tax)
    payable = amount_due(gross, prepaid, rounding)
    return InvoiceAmounts(
        nets, line_sum, allowances, charges, net, shares, tax, gross, prepaid, rounding, payable
    )
