"""What stands in the places of a text, in the language that it is written in."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from zoneinfo import ZoneInfo

from visits.domain.messages.days_in_language import day_in


@dataclass(frozen=True)
class MessageFacts:
    """What a message may tell. Instants aware; None and "" where there is nothing to say.

    `cow_lines` are the cows to bring with their why, as a mail tells them; `cow_numbers` as an SMS does.
    """

    farm: str
    business: str
    zone: ZoneInfo
    phone: str = ""
    trimmer: str = ""
    hour: datetime | None = None
    before: datetime | None = None
    earliest: datetime | None = None
    latest: datetime | None = None
    minutes: int = 0
    cows: int = 0
    cow_lines: Sequence[str] = ()
    cow_numbers: Sequence[str] = ()
    link: str = ""
    report: str = ""


def message_values(facts: MessageFacts, language: str, *, short: bool) -> dict[str, str]:
    """A value for every place that there is; `short`: for an SMS."""
    return {
        "farm": facts.farm,
        "business": facts.business,
        "phone": facts.phone,
        "trimmer": facts.trimmer,
        "day": _day(facts.hour, facts, language),
        "hour": _clock(facts.hour, facts),
        "before": _moment(facts.before, facts, language),
        "from": _clock(facts.earliest or facts.hour, facts),
        "until": _clock(facts.latest or facts.hour, facts),
        "minutes": str(facts.minutes),
        "cows": str(facts.cows),
        "list": ", ".join(facts.cow_numbers) if short else "\n".join(facts.cow_lines),
        "link": facts.link,
        "report": facts.report,
    }


def _moment(at: datetime | None, facts: MessageFacts, language: str) -> str:
    return f"{_day(at, facts, language)}, {_clock(at, facts)}" if at else ""


def _day(at: datetime | None, facts: MessageFacts, language: str) -> str:
    return day_in(language, at.astimezone(facts.zone).date()) if at else ""


def _clock(at: datetime | None, facts: MessageFacts) -> str:
    return f"{at.astimezone(facts.zone):%H:%M}" if at else ""
