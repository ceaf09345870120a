"""A draft becomes an invoice or a credit note: numbered, dated, drawn and frozen in one transaction."""

from datetime import date, datetime

from django.db import transaction

from invoicing.domain.creditor_reference import creditor_reference
from invoicing.domain.due_day import due_day
from invoicing.models import FarmTerms, Invoice, InvoiceState, MoneyRules
from invoicing.selectors.kept_amounts import KeptRows, kept_amounts, kept_rows
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.parties import buyer_of, payment_of, seller_of
from invoicing.services.keep_papers import keep_papers
from invoicing.services.let_go_of_work import let_go_of_work
from invoicing.services.lock_invoices import lock_invoices
from invoicing.services.lock_period import refuse_locked
from invoicing.services.refuse_over_credit import refuse_over_credit
from invoicing.services.set_off_credit import set_off_credit
from invoicing.services.take_number import take_number
from invoicing.services.tell_money_news import tell_money_news
from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.outbox.domain.webhook_events import WebhookEvent

AS_DRAFTED = ("business", "farm", "visit", "corrects", "issued_by", "papers")
"""Links that issuing does not touch, or that are to rows at hand."""
SET_BY_ISSUING = (
    *("state", "is_open", "number", "creditor_reference", "issued_on", "issued_at", "issued_by"),
    *("tax_point", "due_on", "payer", "seller", "buyer", "payment", "papers"),
)
TOTALS = ("line_sum", "allowances", "charges", "net", "tax", "gross", "payable")


class AlreadyIssued(RuleBroken):
    """An issued invoice is never issued again nor changed."""

    code = "already_issued"


class NothingToBill(RuleBroken):
    """The draft has no lines."""

    code = "nothing_to_bill"


class DraftGone(RuleBroken):
    """Somebody took the draft away meanwhile."""

    code = "draft_gone"


class MorePaidThanBilled(RuleBroken):
    """What was paid before is more than the invoice: the rest would stand on no account."""

    code = "more_paid_than_billed"


class TotalsDiffer(RuleBroken):
    """The totals kept with the draft are not those of its lines."""

    code = "totals_differ"


@transaction.atomic
def issue_invoice(*, invoice: Invoice, at: datetime, by: User) -> Invoice:
    """Take the next number of the series and freeze the draft with its parties, totals and papers.

    All or nothing: the counter row is locked last and until the end, so a crash or a refusal gives the number back.
    AlreadyIssued on the second press of the button, PeriodLocked when its day or tax point lies in a closed period,
    InvoiceIncomplete when an address is missing, and what the parts refuse. A credit note lets go of the work that
    may be billed again, and is set off against its invoice where that is open.
    """
    row = _locked(invoice)
    kept, rules = kept_rows(row), money_rules(row.scope)
    _refuse(row, kept)
    day = local_day(at, row.business.zone)
    if row.is_credit_note:
        row.tax_point = day  # because: it counts when it is given, however long it was a draft
    # Of two days the earlier one is locked first.
    earlier, what = min((day, "The day of issue"), (row.tax_point, "The tax point"))
    refuse_locked(scope=row.scope, day=earlier, what=what)
    _freeze(row, day, rules)
    row.issued_on, row.issued_at, row.issued_by = day, at, by
    row.number = take_number(invoice=row, day=day, rules=rules)
    row.creditor_reference = _reference(row)
    row.papers = keep_papers(invoice=row, rows=kept, rules=rules)
    row.state, row.is_open = InvoiceState.ISSUED, row.payable > 0
    # The database holds the constraints; asking it beforehand would only keep all others waiting for their number.
    row.full_clean(AS_DRAFTED, validate_unique=False, validate_constraints=False)
    row.save(update_fields=SET_BY_ISSUING)
    if row.corrects is not None:
        _credit(row, row.corrects, at, by)
    tell_money_news(invoice=row, event=WebhookEvent.INVOICE_ISSUED, at=at, once=f"issued {row.pk}")
    return row


def _locked(invoice: Invoice) -> Invoice:
    """The draft, and what it corrects with it: whatever settles invoices locks them in the same order."""
    keys = [key for key in (invoice.pk, invoice.corrects_id) if key is not None]
    rows = lock_invoices(scope=invoice.scope, keys=keys, links=("business", "farm"))
    if invoice.pk not in rows:
        raise DraftGone("This draft is not there any more: somebody has taken it away.")
    row = rows[invoice.pk]
    if row.corrects_id is not None:
        row.corrects = rows[row.corrects_id]
    return row


def _refuse(row: Invoice, kept: KeptRows) -> None:
    if row.is_issued:
        raise AlreadyIssued(f"This is {row.get_kind_display().lower()} {row.number} already.")
    amounts = kept_amounts(row, kept)
    if not amounts.line_nets:
        raise NothingToBill("The draft has no lines: there is nothing to bill.")
    wrong = [name for name in TOTALS if getattr(row, name) != getattr(amounts, name)]
    if wrong:
        raise TotalsDiffer(
            "The totals of the draft are not those of its lines: open it and save it once more."
        )
    if row.payable < 0 and not row.is_credit_note:
        raise MorePaidThanBilled(
            "More was paid before than is billed now: put down what of it this invoice takes up, "
            "and note the rest as a payment."
        )
    if row.corrects is not None:
        refuse_over_credit(credit_note=row, original=row.corrects)


def _freeze(row: Invoice, day: date, rules: MoneyRules) -> None:
    """Parties, the way to pay and the due day, as they are now. A credit note is to whom its invoice was."""
    row.seller, row.payment = seller_of(row.business, rules), payment_of(row.business, rules)
    if row.corrects is not None:
        row.buyer, row.due_on = row.corrects.buyer, day
        return
    row.farm.business = row.business  # because: it is one business, read once
    payer = row.payer or row.farm.payer
    terms = FarmTerms.objects.within(row.scope).filter(farm_id=row.farm_id).first()
    own, usual = terms.payment_days if terms else None, row.business.payment_days
    row.payer, row.buyer = payer, buyer_of(row.farm, payer)
    row.due_on = due_day(day, own, payer.payment_days if payer else None, usual)


def _reference(row: Invoice) -> str:
    """Of an invoice; empty where its number is too long for one, which is then quoted itself."""
    try:
        return "" if row.is_credit_note else creditor_reference(row.number)
    except ValueError:
        return ""


def _credit(row: Invoice, original: Invoice, at: datetime, by: User) -> None:
    let_go_of_work(credit_note=row)
    if original.is_open and row.is_open:
        set_off_credit(credit_note=row, invoice=original, at=at, by=by)
        row.refresh_from_db(fields=["settled", "is_open"])
