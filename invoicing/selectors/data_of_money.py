"""A farm's invoices, payments and account as tables that it takes out.

Only what stands, and only what was told to the farm: the office's notes and its reasons for undoing a mistake may speak
of others.
"""

from datetime import date
from decimal import Decimal

from django.db.models import Min, Q

from farms.models import Farm
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import PaymentMethod, SettledBy
from invoicing.models import Allocation, Invoice, Payment
from invoicing.selectors.farm_account import farm_account
from invoicing.selectors.farm_invoices import farm_invoice
from invoicing.selectors.payment_rows import with_rests
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope
from visits.documents.data_table import Cell, DataTable

Rows = list[tuple[Cell, ...]]


def money_tables(farm: Farm, today: date) -> list[DataTable]:
    """Four tables, in a fixed number of queries for each currency (`business` of the farm at hand).

    They read within the business: a payment of this farm may settle an invoice of its payer's other farm.
    """
    scope = Scope(farm.business_id)
    return [
        _invoices(scope, farm, today),
        _payments(scope, farm),
        _set_against(scope, farm),
        _account(scope, farm, today),
    ]


def currencies_of(farm: Farm) -> list[tuple[str, date]]:
    """Each currency in which the farm was billed or paid, and the first day of it. Two queries."""
    scope = Scope(farm.business_id)
    papers = Invoice.objects.within(scope).issued().filter(farm=farm).order_by()
    payments = Payment.objects.within(scope).standing().filter(farm=farm).order_by()
    found = [
        *papers.values_list("currency").annotate(first=Min("issued_on")),
        *payments.values_list("currency").annotate(first=Min("received_on")),
    ]
    first: dict[str, date] = {}
    for currency, day in found:
        first[currency] = min(day, first.get(currency, day))
    return sorted(first.items())


def _invoices(scope: Scope, farm: Farm, today: date) -> DataTable:
    papers = Invoice.objects.within(scope).issued().filter(farm=farm).select_related("corrects")
    rows: Rows = []
    for paper in papers.defer("seller", "buyer", "payment").order_by("issued_on", "pk"):
        told, sign = farm_invoice(paper, today), paper.sign
        amounts = [paper.net, paper.tax, paper.gross, paper.payable, paper.settled, told.left]
        paid = ("Set off" if not told.left else "Not set off yet") if sign < 0 else told.state.label
        rows.append(
            (
                *(paper.number, paper.get_kind_display(), paper.corrects.number if paper.corrects else ""),
                *(paper.reason, paper.issued_on, paper.tax_point, paper.due_on, paper.order_number),
                *(paper.creditor_reference, paper.currency),
                *(_amount(sign * amount, paper.currency) for amount in amounts),
                paid,
            )
        )
    headings = (
        *("Number", "What", "Corrects", "Why", "Issued", "Tax point", "Due", "Order number"),
        *("Payment reference", "Currency", "Net", "Tax", "With tax", "To pay", "Settled", "Left", "Paid"),
    )
    about = "Invoices and credit notes; amounts of credit notes are below nought."
    return DataTable("invoices", about, headings, rows)


def _payments(scope: Scope, farm: Farm) -> DataTable:
    payments = Payment.objects.within(scope).standing().filter(farm=farm).order_by("received_on", "pk")
    rows: Rows = [
        (
            *(row.pk, row.received_on, _amount(row.amount, row.currency), row.currency),
            *(PaymentMethod(row.method).label, row.payer_name, row.reference),
            _amount(rest, row.currency),
        )
        for row, rest in ((each.payment, each.rest) for each in with_rests(scope, payments))
    ]
    headings = (
        *("Payment key", "Day", "Amount", "Currency", "How", "Paid by", "Reference"),
        "Not set against anything",
    )
    return DataTable("payments", "Money received; below nought: paid back.", headings, rows)


def _set_against(scope: Scope, farm: Farm) -> DataTable:
    mine = Q(invoice__farm=farm) | Q(payment__farm=farm) | Q(credit_note__farm=farm)
    found = Allocation.objects.within(scope).standing().filter(mine)
    found = found.select_related("invoice", "credit_note").order_by("on", "pk")
    rows: Rows = [
        (
            *(row.on, row.invoice.number, SettledBy(row.kind).label),
            *(row.payment_id, row.credit_note.number if row.credit_note else ""),
            *(_amount(row.amount, row.invoice.currency), row.invoice.currency),
        )
        for row in found.defer(*_long("invoice"), *_long("credit_note"))
    ]
    headings = ("Day", "Of", "Settled by", "Payment key", "Credit note", "Amount", "Currency")
    return DataTable(
        "what settled what", "Which payment or credit note went to which invoice.", headings, rows
    )


def _account(scope: Scope, farm: Farm, today: date) -> DataTable:
    rows: Rows = [
        (
            *(line.move.day, line.move.what.label, line.move.number),
            *(line.debit, line.credit, line.balance, currency),
        )
        for currency, first in currencies_of(farm)
        for line in farm_account(scope, farm, first, today, currency).lines
    ]
    headings = ("Day", "What", "Number", "Owed", "Paid or credited", "Owed then", "Currency")
    return DataTable("account", "All of it in order, with what was owed after it.", headings, rows)


def _amount(amount: Decimal, currency: str) -> Decimal:
    return round_money(amount, minor_digits(currency))


def _long(paper: str) -> list[str]:
    return [f"{paper}__{name}" for name in ("seller", "buyer")]
