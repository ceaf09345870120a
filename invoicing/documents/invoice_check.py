"""A paper whose figures do not add up, or that lacks what the law wants on it, is not printed.

Sums after EN 16931 (BR-CO-10 to 17 and BR-S-08), to the cent: each figure is worked out anew from quantities and
prices and by the rounding rule of the business, since the official rules let the tax of a rate be wrong by 0.99. What
else must stand there is in `invoice_must_say`.
"""

from collections.abc import Iterator
from decimal import Decimal
from itertools import islice

from invoicing.documents.invoice_content import InvoicePaper
from invoicing.documents.invoice_must_say import missing_words
from invoicing.documents.unprintable import unprintable_words
from invoicing.domain.amounts import (
    AmountLine,
    RoundingRule,
    WholeAmount,
    amount_due,
    invoice_amounts,
    line_net,
    sum_of_allowances,
    sum_of_charges,
    sum_of_line_nets,
    total_with_tax,
    total_without_tax,
)
from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money


class InvoiceIncomplete(RuleBroken):
    """The paper cannot be printed as it is; the message says what to mend."""

    code = "invoice_incomplete"


def check_invoice(paper: InvoicePaper) -> None:
    """Raises InvoiceIncomplete with every fault in one sentence each; a draft may still lack what is not known."""
    faults = [*wrong_sums(paper)]
    if paper.number is not None:
        faults += [*missing_words(paper), *unprintable_words(paper)]
    if faults:
        raise InvoiceIncomplete(" ".join(faults))


def wrong_sums(paper: InvoicePaper) -> Iterator[str]:
    """A sentence for each figure that is not what the rules make of the lines."""
    yield from islice(_lines(paper), 3)  # because: one wrong rounding makes each of a hundred lines wrong
    yield from _tax(paper)
    whole, nets = _whole(paper), (line.net for line in paper.lines)
    for what, printed, added, rule in (
        ("sum of the lines", paper.sum_of_lines, sum_of_line_nets(nets), "BR-CO-10"),
        ("sum of the discounts", paper.allowances, sum_of_allowances(whole), "BR-CO-11"),
        ("sum of the charges", paper.charges, sum_of_charges(whole), "BR-CO-12"),
    ):
        if printed != added:
            yield f"The {what} is {added}, not {printed} ({rule})."
    net = total_without_tax(paper.sum_of_lines, paper.allowances, paper.charges)
    if net != paper.net:  # BR-CO-13
        yield "The total without tax is not the sum of the lines, less discounts, plus charges."
    if sum((row.tax for row in paper.tax_rows), Decimal(0)) != paper.tax:  # BR-CO-14
        yield "The tax is not the sum over the rates."
    if total_with_tax(paper.net, paper.tax) != paper.gross:  # BR-CO-15
        yield "The total is not net and tax together."
    if amount_due(paper.gross, paper.paid, paper.rounding) != paper.due:  # BR-CO-16
        yield "What is due is not the total less what was paid, plus what was rounded."


def _whole(paper: InvoicePaper) -> list[WholeAmount]:
    return [
        WholeAmount(part.is_charge, part.amount, part.tax_category, part.tax_percent) for part in paper.whole
    ]


def _lines(paper: InvoicePaper) -> Iterator[str]:
    for position, line in enumerate(paper.lines, start=1):
        if line.allowance != round_money(line.allowance, paper.digits):
            yield f"The discount of line {position} has more decimals than {paper.currency} has."
        net = line_net(line.quantity, line.unit_price, paper.digits, line.allowance)
        if net != line.net:
            yield f"Line {position} comes to {net}, not {line.net}."


def _tax(paper: InvoicePaper) -> Iterator[str]:
    """BR-S-08 and its like for what is taxed, BR-CO-17 by the business's rule for the tax."""
    rules = (paper.rounding_rule,) if paper.rounding_rule else tuple(RoundingRule)
    found = {(row.category, row.percent): (row.taxable, row.tax) for row in paper.tax_rows}
    right = [_tax_by(paper, rule) for rule in rules]
    taxable = {key: amount for key, (amount, _) in found.items()}
    if len(found) != len(paper.tax_rows) or taxable != {key: amount for key, (amount, _) in right[0].items()}:
        yield "The net amounts by tax rate are not the sums of the lines."
    elif found not in right:
        yield "The tax of a rate is not that rate of what is taxed, rounded as the business rounds."


def _tax_by(paper: InvoicePaper, rule: RoundingRule) -> dict[tuple[str, Decimal], tuple[Decimal, Decimal]]:
    lines = [AmountLine(Decimal(1), line.net, line.tax_category, line.tax_percent) for line in paper.lines]
    shares = invoice_amounts(lines, _whole(paper), paper.digits, rule).tax_shares
    return {(share.category, share.percent): (share.taxable, share.tax) for share in shares}
