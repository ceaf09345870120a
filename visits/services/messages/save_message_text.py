"""A business writes its own text of a message, or goes back to the house's."""

from dataclasses import dataclass

from django.db import transaction

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.domain.messages.house_texts import PARTS, HouseText
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.text_template import check_text
from visits.models import MessageText
from visits.selectors.messages.texts_in_use import texts_of


@dataclass(frozen=True)
class TextWord:
    """Which text, in which language, and how it reads."""

    kind: MessageKind
    language: str
    text: HouseText


def lock_texts(scope: Scope, kind: MessageKind) -> None:
    """Nobody else writes a text of this kind until the transaction ends: what one language says hangs on another."""
    list(MessageText.objects.within(scope).filter(kind=kind.value).order_by("pk").locked())


@transaction.atomic
def save_message_text(*, business: Business, word: TextWord) -> MessageText | None:
    """Keep what differs from the text that would be used without it; None where nothing does.

    TextMakesNoSense names the part and what to mend.
    """
    for part in PARTS:
        check_text(word.text.part(part), word.kind.places, part, word.kind.needs(part))
    scope = Scope(business.pk)
    rows = MessageText.objects.within(scope).filter(kind=word.kind.value, language=word.language)
    row = rows.locked().first() or MessageText(
        business=business, kind=word.kind.value, language=word.language
    )
    beneath = texts_of(scope).without(word.kind, word.language).in_language(word.kind, word.language)
    for part in PARTS:
        text = word.text.part(part).replace("\r\n", "\n").strip()
        setattr(row, part, "" if text == beneath.part(part) else text)
    if not any(getattr(row, part) for part in PARTS):
        rows.delete()
        return None
    row.full_clean()
    row.save()
    return row
