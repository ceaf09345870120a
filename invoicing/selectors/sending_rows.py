"""Papers on their way, for the office's list and log."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from django.db.models import Exists, OuterRef, Q

from invoicing.domain.sending_states import ONLY_IN_THE_FOLDER, SendingState, SentPaper
from invoicing.models import Invoice, Sending, SendingEvent
from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet

WENT_OR_GOES = [SendingState.QUEUED.value, SendingState.GOING.value, SendingState.HANDED_OVER.value]
BLOBS = ("attachment", "body")
MOST_NEVER_MAILED = 50
_MOVING = (SendingState.QUEUED, SendingState.GOING)
_STUCK = Q(state=SendingState.FAILED.value, next_try_at__isnull=True)
_UNCLEAR = Q(state=SendingState.UNCLEAR.value)
_TOLD = ("urgent", "due", "planned", "done", "plain")
_MARKS = {
    SendingState.QUEUED: "planned",
    SendingState.GOING: "planned",
    SendingState.HANDED_OVER: "done",
    SendingState.FAILED: "urgent",
    SendingState.UNCLEAR: "urgent",
}


class SendingFilter(StrEnum):
    """Which sendings a list shows."""

    TO_SEE_TO = "to-see-to"
    WAITING = "waiting"
    FAILED = "failed"
    UNCLEAR = "unclear"
    ALL = "all"

    @property
    def label(self) -> str:
        return {
            "to-see-to": "To see to",
            "waiting": "Waiting",
            "failed": "Did not go",
            "unclear": "Not known",
            "all": "All",
        }[self.value]


@dataclass(frozen=True)
class SendingRow:
    """A sending with the mark and the words that it is shown with; `waits`: it goes by itself."""

    sending: Sending
    mark: str
    words: str
    waits: bool


@dataclass(frozen=True)
class SendingCounts:
    """How many wait, did not go, and are not known, each without what is settled otherwise."""

    waiting: int
    failed: int
    unclear: int

    @property
    def to_see_to(self) -> int:
        return self.failed + self.unclear


def waiting(scope: Scope) -> TenantQuerySet[Sending]:
    """What goes by itself: queued, going now, or to be tried again."""
    again = Q(state=SendingState.FAILED.value, next_try_at__isnull=False)
    moving = Q(state__in=[state.value for state in _MOVING])
    return _rows(scope).filter(moving | again, left_at__isnull=True)


def failed(scope: Scope) -> TenantQuerySet[Sending]:
    """What did not go and is tried no more, unless the paper went later."""
    return _open(scope).filter(_STUCK)


def unclear(scope: Scope) -> TenantQuerySet[Sending]:
    """What may have gone or not, unless the paper went later."""
    return _open(scope).filter(_UNCLEAR)


def to_see_to(scope: Scope) -> TenantQuerySet[Sending]:
    """What a person should look at."""
    return _open(scope).filter(_STUCK | _UNCLEAR)


def sendings(scope: Scope, shown: SendingFilter) -> TenantQuerySet[Sending]:
    """The newest first, with farm and invoice, without papers and texts."""
    rows = {
        SendingFilter.TO_SEE_TO: to_see_to,
        SendingFilter.WAITING: waiting,
        SendingFilter.FAILED: failed,
        SendingFilter.UNCLEAR: unclear,
        SendingFilter.ALL: _rows,
    }[shown](scope)
    return rows.select_related("farm", "invoice", "queued_by")


def sending_counts(scope: Scope) -> SendingCounts:
    """What the desk tells of. Three queries."""
    return SendingCounts(waiting(scope).count(), failed(scope).count(), unclear(scope).count())


def sendings_of(invoice: Invoice) -> list[SendingRow]:
    """Each mail with that invoice, the newest first. One query."""
    rows = _rows(invoice.scope).filter(invoice=invoice).select_related("queued_by")
    return [sending_row(row) for row in rows]


def told_first(rows: Sequence[SendingRow]) -> SendingRow | None:
    """Of the mails that were asked for last (one for each address) the one that most wants to be looked at."""
    last = [row for row in rows if row.sending.queued_at == rows[0].sending.queued_at]
    return min(last, key=lambda row: _TOLD.index(row.mark), default=None)


def never_mailed(scope: Scope, since: date) -> list[Invoice]:
    """Papers issued on that day or later of which no mail went or goes, the oldest first. One query.

    Of a farm that was erased nobody knows any more what was mailed.
    """
    mails = Sending.objects.within(scope).filter(invoice=OuterRef("pk"), state__in=WENT_OR_GOES)
    rows = Invoice.objects.within(scope).issued().filter(~Exists(mails), issued_on__gte=since)
    rows = rows.filter(farm__erased_at__isnull=True)
    return list(rows.select_related("farm").order_by("issued_on", "id")[:MOST_NEVER_MAILED])


def sending_row(sending: Sending) -> SendingRow:
    """How a sending is shown: what did not surely go never wears the mark of what is done."""
    state = SendingState(sending.state)
    if sending.left_at is not None:
        return SendingRow(sending, "plain", f"{state.label}, left", waits=False)
    if state is SendingState.FAILED and sending.next_try_at is not None:
        return SendingRow(sending, "due", "Did not go yet", waits=True)
    if state is SendingState.HANDED_OVER and sending.last_words == ONLY_IN_THE_FOLDER:
        return SendingRow(sending, "due", "Only in the mail folder", waits=False)
    return SendingRow(sending, _MARKS[state], state.label, waits=state in _MOVING)


def log_of(sending: Sending) -> list[SendingEvent]:
    """The sending's log, as it came."""
    return list(SendingEvent.objects.within(sending.scope).filter(sending=sending))


def _rows(scope: Scope) -> TenantQuerySet[Sending]:
    return Sending.objects.within(scope).defer(*BLOBS)


def _open(scope: Scope) -> TenantQuerySet[Sending]:
    """Without what a person left, and without what a later mail with the same paper has made good."""
    # Asked for later, not at the same time: of two addresses, one that was served does not stand for the other.
    later = Sending.objects.within(scope).filter(
        queued_at__gt=OuterRef("queued_at"),
        state__in=WENT_OR_GOES,
        left_at__isnull=True,
        paper=OuterRef("paper"),
        farm=OuterRef("farm"),
    )
    same = (
        Q(invoice=OuterRef("invoice"), reminder__isnull=True)
        | Q(reminder=OuterRef("reminder"))
        | Q(paper=SentPaper.STATEMENT.value)
    )
    return _rows(scope).filter(~Exists(later.filter(same)), left_at__isnull=True)
