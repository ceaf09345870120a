"""What of a batch may be kept: by what is known already, and by what the writing speaks of."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from uuid import UUID

from farms.models import Cow
from trimops.accounts.models import User
from visits.domain.crush_merge import Clocks, place
from visits.domain.json_fields import FieldFault
from visits.domain.read_batch import Batch, ReadWriting, SentWriting
from visits.domain.visit_states import VisitState
from visits.domain.writing_content import (
    BladeContent,
    CowContent,
    KitContent,
    WashContent,
    content_json,
)
from visits.models import Blade, Consumable, CrushWriting, Visit
from visits.services.add_crush_cow import add_crush_cow

TOO_OLD = "This visit is too long ago: its earlier versions are cleared away, and it takes nothing more."


class Outcome(StrEnum):
    """What became of a writing that was sent."""

    KEPT = "kept"
    KNOWN = "known"
    REFUSED = "refused"


@dataclass
class Sifted:
    """A writing of a batch, what became of it, and the row to be kept."""

    read: ReadWriting
    outcome: Outcome
    faults: tuple[FieldFault, ...] = ()
    row: CrushWriting | None = None

    def refuse(self, field: str, reason: str) -> None:
        self.outcome, self.faults, self.row = Outcome.REFUSED, (FieldFault(field, reason),), None


@dataclass(frozen=True)
class Arrival:
    """Where and when a batch came in, and who sent it. The visit is locked."""

    visit: Visit
    batch: Batch
    at: datetime
    by: User


def sift_writings(*, arrival: Arrival) -> list[Sifted]:
    """Each writing of the batch in its order: already known, refused with the reason, or a row ready to be kept."""
    sieve = _Sieve(arrival)
    return [sieve.judge(read) for read in arrival.batch.writings]


class _Sieve:
    """Reads once for the whole batch what its writings are judged by."""

    def __init__(self, arrival: Arrival) -> None:
        self.arrival, self.visit = arrival, arrival.visit
        sent = [read.writing for read in arrival.batch.writings if read.writing]
        kept = CrushWriting.objects.within(self.visit.scope)
        self.known = dict(kept.filter(uid__in={w.uid for w in sent}).values_list("uid", "visit_id"))
        self.things: dict[UUID, tuple[int, str, int | None]] = {
            record: (visit_id, kind, cow_id)
            for record, visit_id, kind, cow_id in kept.filter(record__in={w.record for w in sent})
            .values_list("record", "visit_id", "kind", "cow_id")
            .distinct()
        }
        self.cows = _present(Cow, self.visit, _cow_keys(sent), farm_id=self.visit.farm_id)
        self.kit = _present(Consumable, self.visit, _kit_keys(sent))
        self.blades = _present(Blade, self.visit, _blade_keys(sent))

    def judge(self, read: ReadWriting) -> Sifted:
        writing = read.writing
        if writing is None:
            return Sifted(read, Outcome.REFUSED, read.faults)
        if writing.uid in self.known:
            found = Sifted(read, Outcome.KNOWN)
            if self.known[writing.uid] != self.visit.pk:
                found.refuse("uid", "was sent for another visit")
            return found
        found = Sifted(read, Outcome.KEPT)
        if fault := self._fault(writing):
            found.refuse(*fault)
            return found
        found.row = self._row(writing)
        thing = (self.visit.pk, writing.kind.value, found.row.cow_id)
        if self.things.setdefault(writing.record, thing) != thing:
            found.refuse("record", "is already something else")
        else:
            self.known[writing.uid] = self.visit.pk
        return found

    def _fault(self, writing: SentWriting) -> tuple[str, str] | None:
        if closed := _closed(self.visit):
            return "", closed
        match writing.content:
            case CowContent(cow=int(key)) if key not in self.cows:
                return "content.cow.id", "is no cow of this farm"
            case KitContent(consumable=key) | WashContent(consumable=int(key)) if key not in self.kit:
                return "content.consumable", "is not among your kit"
            case BladeContent() as content:
                return _foreign_blade(content, self.blades)
        return None

    def _row(self, writing: SentWriting) -> CrushWriting:
        arrival = self.arrival
        clocks = Clocks(writing.made_at, arrival.batch.sent_at, writing.not_before, arrival.at)
        return CrushWriting(
            business_id=self.visit.business_id,
            uid=writing.uid,
            visit=self.visit,
            kind=writing.kind.value,
            record=writing.record,
            after=writing.after,
            cow_id=self._cow_id(writing),
            is_gone=writing.is_gone,
            content=content_json(writing.content),
            phone=arrival.batch.phone,
            made_at=writing.made_at,
            placed_at=place(clocks),
            received_at=arrival.at,
            by=arrival.by,
        )

    def _cow_id(self, writing: SentWriting) -> int | None:
        if not isinstance(writing.content, CowContent):
            return None
        cow = writing.content.cow
        return cow if isinstance(cow, int) else add_crush_cow(visit=self.visit, new=cow)


def _closed(visit: Visit) -> str:
    """Why the visit takes nothing now; "" when it does."""
    match visit.visit_state:
        case VisitState.UNDER_WAY:
            return ""
        case VisitState.FINISHED:
            return _closed_for_good(visit)
        case VisitState.CALLED_OFF:
            return f"This visit was called off: {visit.called_off_because or 'no reason was given'}."
        case VisitState.WANTED:
            return "This visit was put off and has no hour: have it planned again first."
        case _:
            return "Start the visit first: go through the check before the first cow."


def _closed_for_good(visit: Visit) -> str:
    if visit.farm.erased_at:
        return "What was known of this farm is erased."
    return TOO_OLD if visit.versions_dropped_at else ""


def _present(
    model: type[Cow] | type[Consumable] | type[Blade], visit: Visit, keys: set[int], **more: int
) -> set[int]:
    rows = model.objects.within(visit.scope).filter(pk__in=keys, **more)
    return set(rows.values_list("pk", flat=True))


def _cow_keys(sent: Iterable[SentWriting]) -> set[int]:
    contents = [writing.content for writing in sent]
    return {c.cow for c in contents if isinstance(c, CowContent) and isinstance(c.cow, int)}


def _kit_keys(sent: Iterable[SentWriting]) -> set[int]:
    contents = [writing.content for writing in sent]
    named = (content.consumable for content in contents if isinstance(content, KitContent | WashContent))
    return {key for key in named if key is not None}


def _blade_keys(sent: Iterable[SentWriting]) -> set[int]:
    contents = [writing.content for writing in sent if isinstance(writing.content, BladeContent)]
    return {blade for content in contents for blades in content.by_part().values() for blade in blades}


def _foreign_blade(content: BladeContent, ours: Collection[int]) -> tuple[str, str] | None:
    """The first one named that is no blade of this business, as a fault."""
    for part, blades in content.by_part().items():
        for row, blade in enumerate(blades):
            if blade not in ours:
                return f"content.{part.value}[{row}]", "is not among your blades"
    return None
