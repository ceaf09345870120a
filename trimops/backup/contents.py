"""What a database holds, told so shortly that two can be compared: counts, hashes, names."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field


@dataclass(frozen=True)
class TableSum:
    """How many rows a table has, and the SHA-256 over them in the order of its primary key."""

    rows: int
    sha256: str


@dataclass(frozen=True)
class Contents:
    """`tables` by name; `objects` are the names of triggers, constraints and indexes with their kind before;
    `migrations` are those applied, as "app.name"; `server` is the engine's version.
    """

    server: str
    tables: Mapping[str, TableSum] = field(default_factory=dict)
    objects: Sequence[str] = ()
    migrations: Sequence[str] = ()

    @property
    def rows(self) -> int:
        return sum(table.rows for table in self.tables.values())


def differences(told: Contents, found: Contents) -> list[str]:
    """In words, one a table or name, where `found` is not what was `told`; the engine's version may differ."""
    return [
        *_of_tables(told.tables, found.tables),
        *(f"{name} is missing" for name in sorted(set(told.objects) - set(found.objects))),
        *(f"{name} was not there" for name in sorted(set(found.objects) - set(told.objects))),
        *(f"migration {name} differs" for name in sorted(set(told.migrations) ^ set(found.migrations))),
    ]


def _of_tables(told: Mapping[str, TableSum], found: Mapping[str, TableSum]) -> Iterator[str]:
    for name in sorted({*told, *found}):
        if name not in found:
            yield f"table {name} is missing"
        elif name not in told:
            yield f"table {name} was not there"
        elif told[name].rows != found[name].rows:
            yield f"table {name} has {found[name].rows} rows, not {told[name].rows}"
        elif told[name] != found[name]:
            yield f"table {name} has other rows, as many"
