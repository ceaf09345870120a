"""What a message about a visit may tell, read for it."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from visits.documents.draft_list_content import DraftList
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.message_values import MessageFacts
from visits.models import Visit
from visits.selectors.day_arrivals import ClockSpan
from visits.selectors.messages.list_link import list_link


@dataclass(frozen=True)
class News:
    """What is to be told of a visit.

    `hour` is the visit's, or the one that is gone; `before` the one counted on until now. `arrive`: when the van
    likely comes. `draft`: the cows to bring. `once` tells this news from any other of its kind about the visit.
    """

    kind: MessageKind
    hour: datetime
    once: str
    before: datetime | None = None
    arrive: ClockSpan | None = None
    draft: DraftList | None = None


def message_facts(visit: Visit, news: News, now: datetime) -> MessageFacts:
    """The farm, van with its trimmer, and business of the visit must be at hand; asks no more."""
    business, arrive = visit.business, news.arrive
    facts = MessageFacts(
        farm=visit.farm.name,
        business=business.name,
        zone=business.zone,
        phone=business.phone,
        trimmer=_who_comes(visit),
        hour=news.hour,
        before=news.before,
        cows=visit.head_count,
    )
    if arrive is not None:
        since = now if news.kind is MessageKind.ON_THE_WAY else news.hour
        minutes = max(0, round((arrive.likely - since) / timedelta(minutes=1)))
        facts = replace(facts, earliest=arrive.earliest, latest=arrive.latest, minutes=minutes)
    return _with_cows(facts, visit, news.draft) if news.draft else facts


def _with_cows(facts: MessageFacts, visit: Visit, draft: DraftList) -> MessageFacts:
    cows = [cow for group in draft.groups for cow in group.cows]
    lines = [f"{cow.number}: {cow.why}{f' ({cow.warning})' if cow.warning else ''}" for cow in cows]
    numbers = [cow.number for cow in cows]
    # because: a farm whose list is empty is still visited for the cows that it thinks of itself
    count = len(cows) or visit.head_count
    return replace(facts, cows=count, cow_lines=lines, cow_numbers=numbers, link=list_link(visit))


def _who_comes(visit: Visit) -> str:
    return str(visit.van.trimmer) if visit.van else visit.business.name
