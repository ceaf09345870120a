"""A person decides on a reminder that was put forward: it goes out, or it does not."""

from datetime import datetime

from django.db import transaction

from invoicing.documents.reminder_pdf import reminder_pdf
from invoicing.domain.fingerprint import fingerprint
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.reminder_steps import ReminderState
from invoicing.domain.sent_papers import SentPaper
from invoicing.models import Invoice, Reminder, Sending
from invoicing.selectors.interest_due import Claim, ClaimRules, claim_of, claim_rules
from invoicing.selectors.money_addresses import money_addresses
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.reminder_content import (
    reminder_content,
    reminder_subject,
    reminder_text,
    working_words,
)
from invoicing.services.make_mail import MailPaper
from invoicing.services.queue_sending import queue_sending
from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money


class AlreadyDecided(RuleBroken):
    """Somebody has decided on it before."""

    code = "already_decided"


class PaidMeanwhile(RuleBroken):
    """The invoice is not open any more."""

    code = "paid_meanwhile"


class ClaimNotReckoned(RuleBroken):
    """The interest that the business claims cannot be told."""

    code = "claim_not_reckoned"


class WhyMissing(RuleBroken):
    """A reminder is dropped for a reason."""

    code = "why_missing"


@transaction.atomic
def approve_reminder(*, reminder: Reminder, at: datetime, by: User) -> list[Sending]:
    """Freeze its figures and paper as of today, and queue it to the farm's addresses. The mails; none: print it.

    AlreadyDecided on the second press, PaidMeanwhile when nothing is open, ClaimNotReckoned without a reference rate.
    """
    invoice = reminder.invoice.locked()
    row = _undecided(reminder)
    if not invoice.is_open:
        raise PaidMeanwhile(f"{invoice.number} is paid: there is nothing to remind of.")
    day = local_day(at, row.business.zone)
    rules = claim_rules(row.scope, money_rules(row.scope))
    claim = claim_of(invoice, day, rules)
    if claim.problem:
        raise ClaimNotReckoned(claim.problem)
    _freeze(row, invoice, claim, rules)
    row.reckoned_on = day
    content = reminder_content(invoice, row.step, day, claim, rules)
    row.pdf = reminder_pdf(content)
    row.pdf_sha256 = fingerprint(row.pdf)
    row.state, row.decided_at, row.decided_by = ReminderState.APPROVED.value, at, by
    row.full_clean()
    row.save()
    return [
        queue_sending(
            farm=invoice.farm,
            paper=MailPaper(SentPaper.REMINDER, invoice, row),
            address=address,
            subject=reminder_subject(invoice, content.total),
            body=reminder_text(invoice),
            at=at,
            by=by,
        )
        for address in money_addresses(invoice.farm)
    ]


@transaction.atomic
def drop_reminder(*, reminder: Reminder, because: str, at: datetime, by: User) -> Reminder:
    """This step does not go out, and why. The next one comes when its time has passed. AlreadyDecided, WhyMissing."""
    reminder.invoice.locked()
    row = _undecided(reminder)
    if not because.strip():
        raise WhyMissing("Say why it is not sent: the reason is kept.")
    row.state, row.decided_at, row.decided_by = ReminderState.DROPPED.value, at, by
    row.dropped_because = because.strip()[:200]
    row.full_clean()
    row.save()
    return row


def _undecided(reminder: Reminder) -> Reminder:
    try:
        row = reminder.locked()
    except Reminder.DoesNotExist as gone:
        raise AlreadyDecided("That reminder fell away: its invoice is not overdue any more.") from gone
    if row.state != ReminderState.PROPOSED.value:
        decided = ReminderState(row.state).label.lower()
        raise AlreadyDecided(f"That reminder of {row.invoice.number} is {decided} already.")
    return row


def _freeze(row: Reminder, invoice: Invoice, claim: Claim, rules: ClaimRules) -> None:
    row.open_amount = round_money(invoice.open_amount, minor_digits(invoice.currency))
    row.interest, row.fixed_sum = claim.interest, claim.fixed_sum
    row.working = working_words(claim.stretches, rules.terms.days_in_year) if rules.terms else ""
