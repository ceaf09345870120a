"""One sending of a phone: the envelope, which must be right as a whole, and its writings, each judged by itself."""

from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from visits.domain.crush_writing import WritingKind
from visits.domain.json_fields import FieldFault, JsonFields
from visits.domain.read_content import LARGEST_KEY, read_content
from visits.domain.writing_content import Content

MOST_WRITINGS = 100


@dataclass(frozen=True)
class SentWriting:
    """One version of one thing as a phone sends it; times by the phone's clock but for `not_before`."""

    uid: UUID
    kind: WritingKind
    record: UUID
    after: UUID | None
    made_at: datetime
    not_before: datetime | None
    is_gone: bool
    content: Content


@dataclass(frozen=True)
class ReadWriting:
    """A writing as it was read, or what is wrong with it. `uid`: the phone's name for it, "" where it has none."""

    uid: str
    writing: SentWriting | None
    faults: tuple[FieldFault, ...] = ()


@dataclass(frozen=True)
class Begun:
    """The start of the visit as the trimmer ticked it, by the phone's clock."""

    at: datetime
    checked: bool


@dataclass(frozen=True)
class Batch:
    """What one phone sends at once. `seen`: how far it has read what others wrote."""

    phone: UUID
    sent_at: datetime
    seen: int = 0
    begun: Begun | None = None
    writings: tuple[ReadWriting, ...] = ()


def read_batch(value: object) -> tuple[Batch, list[FieldFault]]:
    """The batch and the faults of its envelope; with any fault there, nothing of it may be used."""
    faults: list[FieldFault] = []
    read = JsonFields(value, "", faults)
    batch = Batch(
        phone=read.needed_uid("phone"),
        sent_at=read.needed_instant("sent_at"),
        seen=read.whole("seen", 0, LARGEST_KEY) or 0,
        begun=_begun(read.inner("begun")) if read.has("begun") else None,
        writings=tuple(_writing(item) for _, item in read.items("writings", MOST_WRITINGS)),
    )
    read.close()
    return batch, faults


def _begun(read: JsonFields) -> Begun:
    begun = Begun(read.needed_instant("at"), read.flag("checked"))
    read.close()
    return begun


def _writing(value: object) -> ReadWriting:
    faults: list[FieldFault] = []
    read = JsonFields(value, "", faults)
    kind = read.needed_code("kind", WritingKind, WritingKind.COW)
    has_kind = not faults
    is_gone = read.flag("is_gone")
    given = {} if read.value("content") is None else read.value("content")
    writing = SentWriting(
        uid=read.needed_uid("uid"),
        kind=kind,
        record=read.needed_uid("record"),
        after=read.uid("after"),
        made_at=read.needed_instant("made_at"),
        not_before=read.instant("not_before"),
        is_gone=is_gone,
        content=read_content(kind, given, faults if has_kind else [], is_gone=is_gone),
    )
    read.close()
    if faults:
        return ReadWriting(str(writing.uid) if writing.uid.int else "", None, tuple(faults))
    return ReadWriting(str(writing.uid), writing)
