"""What stood in a database before and does not stand there afterwards."""

from collections.abc import Iterator, Mapping, Sequence

# {column: {key of the row: hash of its value, empty for none}}
Table = Mapping[str, Mapping[str, str]]


def rows_in(table: Table) -> set[str]:
    return {key for column in table.values() for key in column}


def lost(before: Mapping[str, Table], after: Mapping[str, Table], moved: Mapping[str, str]) -> Iterator[str]:
    """Each table, row, column and value of before that is not there afterwards. What came on is no loss.

    `moved` is {"table.column": "table.column"}: where a column went. Each of its values must stand there in some row.
    """
    for table, columns in before.items():
        if not rows_in(columns):
            continue
        if table not in after and not any(f"{table}.{name}" in moved for name in columns):
            yield table
            continue
        for said in _lost_of(table, columns, after.get(table, {})):
            name = said.partition(":")[0]
            if name not in moved:
                yield said
            elif gone := _not_at(columns[name.partition(".")[2]], moved[name], after):
                yield f"{name}: not at {moved[name]} from rows {', '.join(gone)}"


def _lost_of(table: str, before: Table, after: Table) -> Iterator[str]:
    stayed = rows_in(before) & rows_in(after)
    if after and (gone := rows_in(before) - stayed):
        yield f"{table}: rows {', '.join(sorted(gone))}"
    for name, values in before.items():
        if name not in after:
            yield f"{table}.{name}"
        elif changed := sorted(key for key in stayed if after[name][key] != values[key]):
            yield f"{table}.{name}: changed in rows {', '.join(changed)}"


def _not_at(values: Mapping[str, str], place: str, after: Mapping[str, Table]) -> list[str]:
    table, _, column = place.partition(".")
    there = set(after.get(table, {}).get(column, {}).values())
    return sorted(key for key, value in values.items() if value and value not in there)


def not_allowed(found: Sequence[str], allowed: Mapping[str, str]) -> list[str]:
    """Those for which no reason stands in from.json: {what is said, up to its rows: why that is right}."""
    return [each for each in found if each not in allowed and each.partition(": ")[0] not in allowed]
