"""How a message would read: on the next visit in the diary, with what is known of it now."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from django.conf import settings

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from trimops.outbox.domain.sms_size import SmsSize, foreign_signs, sms_size
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.message_values import MessageFacts
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.selectors.day_arrivals import ClockSpan, arrival_at
from visits.selectors.draft_content import draft_content
from visits.selectors.messages.message_facts import News, message_facts
from visits.selectors.messages.texts_in_use import TextsInUse
from visits.selectors.messages.written_message import Written, written_mail, written_sms

LATER = timedelta(minutes=35)
DAY = timedelta(days=1)
AHEAD = (VisitState.PLANNED, VisitState.CONFIRMED)
REPORT_SAMPLE = (
    "Visit report: 28 cows done.\n\nFor the vet: cow 101, left hind.\nBlocks to come off: 24 March: cow 7."
)


@dataclass(frozen=True)
class MessagePreview:
    """`visit` is None where the diary holds none: then an invented farm stands in. `sms` is None for a report."""

    visit: Visit | None
    mail: Written
    sms: Written | None
    size: SmsSize | None
    foreign: str


def message_preview(
    business: Business, kind: MessageKind, language: str, texts: TextsInUse, now: datetime
) -> MessagePreview:
    """As somebody who reads `language` would get it. KeyError where a text holds a place that there is none of."""
    visit = _next_visit(business, now)
    facts = _facts(visit, kind, now) if visit else _invented(business, now)
    if kind is MessageKind.REPORT:
        facts = replace(facts, report=REPORT_SAMPLE, link="The report is attached.")
        return MessagePreview(visit, written_mail(kind, facts, texts, language, ""), None, None, "")
    stop = f"{settings.SITE_ADDRESS}/stop/…/"
    sms = written_sms(kind, facts, texts, language, stop)
    # because: the dots of the preview stand for letters of the plain alphabet, 24 of them
    real = sms.body.replace("…", "x" * 24)
    mail = written_mail(kind, facts, texts, language, stop)
    return MessagePreview(visit, mail, sms, sms_size(real), foreign_signs(real))


def _next_visit(business: Business, now: datetime) -> Visit | None:
    rows = Visit.objects.within(Scope(business.pk)).in_state(*AHEAD).filter(planned_start__gt=now)
    return rows.select_related("farm", "business", "van__trimmer").order_by("planned_start", "id").first()


def _facts(visit: Visit, kind: MessageKind, now: datetime) -> MessageFacts:
    hour = visit.planned_start or now
    if kind is MessageKind.TOMORROW:
        stop = arrival_at(visit, now)
        news = News(kind, hour, "", arrive=stop.arrive if stop else None, draft=draft_content(visit, now))
        return replace(message_facts(visit, news, now), link=f"{settings.SITE_ADDRESS}/list/…/")
    news = News(kind, hour, "", before=hour - DAY, arrive=_span(kind, hour))
    return message_facts(visit, news, hour - LATER)


def _span(kind: MessageKind, hour: datetime) -> ClockSpan | None:
    if kind is MessageKind.LATE:
        hour = hour + LATER
    elif kind is not MessageKind.ON_THE_WAY:
        return None
    return ClockSpan(hour - timedelta(minutes=10), hour, hour + timedelta(minutes=15))


def _invented(business: Business, now: datetime) -> MessageFacts:
    hour = (now + DAY).astimezone(business.zone).replace(hour=9, minute=40)
    early, late = hour - timedelta(minutes=15), hour + timedelta(minutes=25)
    return MessageFacts(
        "Low Croft", business.name, business.zone, business.phone, "Who comes", hour, hour - DAY, early, late,
        minutes=35, cows=2, cow_lines=("101: lame", "7: block due"), cow_numbers=("101", "7"),
        link=f"{settings.SITE_ADDRESS}/list/…/",
    )  # fmt: skip
