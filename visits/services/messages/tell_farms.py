"""People of a farm are told something of a visit, each by the way that suits them."""

from collections.abc import Sequence
from datetime import datetime, timedelta

from django.db import transaction

from farms.domain.told_by import ToldBy
from farms.models import Contact
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import Outgoing
from trimops.outbox.senders.ready import Part
from trimops.outbox.services.put_out import Message, put_out
from visits.documents.draft_list import draft_list
from visits.domain.messages.quiet_hours import goes_at
from visits.domain.visit_states import VisitState
from visits.models import MessageRules, Visit, VisitMessage
from visits.selectors.messages.message_facts import News, message_facts
from visits.selectors.messages.rules_in_use import rules_of
from visits.selectors.messages.texts_in_use import texts_of
from visits.selectors.messages.told_so_far import hour_known
from visits.selectors.messages.written_message import Written, written_for
from visits.services.tell_hour import tell_hour
from visits.services.visit_change import add_event

USEFUL = timedelta(hours=1)
"""After its hour a message that a visit is off may still keep somebody from waiting; others are of no use."""


@transaction.atomic
def tell_farms(*, visit: Visit, news: News, at: datetime) -> list[VisitMessage]:
    """Write to everybody at the farm who is told, unless this news was written before or its kind is not switched on.

    What names an hour makes the farm count on it; what takes one back, no more. Its moment is minded: quiet hours are
    waited for where that is still in time, and what lies too long is not sent.
    """
    row = _at_hand(visit.locked())
    rules = rules_of(row.business)
    contacts = told_contacts(row)
    if not rules.is_on(news.kind) or not contacts:
        return []
    texts, facts = texts_of(row.scope), message_facts(row, news, at)
    parts = _parts(news)
    written: list[VisitMessage] = []
    for contact in contacts:
        text = written_for(contact, news.kind, facts, texts)
        outgoing = _put_out(
            row, contact, (news, text), parts if contact.told_by == ToldBy.MAIL else (), rules, at
        )
        if outgoing is not None:
            written.append(_keep(row, contact, (news, text), outgoing, at))
    if written:
        _count_on_it(row, news, written, at)
    return written


def told_contacts(visit: Visit) -> list[Contact]:
    """Those of the farm who are told of visits and did not ask to be left alone."""
    rows = Contact.objects.within(visit.scope).filter(farm_id=visit.farm_id, opted_out_at__isnull=True)
    return [contact for contact in rows.exclude(told_by="").order_by("pk") if contact.address_told]


def _at_hand(visit: Visit) -> Visit:
    rows = Visit.objects.within(visit.scope).select_related("farm", "business", "van__trimmer")
    return rows.get(pk=visit.pk)


def _parts(news: News) -> Sequence[Part]:
    if news.draft is None or not news.draft.count:
        return ()
    return (Part(f"draft-list-{news.draft.day:%Y-%m-%d}.pdf", "application/pdf", draft_list(news.draft)),)


def _put_out(
    visit: Visit,
    contact: Contact,
    told: tuple[News, Written],
    parts: Sequence[Part],
    rules: MessageRules,
    at: datetime,
) -> Outgoing | None:
    news, text = told
    goes = goes_at(at, about_hour(news), rules.quiet)
    message = Message(
        channel=Channel.SMS if contact.told_by == ToldBy.SMS else Channel.MAIL,
        topic=Topic.VISIT,
        address=contact.address_told,
        subject=text.subject,
        body=text.body,
        once=f"visit:{visit.pk}:{news.kind.value}:{news.once}:{contact.pk}",
        farm_id=visit.farm_id,
        reply_to=visit.business.email,
        not_before=goes if goes > at else None,
        worthless_after=_worthless(news),
        parts=parts,
    )
    return put_out(business_id=visit.business_id, message=message, at=at)


def about_hour(news: News) -> datetime:
    """The hour that a message is about: of a visit moved the earlier of the two, for cows may be brought in for it."""
    if news.arrive is not None and not news.kind.tells_hour:
        return news.arrive.likely
    return min(news.hour, news.before) if news.before else news.hour


def _worthless(news: News) -> datetime:
    if news.kind.takes_back:
        return news.hour + USEFUL
    return max(news.hour, news.arrive.latest) if news.arrive else news.hour


def _keep(
    visit: Visit, contact: Contact, told: tuple[News, Written], outgoing: Outgoing, at: datetime
) -> VisitMessage:
    news, text = told
    row = VisitMessage(business_id=visit.business_id, visit=visit, contact=contact, kind=news.kind.value)
    row.hour, row.outgoing, row.made_at = news.hour, outgoing, at
    row.latest = news.arrive.latest if news.arrive and text.gives_span else None
    row.full_clean(exclude={"visit", "contact", "outgoing"})
    row.save()
    return row


def _count_on_it(visit: Visit, news: News, written: Sequence[VisitMessage], at: datetime) -> None:
    to = ", ".join(
        f"{ToldBy(row.contact.told_by).label} to {row.contact.name}" for row in written if row.contact
    )
    if news.kind.tells_hour and visit.visit_state in (VisitState.PLANNED, VisitState.CONFIRMED):
        if visit.hour_told != visit.planned_start:
            tell_hour(visit=visit, at=at, by=None, note=f"told its hour {to}")
    elif news.kind.takes_back:
        visit.hour_told = None
        visit.save(update_fields=["hour_told"])
        add_event(visit, before=visit.state, at=at, by=None, note=f"told that its hour is gone {to}")


def still_known(visit: Visit) -> bool:
    """Whether the farm counts on the hour of the diary though the visit does not say so: it was put off and back."""
    return (
        visit.hour_told is None
        and visit.planned_start is not None
        and hour_known(visit) == visit.planned_start
    )
