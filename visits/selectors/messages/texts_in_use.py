"""The text of a message: the business's own in the language asked for, else its own in English, else the house's."""

from dataclasses import dataclass

from farms.domain.told_by import FALLBACK
from trimops.kernel.scope import Scope
from visits.domain.messages.house_texts import HOUSE_TEXTS, HouseText, TextPart
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageText


@dataclass(frozen=True)
class TextsInUse:
    """Own texts by (kind, language)."""

    own: dict[tuple[str, str], MessageText]

    def part(self, kind: MessageKind, name: TextPart, language: str) -> tuple[str, str]:
        """The text, and the language that it is written in."""
        for tried in dict.fromkeys((language, FALLBACK)):
            row = self.own.get((kind.value, tried))
            text: str = getattr(row, name) if row else ""
            if text:
                return text, tried
        return HOUSE_TEXTS[kind].part(name), FALLBACK

    def in_language(self, kind: MessageKind, language: str) -> HouseText:
        """All three parts as they go to whoever reads `language`."""
        subject, body, short = (self.part(kind, name, language)[0] for name in ("subject", "body", "short"))
        return HouseText(subject, body, short)

    def without(self, kind: MessageKind, language: str) -> "TextsInUse":
        """As if this one were not written."""
        return TextsInUse({key: row for key, row in self.own.items() if key != (kind.value, language)})

    def with_row(self, row: MessageText) -> "TextsInUse":
        """As if this one were kept already."""
        return TextsInUse({**self.own, (row.kind, row.language): row})


def texts_of(scope: Scope) -> TextsInUse:
    """One query."""
    return TextsInUse({(row.kind, row.language): row for row in MessageText.objects.within(scope)})
