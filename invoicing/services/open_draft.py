"""A draft is opened for a change by hand: locked, and the change kept with its reason."""

from dataclasses import dataclass
from datetime import datetime

from invoicing.models import DraftEdit, Invoice
from invoicing.services.lock_draft import locked_draft
from invoicing.services.want_reason import want_reason
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken


class CreditIsFixed(RuleBroken):
    """The lines of a credit note follow from its invoice."""

    code = "credit_is_fixed"


class ChangeRefused(RuleBroken):
    """The change does not make sense; the message says what to mend."""

    code = "change_refused"


@dataclass(frozen=True)
class Hand:
    """Who changes a draft, when, and why."""

    by: User
    at: datetime
    reason: str


def open_draft(*, invoice: Invoice, hand: Hand, lines: bool = True) -> Invoice:
    """The locked draft. ReasonMissing, NotADraft; CreditIsFixed where `lines` of a credit note would change."""
    want_reason(words=hand.reason, ask="Say why: the reason is kept with the draft.")
    row = locked_draft(invoice=invoice)
    if lines and row.is_credit_note:
        raise CreditIsFixed("A credit note is not changed line by line: discard it and credit anew.")
    return row


def keep_edit(*, invoice: Invoice, hand: Hand, what: str) -> DraftEdit:
    """Keep what was changed, before and after in words (cut to 300 letters)."""
    edit = DraftEdit(business_id=invoice.business_id, invoice=invoice, at=hand.at, by=hand.by)
    edit.what, edit.reason = what[:300], hand.reason.strip()[:200]
    edit.full_clean()
    edit.save()
    return edit
