"""A mail is tried once; what came of it is kept, whatever it was."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from django.core.cache import cache
from django.db import transaction

from invoicing.domain.sending_backoff import next_try
from invoicing.domain.sending_states import SendingState
from invoicing.models import Invoice, Sending
from invoicing.services.close_invoice_link import close_invoice_link
from invoicing.services.hand_to_mail_server import (
    MailRefused,
    MailServerAway,
    MailUnclear,
    hand_to_mail_server,
)
from invoicing.services.make_invoice_link import NewInvoiceLink, make_invoice_link
from invoicing.services.make_mail import make_mail
from invoicing.services.note_sending import note_sending
from trimops.kernel.errors import RuleBroken

AWAY, AWAY_SECONDS = "mail_server_is_away", 60


@dataclass(frozen=True)
class _Begun:
    """A try that is ours alone, and the link that its mail carries."""

    sending: Sending
    link: NewInvoiceLink | None


@dataclass(frozen=True)
class _Outcome:
    state: SendingState
    words: str
    for_good: bool = False


def hand_over_sending(*, sending: Sending, clock: Callable[[], datetime]) -> Sending | None:
    """Hand the mail to the server if it is due; None where it is not, or another process has it.

    After a server that could not be reached at all, mails wait a minute where they are: a run of a hundred invoices
    finds out once that it is away, not a hundred times.

    `clock` is read when it begins and when it ends, since a slow server may take minutes.

    That it is going is committed before the server is spoken to. So a second run, or a run after a crash, finds it
    going and leaves it: whether that mail went is then for a person to say (`sweep_sendings`).
    """
    if is_server_away():
        return None
    begun = _begin(sending, clock())
    return None if begun is None else _end(begun, _talk(begun), clock())


def is_server_away() -> bool:
    """Whether the mail server could not be reached within the last minute."""
    return bool(cache.get(AWAY))


def look_for_server_again() -> None:
    """A person wants it tried now."""
    cache.delete(AWAY)


@transaction.atomic(durable=True)
def _begin(sending: Sending, at: datetime) -> _Begun | None:
    row = sending.locked()
    if not _is_due(row, at):
        return None
    row.state, row.began_at, row.tries, row.next_try_at = SendingState.GOING.value, at, row.tries + 1, None
    row.full_clean()
    row.save()
    note_sending(sending=row, state=SendingState.GOING, at=at, words=f"Try {row.tries}")
    return _Begun(row, _link(row, at))


def _is_due(row: Sending, at: datetime) -> bool:
    if row.left_at is not None:
        return False
    if row.state == SendingState.QUEUED:
        return row.next_try_at is None or row.next_try_at <= at
    return row.state == SendingState.FAILED and row.next_try_at is not None and row.next_try_at <= at


def _link(row: Sending, at: datetime) -> NewInvoiceLink | None:
    """A new one for each try: only its hash is kept, so the last one cannot be told again."""
    if not row.with_link or row.invoice_id is None:
        return None
    invoice = Invoice.objects.within(row.scope).select_related("farm").get(pk=row.invoice_id)
    return make_invoice_link(invoice=invoice, at=at)


def _talk(begun: _Begun) -> _Outcome:
    try:
        mail = make_mail(sending=begun.sending, link=begun.link)
    except (RuleBroken, ValueError) as fault:
        return _Outcome(SendingState.FAILED, f"The mail could not be made: {fault}", for_good=True)
    try:
        words = hand_to_mail_server(mail=mail)
    except MailServerAway as fault:
        cache.set(AWAY, True, AWAY_SECONDS)
        return _Outcome(SendingState.FAILED, str(fault))
    except MailRefused as fault:
        return _Outcome(SendingState.FAILED, str(fault), fault.for_good)
    except MailUnclear as fault:
        return _Outcome(SendingState.UNCLEAR, str(fault))
    return _Outcome(SendingState.HANDED_OVER, words)


@transaction.atomic(durable=True)
def _end(begun: _Begun, outcome: _Outcome, at: datetime) -> Sending:
    try:
        row = begun.sending.locked()
    except Sending.DoesNotExist:  # because: its farm was erased while the mail was on its way
        return begun.sending
    note_sending(sending=row, state=outcome.state, at=at, words=outcome.words)
    if begun.link is not None and outcome.state is SendingState.FAILED:
        close_invoice_link(link=begun.link.row, at=at)
    if row.tries != begun.sending.tries or row.state not in (SendingState.GOING, SendingState.UNCLEAR):
        return row  # because: a person had it sent again meanwhile; the log tells what came of this try
    row.state, row.last_words = outcome.state.value, outcome.words[:500]
    if outcome.state is SendingState.HANDED_OVER:
        row.handed_over_at = at
    if outcome.state is SendingState.FAILED and not outcome.for_good:
        row.next_try_at = next_try(row.tries, at)
    row.full_clean()
    row.save()
    return row
