"""What lies beside the tables and the exchange's documents, so that whoever opens them later can read them."""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime

from visits.documents.csv_file import csv_file
from visits.documents.data_table import DataTable
from visits.domain.ade.lists import JsonObject

_TABLES = """{farm}: cows and feet
Taken out on {made}.

Each table has its file. Keys bind them: the same trim key in trims, feet, findings and actions is one cow at the crush
on one visit; the same cow key is one cow, whatever number she wears. Days are year-month-day, hours are those of
the farm's zone ({zone}). Lesions are what a foot trimmer saw; none is a veterinary diagnosis.

The CSV files are UTF-8. A text that a spreadsheet might run as a formula has an apostrophe in front; it is not part
of the text.

"""
_EXCHANGE = """{farm}: cows and feet as JSON of the ICAR Animal Data Exchange (ADE)
Taken out on {made}. Written against version 1.5.1 of 10 December 2025.

The published schema files were not at hand when this was written: the documents are checked against schemas typed anew
from notes and memory. Ask whoever sent you this before you rely on a field.

What a reader should know:
- Lesions are diagnosis events, since there is no other place: seen at trim, not a veterinary diagnosis. Their codes are
  those of the ICAR claw health atlas under a scheme of our own; no registered scheme holds them.
- Outer toe is the lateral claw, on fore and hind feet alike. What is on the skin is placed on the foot (Legs...).
- The stage of digital dermatitis (M0 to M4.1) is in the description, the zone and its map in the site.
- Mobility scores are diagnosis events with the score in severityScore and the score sheet as scheme. None is a
  conformation score: 0 to 3 and 1 to 5 are not its 1 to 9, and run the other way.
- A time of 12:00:00Z on a birth, a lactation or a round of scores stands for a day of which no hour is known.
- Schemes that begin with x. are our own.
"""


def csv_files(tables: Sequence[DataTable], farm: str, made_at: datetime) -> Iterator[tuple[str, bytes]]:
    """A file for each table, and one that says what they are. `made_at` in the farm's zone."""
    head = _TABLES.format(farm=farm, made=f"{made_at:%Y-%m-%d %H:%M}", zone=made_at.tzinfo)
    lines = [f"{table.name}.csv: {table.about} {len(table.rows)} rows.\n" for table in tables]
    yield "read me first.txt", (head + "".join(lines)).encode()
    for table in tables:
        yield f"{table.name}.csv", csv_file(table)


def ade_files(
    documents: Mapping[str, Iterable[JsonObject]], farm: str, made_at: datetime
) -> Iterator[tuple[str, bytes]]:
    """A file for each kind of resource, and one that says how they were made."""
    yield "read me first.txt", _EXCHANGE.format(farm=farm, made=f"{made_at:%Y-%m-%d %H:%M}").encode()
    for name, members in documents.items():
        yield f"{name}.json", _collection(members)


def _collection(members: Iterable[JsonObject]) -> bytes:
    """One page that holds all of a kind, a line for each. The frame (`member`, `view`) is from memory."""
    lines = [json.dumps(member, ensure_ascii=False).encode() for member in members]
    view = json.dumps({"totalItems": len(lines), "totalPages": 1, "currentPage": 1})
    return b'{"member": [\n' + b",\n".join(lines) + b'\n],\n"view": ' + view.encode() + b"}\n"
