"""Papers of the money on their way: the office's list, and what an invoice's own pages tell of its mails."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from django.db.models import Exists, OuterRef, Q

from invoicing.domain.sent_papers import SentPaper
from invoicing.models import Invoice, Sending
from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import OutgoingState
from trimops.outbox.selectors.outgoing_rows import WAITS, OutgoingLook, outgoing_look
from trimops.tenancy.querysets import TenantQuerySet

WENT_OR_GOES = [*WAITS, OutgoingState.WENT.value]
STUCK = [OutgoingState.FAILED.value, OutgoingState.LAPSED.value]
BLOBS = ("outgoing__body", "outgoing__secret")
MOST_NEVER_MAILED = 50
_TOLD = ("urgent", "due", "planned", "done", "plain")


class SendingFilter(StrEnum):
    """Which sendings a list shows."""

    TO_SEE_TO = "to-see-to"
    WAITING = "waiting"
    ALL = "all"

    @property
    def label(self) -> str:
        return {"to-see-to": "To see to", "waiting": "Waiting", "all": "All"}[self.value]


@dataclass(frozen=True)
class SendingRow:
    """A sending with the mark and the words that its mail is shown with."""

    sending: Sending
    look: OutgoingLook


@dataclass(frozen=True)
class SendingCounts:
    """How many wait, and how many did not go and are not settled otherwise."""

    waiting: int
    to_see_to: int


def waiting(scope: Scope) -> TenantQuerySet[Sending]:
    """What goes by itself."""
    return _rows(scope).filter(outgoing__state__in=WAITS)


def to_see_to(scope: Scope) -> TenantQuerySet[Sending]:
    """What did not go and is tried no more, unless a later mail with the same paper has made it good."""
    # Asked for later, not at the same time: of two addresses, one that was served does not stand for the other.
    later = Sending.objects.within(scope).filter(
        outgoing__written_at__gt=OuterRef("outgoing__written_at"),
        outgoing__state__in=WENT_OR_GOES,
        paper=OuterRef("paper"),
        farm=OuterRef("farm"),
    )
    same = (
        Q(invoice=OuterRef("invoice"), reminder__isnull=True)
        | Q(reminder=OuterRef("reminder"))
        | Q(paper=SentPaper.STATEMENT.value)
    )
    return _rows(scope).filter(~Exists(later.filter(same)), outgoing__state__in=STUCK)


def sendings(scope: Scope, shown: SendingFilter) -> TenantQuerySet[Sending]:
    """The newest first, with farm, invoice and mail, without papers and texts."""
    rows = {SendingFilter.TO_SEE_TO: to_see_to, SendingFilter.WAITING: waiting, SendingFilter.ALL: _rows}
    return rows[shown](scope).select_related("farm", "invoice").order_by("-outgoing__written_at", "-id")


def sending_counts(scope: Scope) -> SendingCounts:
    """What the desk tells of. Two queries."""
    return SendingCounts(waiting(scope).count(), to_see_to(scope).count())


def sendings_of(invoice: Invoice) -> list[SendingRow]:
    """Each mail with that invoice, the newest first. One query."""
    rows = _rows(invoice.scope).filter(invoice=invoice).order_by("-outgoing__written_at", "-id")
    return [sending_row(row) for row in rows]


def told_first(rows: Sequence[SendingRow]) -> SendingRow | None:
    """Of the mails that were asked for last (one for each address) the one that most wants to be looked at."""
    last = [row for row in rows if row.sending.outgoing.written_at == rows[0].sending.outgoing.written_at]
    return min(last, key=lambda row: _TOLD.index(row.look.mark), default=None)


def never_mailed(scope: Scope, since: date) -> list[Invoice]:
    """Papers issued on that day or later of which no mail went or goes, the oldest first. One query.

    Of a farm that was erased nobody knows any more what was mailed.
    """
    mails = Sending.objects.within(scope).filter(invoice=OuterRef("pk"), outgoing__state__in=WENT_OR_GOES)
    rows = Invoice.objects.within(scope).issued().filter(~Exists(mails), issued_on__gte=since)
    rows = rows.filter(farm__erased_at__isnull=True)
    return list(rows.select_related("farm").order_by("issued_on", "id")[:MOST_NEVER_MAILED])


def sending_of_mail(scope: Scope, outgoing_id: int) -> Sending | None:
    """What of the money that mail brings; None where it brings none."""
    return Sending.objects.within(scope).filter(outgoing_id=outgoing_id).first()


def sending_row(sending: Sending) -> SendingRow:
    """How a sending is shown; wants its mail at hand."""
    return SendingRow(sending, outgoing_look(sending.outgoing))


def _rows(scope: Scope) -> TenantQuerySet[Sending]:
    return Sending.objects.within(scope).select_related("outgoing").defer(*BLOBS)
