"""A message as one person of a farm reads it."""

from dataclasses import dataclass

from farms.domain.told_by import ToldBy
from farms.models import Contact
from farms.selectors.stop_link import stop_link
from visits.domain.messages.house_texts import TextPart
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.message_values import MessageFacts, message_values
from visits.domain.messages.text_template import fill, places_used, tidy
from visits.selectors.messages.texts_in_use import TextsInUse


@dataclass(frozen=True)
class Written:
    """`subject` is empty for an SMS. `gives_span`: it says between when and when the van comes."""

    subject: str
    body: str
    gives_span: bool


def written_for(contact: Contact, kind: MessageKind, facts: MessageFacts, texts: TextsInUse) -> Written:
    """By the contact's way and language, with the address at which it can be ended."""
    if contact.told_by == ToldBy.SMS:
        return written_sms(kind, facts, texts, contact.language, stop_link(contact))
    return written_mail(kind, facts, texts, contact.language, stop_link(contact))


def written_mail(
    kind: MessageKind, facts: MessageFacts, texts: TextsInUse, language: str, stop: str
) -> Written:
    """Subject and text; `stop` is the address at the end."""
    subject, _ = _filled("subject", kind, facts, texts, language)
    body, gives_span = _filled("body", kind, facts, texts, language)
    end = f"\n\nTo get no more messages about visits: {stop}\n" if stop else "\n"
    return Written(subject, body + end, gives_span)


def written_sms(
    kind: MessageKind, facts: MessageFacts, texts: TextsInUse, language: str, stop: str
) -> Written:
    """In one line."""
    body, gives_span = _filled("short", kind, facts, texts, language)
    line = " ".join(body.split())
    return Written("", f"{line} Stop: {stop}" if stop else line, gives_span)


def _filled(
    part: TextPart, kind: MessageKind, facts: MessageFacts, texts: TextsInUse, language: str
) -> tuple[str, bool]:
    text, written_in = texts.part(kind, part, language)
    values = message_values(facts, written_in, short=part == "short")
    return tidy(fill(text, values)), "until" in places_used(text)
