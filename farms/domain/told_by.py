"""How a person of a farm is told of visits, and in which language."""

from enum import StrEnum


class ToldBy(StrEnum):
    """The way in which a person of a farm is told."""

    NOT_TOLD = ""
    MAIL = "mail"
    SMS = "sms"

    @property
    def label(self) -> str:
        return {"": "not told", "mail": "by e-mail", "sms": "by SMS"}[self.value]


LANGUAGES = {
    "en": "English",
    "cy": "Cymraeg",
    "ga": "Gaeilge",
    "gd": "Gàidhlig",
    "nl": "Nederlands",
    "de": "Deutsch",
    "fr": "français",
    "es": "español",
    "it": "italiano",
    "pt": "português",
    "da": "dansk",
    "sv": "svenska",
    "nb": "norsk",
    "pl": "polski",
    "ro": "română",
    "lt": "lietuvių",
}
"""Languages in which somebody may be written to, by their own names."""
FALLBACK = "en"
