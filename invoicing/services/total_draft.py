"""The totals of a draft follow from its lines and from what is taken off or added on the whole."""

from collections.abc import Sequence
from decimal import Decimal

from django.db import transaction

from invoicing.domain.amounts import invoice_amounts
from invoicing.domain.minor_units import minor_digits
from invoicing.models import DocumentAmount, Invoice, InvoiceLine
from invoicing.selectors.kept_amounts import amount_line, amounts_of
from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money

LINKS = ("business", "farm", "visit", "corrects", "issued_by", "papers")
"""What totals do not touch."""


class LessThanNothing(RuleBroken):
    """More is taken off than there is."""

    code = "less_than_nothing"


@transaction.atomic
def total_draft(*, invoice: Invoice) -> Invoice:
    """Reckon and keep the totals of a locked draft; percentages on the whole are taken of the lines as they are now.

    LessThanNothing where the discounts come to more than the lines.
    """
    digits = minor_digits(invoice.currency)
    lines = list(InvoiceLine.objects.within(invoice.scope).filter(invoice=invoice))
    nets = invoice_amounts([amount_line(line) for line in lines], (), digits).line_nets
    changed = []
    for line, net in zip(lines, nets, strict=True):
        if line.net != net:
            line.net = net
            changed.append(line)
    whole = _whole_amounts(invoice, lines, digits)
    _put_totals(invoice, lines, whole)
    InvoiceLine.objects.within(invoice.scope).bulk_update(changed, ["net"])
    _keep(invoice)
    return invoice


@transaction.atomic
def total_new_draft(*, invoice: Invoice, lines: Sequence[InvoiceLine]) -> Invoice:
    """The same for a draft that is not stored yet, with its first lines, whose nets are right; it is stored."""
    _put_totals(invoice, lines, ())
    _keep(invoice)
    return invoice


def _put_totals(invoice: Invoice, lines: Sequence[InvoiceLine], whole: Sequence[DocumentAmount]) -> None:
    figures = amounts_of(invoice, lines, whole)
    if figures.net < 0 or any(share.taxable < 0 for share in figures.tax_shares):
        raise LessThanNothing("More would be taken off than is billed at that tax rate: take less off.")
    invoice.line_sum, invoice.net, invoice.tax = figures.line_sum, figures.net, figures.tax
    invoice.allowances, invoice.charges = figures.allowances, figures.charges
    invoice.gross, invoice.payable = figures.gross, figures.payable


def _keep(invoice: Invoice) -> None:
    """Checked and saved. The database holds the constraints, and who drafts has locked what they are about."""
    invoice.full_clean(LINKS, validate_unique=False, validate_constraints=False)
    invoice.save()


def _whole_amounts(invoice: Invoice, lines: list[InvoiceLine], digits: int) -> list[DocumentAmount]:
    """What is on the whole, percentages reckoned anew; one whose tax rate no line has any more falls away."""
    rows = list(DocumentAmount.objects.within(invoice.scope).filter(invoice=invoice))
    kept = []
    for row in rows:
        rate = (row.tax_category, row.tax_percent)
        nets = [line.net for line in lines if (line.tax_category, line.tax_percent) == rate]
        if row.percent is None:
            kept.append(row)
        elif nets:
            base = sum(nets, Decimal(0))
            row.base, row.amount = base, round_money(base * row.percent / 100, digits)
            row.save()
            kept.append(row)
        else:
            row.delete()
    return kept
