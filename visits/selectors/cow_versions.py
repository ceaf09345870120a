"""The versions of what was put down of a cow at the crush: who, when, and which shows."""

from collections import defaultdict
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import datetime

from farms.models import Cow
from trimops.kernel.scope import Scope
from visits.domain.crush_merge import PlacedWriting, Standing, group_of, merge
from visits.domain.crush_writing import WritingKind
from visits.domain.entry_words import entry_words
from visits.domain.json_fields import FieldFault
from visits.domain.read_cow_entry import read_cow_entry
from visits.models import CrushWriting, Visit


@dataclass(frozen=True)
class CowVersion:
    """One version: when it was made by our clock, who by, in words; `is_gone`: she was taken back with it."""

    at: datetime
    by: str
    words: tuple[str, ...]
    shows: bool
    is_gone: bool


@dataclass(frozen=True)
class VersionsOfVisit:
    """All versions of one cow on one visit, newest first."""

    visit: Visit
    versions: tuple[CowVersion, ...]

    @property
    def is_taken_back(self) -> bool:
        return any(version.shows and version.is_gone for version in self.versions)


def cow_versions(scope: Scope, cow: Cow) -> Mapping[int, VersionsOfVisit]:
    """By visit, those of which there is more than one; one query."""
    rows = CrushWriting.objects.within(scope).filter(cow=cow, kind=WritingKind.COW.value)
    by_visit: dict[int, list[CrushWriting]] = defaultdict(list)
    for row in rows.select_related("by", "visit"):
        by_visit[row.visit_id].append(row)
    return {
        visit: VersionsOfVisit(found[0].visit, _versions(found))
        for visit, found in by_visit.items()
        if len(found) > 1
    }


def _versions(rows: Collection[CrushWriting]) -> tuple[CowVersion, ...]:
    standing = merge(
        PlacedWriting(
            row.uid, group_of(row.kind, row.record, row.cow_id), row.after, row.phone, row.placed_at
        )
        for row in rows
    )
    newest = sorted(rows, key=lambda row: (standing[row.uid].effective, row.uid), reverse=True)
    return tuple(_version(row, standing[row.uid]) for row in newest)


def _version(row: CrushWriting, standing: Standing) -> CowVersion:
    # What is kept was read without fault when it came.
    faults: list[FieldFault] = []
    entry = read_cow_entry(row.content.get("entry") or {}, "entry", faults)
    words = () if row.is_gone else tuple(entry_words(entry))
    return CowVersion(standing.effective, row.by.name, words, standing.shows == row.uid, row.is_gone)
