"""What the page of the watch shows: who is watched over, whom to tell, what came of it."""

from collections.abc import Sequence
from dataclasses import dataclass

from trimops.kernel.scope import Scope
from trimops.outbox.models import Outgoing
from visits.domain.lone_watch.call_names import call_start
from visits.models import LoneWatch, WatchCall, WatchContact, WatchEvent, WatchRules
from visits.selectors.lone_watch.open_watches import open_watches
from visits.selectors.lone_watch.ways_out import addresses_of, ways_out

NEWEST = 20


@dataclass(frozen=True)
class ListedContact:
    """Somebody on the list; `is_reached`: something from here really arrives at them."""

    contact: WatchContact
    addresses: Sequence[str]
    is_reached: bool


@dataclass(frozen=True)
class CallLine:
    """A call, and for each of its messages (way, address, where it stands)."""

    call: WatchCall
    messages: Sequence[Outgoing]


def rules_of(scope: Scope) -> WatchRules | None:
    return WatchRules.objects.within(scope).select_related("changed_by").first()


def listed_contacts(scope: Scope) -> list[ListedContact]:
    """All on the list, in their turn."""
    rows = WatchContact.objects.within(scope).select_related("van")
    ways = ways_out()
    return [
        ListedContact(row, list(addresses_of(row).values()), bool(ways & set(addresses_of(row))))
        for row in rows
    ]


def watches_now(scope: Scope) -> list[LoneWatch]:
    return list(open_watches(scope).select_related("trimmer", "visit__farm", "van"))


def watches_before(scope: Scope) -> list[LoneWatch]:
    """The newest that are over and of which more is to be told than that all went well; and tests."""
    rows = LoneWatch.objects.within(scope).filter(ended_at__isnull=False)
    return list(rows.select_related("trimmer", "visit__farm", "van").order_by("-ended_at", "-id")[:NEWEST])


def events_of(watch: LoneWatch) -> list[WatchEvent]:
    return list(WatchEvent.objects.within(watch.scope).filter(watch=watch))


def calls_of(watch: LoneWatch) -> list[CallLine]:
    """Each call with its messages, in order, in two queries."""
    sent = Outgoing.objects.within(watch.scope).filter(once__startswith=call_start(watch.pk)).order_by("id")
    messages = list(sent.defer("body", "secret"))
    rows = WatchCall.objects.within(watch.scope).filter(watch=watch)
    return [
        CallLine(call, [one for one in messages if one.once.startswith(call_start(watch.pk, call.number))])
        for call in rows
    ]
