"""A wash-down as it was noted, held against what the label says. A word to read, never a ban."""

from dataclasses import dataclass
from decimal import Decimal

from visits.domain.kit.disinfectant_amount import read_dilution


@dataclass(frozen=True)
class WashWord:
    """How strong, and how many minutes it stayed on; None where not said."""

    dilution: str
    minutes: Decimal | None


def wash_doubts(noted: WashWord, label: WashWord) -> tuple[str, ...]:
    """Where the wash-down falls short of the label; what cannot be read or is not said raises no doubt."""
    doubts = []
    if noted.minutes is not None and label.minutes and noted.minutes < label.minutes:
        doubts.append(f"{_plain(noted.minutes)} min on, the label says {_plain(label.minutes)}")
    strong, asked = read_dilution(noted.dilution), read_dilution(label.dilution)
    if strong and asked and strong.share < asked.share:
        doubts.append(f"mixed {noted.dilution}, the label says {label.dilution}")
    return tuple(doubts)


def _plain(minutes: Decimal) -> str:
    return f"{minutes.normalize():f}"
