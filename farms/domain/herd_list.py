"""From the table of a herd list to cows, with what is wrong said for each row."""

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime

from farms.domain.cow_status import CowStatus
from farms.domain.ear_tag import ear_tag_hint, normalise_ear_tag
from farms.domain.electronic_id import NotAnElectronicId, normalise_electronic_id
from farms.domain.herd_table import UnreadableHerdList

# Our heading for each column, and how lists in the world may call it (compared without blanks, in small letters).
HEADINGS: dict[str, tuple[str, ...]] = {
    "number": ("number", "cow", "cowno", "cownumber", "managementnumber", "no", "lineno", "name"),
    "official_tag": ("officialtag", "tag", "eartag", "tagnumber", "officialid", "earmark"),
    "electronic_id": ("electronicid", "eid", "electronicnumber", "chip", "transponder"),
    "status": ("status", "group", "state"),
    "born_on": ("bornon", "born", "birth", "birthdate", "dateofbirth", "dob"),
    "calved_on": ("calvedon", "calved", "lastcalving", "calvingdate", "lastcalved"),
    "calving_due": ("calvingdue", "duetocalve", "expectedcalving", "due"),
    "dry_off_due": ("dryoffdue", "dryoff", "drydate", "dryoffdate", "todryoff"),
    "lactation": ("lactation", "lactationno", "lactationnumber", "parity", "lact"),
    "left_on": ("lefton", "left", "leftherd", "soldon", "diedon", "exitdate", "dateleft"),
}
DATES = ("born_on", "calved_on", "calving_due", "dry_off_due", "left_on")
HIGHEST_LACTATION = 20
_RUN = frozenset("=+-@'\uff1d\uff0b\uff0d\uff20")


@dataclass(frozen=True)
class HerdRow:
    """One cow of the list. `line` counts from 1 with the headings as line 1, as a spreadsheet shows it.

    `lactation` is the number of the lactation that her last calving began (1: first calf).
    """

    line: int
    number: str
    official_tag: str = ""
    electronic_id: str = ""
    status: CowStatus | None = None
    born_on: date | None = None
    calved_on: date | None = None
    calving_due: date | None = None
    dry_off_due: date | None = None
    lactation: int | None = None
    left_on: date | None = None
    faults: tuple[str, ...] = ()
    hints: tuple[str, ...] = ()


@dataclass(frozen=True)
class HerdList:
    """All rows, and the headings that were not understood (their columns are passed over)."""

    rows: tuple[HerdRow, ...]
    unknown_headings: tuple[str, ...] = field(default=())


def read_herd_list(table: Sequence[Sequence[str]]) -> HerdList:
    """Cows from a table with its headings first. UnreadableHerdList when no column names the cow."""
    head = next((line for line, cells in enumerate(table) if any(cells)), None)
    if head is None:
        raise UnreadableHerdList("The list is empty.")
    columns, unknown = _columns(table[head])
    if "number" not in columns.values():
        raise UnreadableHerdList("No column is headed “number”: name the column with the cows' numbers so.")
    rows = [
        _read_row(line, cells, columns)
        for line, cells in enumerate(table, 1)
        if line > head + 1 and any(cells)
    ]
    return HerdList(tuple(_mark_doubles(rows)), tuple(unknown))


def _columns(headings: Sequence[str]) -> tuple[dict[int, str], list[str]]:
    known = {alias: name for name, aliases in HEADINGS.items() for alias in aliases}
    columns: dict[int, str] = {}
    unknown: list[str] = []
    for index, heading in enumerate(headings):
        name = known.get(re.sub(r"[^a-z]", "", heading.lower()))
        if name and name not in columns.values():
            columns[index] = name
        elif heading:
            unknown.append(heading)
    return columns, unknown


def _read_row(line: int, cells: Sequence[str], columns: dict[int, str]) -> HerdRow:
    text = {name: _bare(cells[index]) if index < len(cells) else "" for index, name in columns.items()}
    faults: list[str] = []
    number = text.get("number", "")
    if not number or len(number) > 20:
        faults.append("number: give the cow a number of at most 20 characters")
    dates = {name: _read_date(name, text.get(name, ""), faults) for name in DATES}
    tag = normalise_ear_tag(text.get("official_tag", ""))
    if len(tag) > 15:
        faults.append("official tag: is longer than an official tag can be")
    hint = ear_tag_hint(tag) if tag else ""
    electronic_id = _read_electronic_id(text.get("electronic_id", ""), faults)
    status = _read_status(text.get("status", ""), faults)
    lactation = _read_lactation(text.get("lactation", ""), faults)
    if dates["left_on"] and (status is None or status.is_on_farm):
        faults.append("left on: say in the column status whether she was sold or is dead")
    return HerdRow(
        line,
        number,
        tag,
        electronic_id,
        status,
        **dates,
        lactation=lactation,
        faults=tuple(faults),
        hints=(f"official tag: {hint}",) if hint else (),
    )


def _bare(cell: str) -> str:
    """Without the apostrophe that keeps a spreadsheet from running a text that begins like a formula."""
    return cell[1:] if cell[:1] == "'" and cell[1:2] in _RUN else cell


def _read_electronic_id(text: str, faults: list[str]) -> str:
    try:
        return normalise_electronic_id(text) if text else ""
    except NotAnElectronicId as fault:
        faults.append(f"electronic id: {fault}")
        return ""


def _read_status(text: str, faults: list[str]) -> CowStatus | None:
    if not text:
        return None
    for status in CowStatus:
        if text.strip().lower() in (status.value, status.label.lower()):
            return status
    faults.append(f"status: “{text}” is none of {', '.join(status.value for status in CowStatus)}")
    return None


def _read_lactation(text: str, faults: list[str]) -> int | None:
    """None for an empty cell, and for the 0 that lists give a heifer before her first calf."""
    if not text:
        return None
    if text.isascii() and text.isdigit() and int(text) <= HIGHEST_LACTATION:
        return int(text) or None
    faults.append(f"lactation: “{text}” is no number from 0 to {HIGHEST_LACTATION}")
    return None


def _read_date(name: str, text: str, faults: list[str]) -> date | None:
    if not text:
        return None
    for form in ("%Y-%m-%d", "%d/%m/%Y", "%d.%m.%Y", "%d-%m-%Y"):
        try:
            found = datetime.strptime(text, form).date()  # noqa: DTZ007 because: a day, not an instant
        except ValueError:
            continue
        if 1990 <= found.year <= 2100:
            return found
    faults.append(f"{name.replace('_', ' ')}: “{text}” is no day; write 2026-03-02 or 02/03/2026")
    return None


def _mark_doubles(rows: list[HerdRow]) -> list[HerdRow]:
    seen = {
        "number": Counter(row.number.lower() for row in rows),
        "official tag": Counter(row.official_tag for row in rows if row.official_tag),
        "electronic id": Counter(row.electronic_id for row in rows if row.electronic_id),
    }
    return [_with_doubles(row, seen) for row in rows]


def _with_doubles(row: HerdRow, seen: Mapping[str, Counter[str]]) -> HerdRow:
    doubles = []
    # Two cows may wear one number: then the tag tells them apart, and only a row without one is in doubt.
    if row.number and not (row.official_tag or row.electronic_id) and seen["number"][row.number.lower()] > 1:
        doubles.append(
            f"number: {row.number} stands more than once in the list; keep one row or add the tags"
        )
    for column, value in (("official tag", row.official_tag), ("electronic id", row.electronic_id)):
        if seen[column][value] > 1:
            doubles.append(f"{column}: {value} stands more than once in the list; keep one row")
    return replace(row, faults=(*row.faults, *doubles)) if doubles else row
