"""Which known cow a row of a herd list means.

An official tag or an electronic id names one animal; a number may be worn by two (a borrowed collar, a used
number). So rows are settled in this order, whatever their order in the list: those whose tag or electronic id
is known; then those that bring a new one, by number among cows no other row has claimed; then those that
bring only a number. Each step looks at the herd as the steps before leave it, which is why a second run of
the same list finds the same cows and changes nothing.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from farms.domain.cow_status import CowStatus
from farms.domain.herd_list import HerdRow
from farms.domain.known_cow import KnownCow, changes_to


@dataclass
class _Place:
    """A cow as she will stand once the rows settled so far are applied; `cow` is None for a new one."""

    cow: KnownCow | None
    number: str
    tag: str
    eid: str
    status: CowStatus | None
    line: int | None = None

    @property
    def is_on_farm(self) -> bool:
        return self.status is None or self.status.is_on_farm

    def take(self, row: HerdRow) -> None:
        self.line = row.line
        self.number = row.number.lower()
        self.tag = row.official_tag or self.tag
        self.eid = row.electronic_id or self.eid
        self.status = row.status or self.status

    def clashes_with(self, row: HerdRow) -> bool:
        """Whether the row names another animal: both have a tag, or both an electronic id, and they differ."""
        return bool(
            (self.tag and row.official_tag and self.tag != row.official_tag)
            or (self.eid and row.electronic_id and self.eid != row.electronic_id)
        )


@dataclass(frozen=True)
class Match:
    """The known cow a row means, or None for a new one; `fault` says why the row cannot be used."""

    cow: KnownCow | None = None
    fault: str = ""


def match_cows(rows: Sequence[HerdRow], known: Sequence[KnownCow]) -> list[Match]:
    """One match for each row, in the order of the rows. Rows with faults of their own are passed over."""
    herd = _Herd(known)
    usable = [row for row in rows if not row.faults]
    named = [row for row in usable if row.official_tag or row.electronic_id]
    unsettled = [row for row in named if not herd.settle_by_identity(row)]
    unsettled = [row for row in unsettled if not herd.settle_by_free_number(row)]
    for row in unsettled:
        herd.settle_newcomer(row)
    for row in usable:
        if not (row.official_tag or row.electronic_id):
            herd.settle_by_number(row)
    return [herd.matches.get(row.line, Match()) for row in rows]


class _Herd:
    def __init__(self, known: Sequence[KnownCow]) -> None:
        self.matches: dict[int, Match] = {}
        self._places = [
            _Place(cow, cow.number.lower(), cow.official_tag, cow.electronic_id, cow.status) for cow in known
        ]

    def settle_by_identity(self, row: HerdRow) -> bool:
        by_tag = [place for place in self._places if row.official_tag and place.tag == row.official_tag]
        by_eid = [place for place in self._places if row.electronic_id and place.eid == row.electronic_id]
        found = by_tag or by_eid
        if not found:
            return False
        if by_tag and by_eid and by_tag[0] is not by_eid[0]:
            self._refuse(row, "electronic id: is on file with another cow than the tag; mend one of them")
        elif not by_tag and row.official_tag and found[0].tag:
            self._refuse(row, _other_tag(row, found[0]))
        else:
            self._claim(row, found[0])
        return True

    def settle_by_free_number(self, row: HerdRow) -> bool:
        free = self._wearing(row, free=True)
        if len(free) != 1 or free[0].clashes_with(row):
            return False
        self._claim(row, free[0])
        return True

    def settle_newcomer(self, row: HerdRow) -> None:
        free = self._wearing(row, free=True)
        if len(free) > 1:
            self._refuse(row, f"number: {row.number} is worn by {len(free)} cows here; mend their tags first")
        elif free:
            self._refuse(row, _other_tag(row, free[0]))
        else:
            self._add(row)

    def settle_by_number(self, row: HerdRow) -> None:
        found = self._wearing(row)
        if not found and row.status is not None and not row.status.is_on_farm:
            found = self._gone_with_number(row)
        if len(found) > 1:
            self._refuse(
                row,
                f"number: {row.number} is worn by {len(found)} cows here; add the official tag to the row",
            )
        elif found:
            self._claim(row, found[0])
        else:
            self._add(row)

    def _wearing(self, row: HerdRow, free: bool = False) -> list[_Place]:
        return [
            place
            for place in self._places
            if place.number == row.number.lower() and place.is_on_farm and not (free and place.line)
        ]

    def _gone_with_number(self, row: HerdRow) -> list[_Place]:
        gone = [place for place in self._places if place.number == row.number.lower() and place.cow]
        said = [place for place in gone if place.cow and not changes_to(row, place.cow)]
        return said[:1] or gone

    def _claim(self, row: HerdRow, place: _Place) -> None:
        if place.line is not None:
            self._refuse(row, f"number: is the same cow as line {place.line}; keep one row")
            return
        place.take(row)
        self.matches[row.line] = Match(place.cow)

    def _add(self, row: HerdRow) -> None:
        number, tag, eid = row.number.lower(), row.official_tag, row.electronic_id
        self._places.append(_Place(None, number, tag, eid, row.status, row.line))

    def _refuse(self, row: HerdRow, fault: str) -> None:
        self.matches[row.line] = Match(None, fault)


def _other_tag(row: HerdRow, place: _Place) -> str:
    on_file = place.tag if row.official_tag and place.tag else place.eid
    return (
        f"official tag: cow {row.number} is on file with {on_file}; "
        "give the new cow another number, or mend the tag on her page"
    )
