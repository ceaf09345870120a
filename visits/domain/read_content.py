"""The content of a writing as a phone sends it, by its kind."""

from datetime import UTC, datetime
from decimal import Decimal

from visits.domain.crush_writing import WritingKind
from visits.domain.json_fields import FieldFault, JsonFields
from visits.domain.kit.blade_kinds import TurnPart
from visits.domain.read_cow_entry import read_cow_entry
from visits.domain.trim_refusals import Refusal, refusals
from visits.domain.writing_content import (
    BladeContent,
    Content,
    CowContent,
    KitContent,
    NewCow,
    SignOffContent,
    WashContent,
)

LARGEST_KEY = 2**63 - 1
LONG_TEXT = 4000
MOST_BLADES = 20


def read_content(
    kind: WritingKind, value: object, faults: list[FieldFault], *, is_gone: bool = False
) -> Content:
    """What `value` says; faults with paths from `content`. What is taken back need not be whole, only be named."""
    read = JsonFields(value, "content", faults)
    readers = {
        WritingKind.COW: _cow,
        WritingKind.WASH: _wash,
        WritingKind.KIT: _kit,
        WritingKind.BLADE: _blade,
        WritingKind.SIGN_OFF: _sign_off,
    }
    content = readers[kind](read, is_gone)
    read.close()
    return content


def _cow(read: JsonFields, is_gone: bool) -> Content:
    before = len(read.faults)
    given = {} if read.value("entry") is None else read.value("entry")
    content = CowContent(
        cow=_which_cow(read.inner("cow")),
        entry=read_cow_entry(given, read.at("entry"), read.faults),
        told_vet=read.text("told_vet", 120),
    )
    if not is_gone and len(read.faults) == before:
        read.faults += [_fault(read, refusal) for refusal in refusals(content.entry)]
    return content


def _which_cow(read: JsonFields) -> int | NewCow:
    key = read.whole("id", 1, LARGEST_KEY)
    if read.has("new"):
        new = read.inner("new")
        found = NewCow(
            new.needed_uid("uid"),
            new.text("number", 20, is_needed=True).strip(),
            new.flag("is_another"),
        )
        new.close()
        if key is not None:
            read.fault("", "is either known or new")
        read.close()
        return found
    if key is None and read.value("id") is None:
        read.fault("", "say which cow")
    read.close()
    return key or 0


def _fault(read: JsonFields, refusal: Refusal) -> FieldFault:
    words = f"{refusal.foot.label.capitalize()}: {refusal.text}" if refusal.foot else refusal.text
    return FieldFault(f"{read.at('entry')}.{refusal.field}", words)


def _wash(read: JsonFields, is_gone: bool) -> Content:
    if is_gone and not read.has("washed_at"):
        return WashContent("", "", Decimal(0), datetime(1970, 1, 1, tzinfo=UTC))
    return WashContent(
        substance=read.text("substance", 80, is_needed=not is_gone),
        dilution=read.text("dilution", 40),
        contact_minutes=read.number("contact_minutes", Decimal(0), Decimal("9999.9"), 1) or Decimal(0),
        washed_at=read.needed_instant("washed_at"),
        consumable=read.whole("consumable", 1, LARGEST_KEY),
        litres=read.number("litres", Decimal("0.1"), Decimal("9999.9"), 1),
    )


def _kit(read: JsonFields, is_gone: bool) -> Content:
    consumable = read.whole("consumable", 1, LARGEST_KEY)
    if consumable is None and read.value("consumable") is None:
        read.fault("consumable", "is needed")
    extra = read.number("extra", Decimal(-99_999), Decimal(99_999), 2)
    if extra is None and not is_gone and not read.value("extra"):
        read.fault("extra", "is needed")
    return KitContent(consumable or 0, extra or Decimal(0))


def _blade(read: JsonFields, is_gone: bool) -> Content:
    said = {part: _blade_keys(read, part.value) for part in TurnPart}
    is_timed = not is_gone or read.has("at")
    content = BladeContent(
        in_hand=said[TurnPart.IN_HAND],
        went_dull=said[TurnPart.WENT_DULL],
        cracked=said[TurnPart.CRACKED],
        chipped=said[TurnPart.CHIPPED],
        at=read.needed_instant("at") if is_timed else datetime(1970, 1, 1, tzinfo=UTC),
    )
    for place, blade in enumerate(content.in_hand):
        if blade in (*content.cracked, *content.chipped):
            read.fault(f"in_hand[{place}]", "is cracked or chipped: it cannot stay in hand")
    return content


def _blade_keys(read: JsonFields, name: str) -> tuple[int, ...]:
    """The keys of a list; a blade is named once in it."""
    before = len(read.faults)
    keys: list[int] = []
    for place, (_, value) in enumerate(read.items(name, MOST_BLADES)):
        if isinstance(value, bool) or not isinstance(value, int) or not 1 <= value <= LARGEST_KEY:
            read.fault(f"{name}[{place}]", "must be the number of a blade")
        elif value in keys:
            read.fault(f"{name}[{place}]", "is named twice")
        else:
            keys.append(value)
    return tuple(keys) if len(read.faults) == before else ()


def _sign_off(read: JsonFields, is_gone: bool) -> Content:
    if is_gone:
        read.fault("", "A sign-off is not taken back: sign off again with the right words.")
    return SignOffContent(
        received_by=read.text("received_by", 120),
        was_done=read.text("was_done", LONG_TEXT),
        farm_to_do=read.text("farm_to_do", LONG_TEXT),
        washed_down=read.flag("washed_down"),
        hygiene_note=read.text("hygiene_note", 200),
    )
