"""Amounts of an invoice by the rules of EN 16931: exact decimals, tax per rate on the summed net, rounded
once.

Rule names are the standard's (BR-CO-10 to BR-CO-17; text read in the official schematron, validation 1.3.16).
Rounding is half away from zero to the currency's minor unit.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from trimops.kernel.money import round_money


@dataclass(frozen=True)
class AmountLine:
    """Quantity and unit price without tax, the tax category (UNCL 5305: S, Z, E, AE, O) and rate in percent."""

    quantity: Decimal
    unit_price: Decimal
    tax_category: str
    tax_percent: Decimal


@dataclass(frozen=True)
class TaxShare:
    """One line of the tax breakdown: what is taxed at that rate, and the tax (BT-116, BT-117)."""

    category: str
    percent: Decimal
    taxable: Decimal
    tax: Decimal


@dataclass(frozen=True)
class InvoiceAmounts:
    """Totals in the invoice currency."""

    line_nets: tuple[Decimal, ...]
    net: Decimal
    tax_shares: tuple[TaxShare, ...]
    tax: Decimal
    gross: Decimal


def line_net(quantity: Decimal, unit_price: Decimal, digits: int = 2) -> Decimal:
    """Net of one line (BT-131): quantity x unit price, rounded once."""
    return round_money(quantity * unit_price, digits)


def sum_of_line_nets(nets: Iterable[Decimal]) -> Decimal:
    """BR-CO-10: the sum of line nets is exactly the sum of the rounded lines."""
    return sum(nets, Decimal(0))


def total_without_tax(
    line_sum: Decimal, allowances: Decimal = Decimal(0), charges: Decimal = Decimal(0)
) -> Decimal:
    """BR-CO-13: total without tax = sum of line nets - allowances + charges of the whole document."""
    return line_sum - allowances + charges


def tax_of(taxable: Decimal, percent: Decimal, digits: int = 2) -> Decimal:
    """BR-CO-17: tax of a category and rate = taxable amount x rate / 100, rounded once."""
    return round_money(taxable * percent / 100, digits)


def total_tax(shares: Iterable[TaxShare]) -> Decimal:
    """BR-CO-14: the invoice's tax is the sum over categories and rates."""
    return sum((share.tax for share in shares), Decimal(0))


def total_with_tax(net: Decimal, tax: Decimal) -> Decimal:
    """BR-CO-15: total with tax = total without tax + tax."""
    return net + tax


def amount_due(gross: Decimal, paid: Decimal) -> Decimal:
    """BR-CO-16 (without a rounding amount): due = total with tax - paid."""
    return gross - paid


def invoice_amounts(lines: Sequence[AmountLine], digits: int = 2) -> InvoiceAmounts:
    """All totals of an invoice or, with negative quantities, a credit note. An empty invoice is all zeros."""
    nets = tuple(line_net(line.quantity, line.unit_price, digits) for line in lines)
    taxable: dict[tuple[str, Decimal], Decimal] = {}
    for line, net in zip(lines, nets, strict=True):
        key = (line.tax_category, line.tax_percent)
        taxable[key] = taxable.get(key, Decimal(0)) + net
    shares = tuple(
        TaxShare(category, percent, amount, tax_of(amount, percent, digits))
        for (category, percent), amount in sorted(taxable.items(), key=lambda item: (item[0][0], -item[0][1]))
    )
    net = total_without_tax(sum_of_line_nets(nets))
    tax = total_tax(shares)
    return InvoiceAmounts(nets, net, shares, tax, total_with_tax(net, tax))
