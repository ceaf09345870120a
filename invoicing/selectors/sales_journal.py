"""The issued papers of a period, with the tax of each by rate."""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from invoicing.domain.amounts import AmountLine, RoundingRule, TaxShare, WholeAmount, invoice_amounts
from invoicing.domain.journal_rows import JournalRow, signed_shares
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.tax_periods import BookDay, Period
from invoicing.models import DocumentAmount, Invoice, InvoiceLine
from invoicing.models.invoice import InvoiceQuerySet
from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope


class BooksDoNotAgree(RuleBroken):
    """The lines of an issued paper do not give the tax that stands on it: no books are made of that."""

    code = "books_do_not_agree"


DAY_COLUMNS = {BookDay.ISSUED: "issued_on", BookDay.TAX_POINT: "tax_point"}
PAPER = (
    *("kind", "number", "buyer", "issued_on", "tax_point", "due_on", "currency"),
    *("rounding_rule", "net", "tax", "gross"),
)
LINE = ("quantity", "unit_price", "tax_category", "tax_percent", "allowance")
WHOLE = ("is_charge", "amount", "tax_category", "tax_percent")


def sales_journal(scope: Scope, period: Period, by: BookDay = BookDay.ISSUED) -> list[JournalRow]:
    """In the order of their days and numbers. Three queries. BooksDoNotAgree names the paper."""
    papers = papers_of(scope, period, by)
    lines: dict[int, list[AmountLine]] = defaultdict(list)
    line_rows = InvoiceLine.objects.within(scope).filter(invoice__in=papers.order_by().values("pk"))
    for key, *line in line_rows.order_by("invoice_id", "position").values_list("invoice_id", *LINE):
        lines[key].append(AmountLine(*line))
    whole: dict[int, list[WholeAmount]] = defaultdict(list)
    whole_rows = DocumentAmount.objects.within(scope).filter(invoice__in=papers.order_by().values("pk"))
    for key, *part in whole_rows.values_list("invoice_id", *WHOLE):
        whole[key].append(WholeAmount(*part))
    told = papers.select_related("farm", "corrects").only(*PAPER, "farm__name", "corrects__number")
    return [_row(paper, lines, whole) for paper in told]


def papers_of(scope: Scope, period: Period, by: BookDay) -> InvoiceQuerySet:
    """Issued invoices and credit notes that fall into the period."""
    column = DAY_COLUMNS[by]
    rows: InvoiceQuerySet = Invoice.objects.within(scope).issued()
    return rows.filter(**{f"{column}__range": (period.first, period.last)}).order_by(column, "number")


def _row(
    paper: Invoice,
    lines: Mapping[int, Sequence[AmountLine]],
    whole: Mapping[int, Sequence[WholeAmount]],
) -> JournalRow:
    digits = minor_digits(paper.currency)
    shares = _shares(paper, lines.get(paper.pk, ()), whole.get(paper.pk, ()), digits)
    net, tax, gross = (
        round_money(paper.sign * amount, digits) for amount in (paper.net, paper.tax, paper.gross)
    )
    return JournalRow(
        paper.pk,
        paper.number,
        paper.is_credit_note,
        paper.corrects.number if paper.corrects else "",
        paper.issued_on or paper.tax_point,
        paper.tax_point,
        paper.due_on,
        paper.buyer.get("name", ""),
        paper.farm.name,
        paper.currency,
        signed_shares(shares, paper.sign),
        net,
        tax,
        gross,
    )


def _shares(
    paper: Invoice, lines: Sequence[AmountLine], whole: Sequence[WholeAmount], digits: int
) -> tuple[TaxShare, ...]:
    amounts = invoice_amounts(lines, whole, digits, RoundingRule(paper.rounding_rule))
    if (amounts.net, amounts.tax) != (paper.net, paper.tax):
        raise BooksDoNotAgree(
            f"The lines of {paper.number} do not give its totals: no books until that is cleared up."
        )
    return amounts.tax_shares
