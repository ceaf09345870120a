"""What leaves the house, for the pages that tell of it."""

from collections.abc import Collection
from dataclasses import dataclass
from enum import StrEnum

from django.db.models import Count

from trimops.errands.load_tasks import load_tasks
from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import (
    ONLY_IN_THE_FOLDER,
    SECRET_PLACE,
    Channel,
    OutgoingState,
    Topic,
)
from trimops.outbox.models import Outgoing, OutgoingEvent, OutgoingPart
from trimops.outbox.owners import OWNERS
from trimops.tenancy.querysets import TenantQuerySet

WAITS = (OutgoingState.WAITING.value, OutgoingState.GOING.value)
NOT_GONE = (OutgoingState.FAILED.value, OutgoingState.LAPSED.value)
_MARKS = {
    OutgoingState.WAITING: "planned",
    OutgoingState.GOING: "planned",
    OutgoingState.WENT: "done",
    OutgoingState.FAILED: "urgent",
    OutgoingState.LAPSED: "plain",
    OutgoingState.LEFT: "plain",
}


class OutgoingFilter(StrEnum):
    """Which messages a list shows."""

    NOT_GONE = "not-gone"
    WAITING = "waiting"
    WENT = "went"
    ALL = "all"

    @property
    def label(self) -> str:
        return {"not-gone": "Did not go", "waiting": "Waiting", "went": "Went", "all": "All"}[self.value]

    @property
    def states(self) -> Collection[str]:
        """Stored values."""
        found: dict[str, Collection[str]] = {
            "not-gone": NOT_GONE,
            "waiting": WAITS,
            "went": (OutgoingState.WENT.value,),
        }
        return found.get(self.value, [state.value for state in OutgoingState])


@dataclass(frozen=True)
class OutgoingLook:
    """The mark and the words a message is shown with; `waits`: it goes by itself."""

    mark: str
    words: str
    waits: bool


@dataclass(frozen=True)
class OutgoingRow:
    """A message with its look."""

    outgoing: Outgoing
    look: OutgoingLook


@dataclass(frozen=True)
class OutgoingCounts:
    """How many wait and how many did not go."""

    waiting: int
    failed: int


@dataclass(frozen=True)
class OutgoingStory:
    """One message: its log as it came, its text without the link it carries, and what hangs on it without its bytes."""

    row: OutgoingRow
    log: list[OutgoingEvent]
    text: str
    has_link: bool
    parts: list[OutgoingPart]
    why_not_again: str

    @property
    def may_go_again(self) -> bool:
        return OutgoingState(self.row.outgoing.state).may_go_again and not self.why_not_again

    @property
    def may_be_left(self) -> bool:
        return self.row.outgoing.state in (OutgoingState.WAITING, *NOT_GONE)


def outgoing_look(row: Outgoing) -> OutgoingLook:
    """What did not surely go never wears the mark of what is done."""
    state = OutgoingState(row.state)
    if state is OutgoingState.WAITING and row.next_try_at is not None:
        return OutgoingLook("due", "Did not go yet", waits=True)
    if state is OutgoingState.WENT and row.last_words == ONLY_IN_THE_FOLDER:
        return OutgoingLook("due", "Only in the mail folder", waits=False)
    if row.may_have_gone and state in (OutgoingState.FAILED, OutgoingState.LAPSED):
        return OutgoingLook("urgent", "Not known whether it went", waits=False)
    return OutgoingLook(_MARKS[state], state.label, waits=state.value in WAITS)


def outgoing_rows(
    scope: Scope,
    topics: Collection[Topic],
    shown: OutgoingFilter = OutgoingFilter.ALL,
    channel: Channel | None = None,
) -> TenantQuerySet[Outgoing]:
    """The newest first, without texts and papers."""
    rows = Outgoing.objects.within(scope).filter(topic__in=[topic.value for topic in topics])
    if shown is not OutgoingFilter.ALL:
        rows = rows.filter(state__in=shown.states)
    if channel is not None:
        rows = rows.filter(channel=channel.value)
    return rows.defer("body", "secret")


def outgoing_counts(scope: Scope, topics: Collection[Topic]) -> OutgoingCounts:
    """One query."""
    rows = Outgoing.objects.within(scope).filter(topic__in=[topic.value for topic in topics])
    found = rows.filter(state__in=[*WAITS, OutgoingState.FAILED.value]).order_by().values("state")
    counts = {row["state"]: row["count"] for row in found.annotate(count=Count("pk"))}
    return OutgoingCounts(
        sum(counts.get(state, 0) for state in WAITS), counts.get(OutgoingState.FAILED.value, 0)
    )


def outgoing_story(row: Outgoing) -> OutgoingStory:
    """Two queries."""
    return OutgoingStory(
        OutgoingRow(row, outgoing_look(row)),
        list(OutgoingEvent.objects.within(row.scope).filter(outgoing=row)),
        row.body.strip().replace(SECRET_PLACE, "…"),
        SECRET_PLACE in row.body,
        list(OutgoingPart.objects.within(row.scope).filter(outgoing=row).defer("content")),
        why_not_again(row) if OutgoingState(row.state).may_go_again else "",
    )


def why_not_again(row: Outgoing) -> str:
    """Why nobody can have it tried again, in words; empty where one can."""
    if not row.body:
        return "What it said is not kept any more: send what it was about anew from its own page."
    load_tasks()
    if SECRET_PLACE in row.body and Topic(row.topic) not in OWNERS:
        return "It carried a link, which is kept nowhere: make a new one where this one was made."
    return ""
