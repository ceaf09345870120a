"""What a writing says, by its kind, as plain values and as the JSON that is kept of it."""

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from uuid import UUID

from visits.domain.cow_entry_json import cow_entry_json
from visits.domain.crush_entry import CowEntry
from visits.domain.kit.blade_kinds import TurnPart


@dataclass(frozen=True)
class NewCow:
    """A cow added on the spot. `is_another`: though the farm has a cow of that number, this is not her."""

    uid: UUID
    number: str
    is_another: bool = False


@dataclass(frozen=True)
class CowContent:
    """A cow that is known (her key) or new, what was put down of her, and whom the trimmer told of the vet's part."""

    cow: int | NewCow
    entry: CowEntry
    told_vet: str = ""


@dataclass(frozen=True)
class WashContent:
    """A wash-down; `washed_at` by the phone's clock. `consumable` of the stock that was mixed, `litres` ready mixed:
    None where the farm's own was used, where nobody said, and of phones that did not ask.
    """

    substance: str
    dilution: str
    contact_minutes: Decimal
    washed_at: datetime
    consumable: int | None = None
    litres: Decimal | None = None


@dataclass(frozen=True)
class KitContent:
    """Used on this visit beyond what the cows say, in the consumable's unit; below 0 where the cows say too much."""

    consumable: int
    extra: Decimal


@dataclass(frozen=True)
class BladeContent:
    """A turn of the blades, by their keys: all that are in hand from `at` on (by the phone's clock; () none), and what
    became of others or of them just then. A blade that is cracked or chipped is never among those in hand.
    """

    in_hand: tuple[int, ...]
    went_dull: tuple[int, ...]
    cracked: tuple[int, ...]
    chipped: tuple[int, ...]
    at: datetime

    def by_part(self) -> dict[TurnPart, tuple[int, ...]]:
        """By what is said, the blades of which it is said; one that went dull may stay in hand."""
        return {
            TurnPart.IN_HAND: self.in_hand,
            TurnPart.WENT_DULL: self.went_dull,
            TurnPart.CRACKED: self.cracked,
            TurnPart.CHIPPED: self.chipped,
        }


@dataclass(frozen=True)
class SignOffContent:
    """Who received the account of the visit, what was done, what is the farm's to do, how the kit was left."""

    received_by: str
    was_done: str
    farm_to_do: str
    washed_down: bool
    hygiene_note: str


Content = CowContent | WashContent | KitContent | BladeContent | SignOffContent


def content_json(content: Content) -> dict[str, object]:
    """JSON-ready, every key present; `read_content` makes the same content of it again."""
    match content:
        case CowContent():
            return {
                "cow": _cow(content.cow),
                "told_vet": content.told_vet,
                "entry": cow_entry_json(content.entry),
            }
        case WashContent():
            return {
                "substance": content.substance,
                "dilution": content.dilution,
                "contact_minutes": str(content.contact_minutes),
                "washed_at": content.washed_at.isoformat(),
                "consumable": content.consumable,
                "litres": None if content.litres is None else str(content.litres),
            }
        case KitContent():
            return {"consumable": content.consumable, "extra": str(content.extra)}
        case BladeContent():
            said = {part.value: list(blades) for part, blades in content.by_part().items()}
            return {**said, "at": content.at.isoformat()}
        case SignOffContent():
            return dict(vars(content))


def _cow(cow: int | NewCow) -> dict[str, object]:
    if isinstance(cow, int):
        return {"id": cow}
    return {"new": {"uid": str(cow.uid), "number": cow.number, "is_another": cow.is_another}}
