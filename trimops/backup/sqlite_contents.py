"""Counting and hashing what stands in an SQLite database.

A row is told as Python writes the tuple of its values in ASCII: numbers, text and bytes each in a form of their own,
and the same in every version. Written in C, so that hashing costs little beside reading. In tables with columns for
bytes (papers, photos) the hash of bytes stands for them, since written out they are four times as long.
"""

import hashlib
import sqlite3

from trimops.backup.contents import Contents, TableSum


def sqlite_contents(connection: sqlite3.Connection) -> Contents:
    """What the database holds. Inside one read transaction of `connection`, else it may move on meanwhile."""
    tables = _names(connection, "SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name")
    orders = {table: _order_of(connection, table) for table in tables}
    migrations = []
    if "django_migrations" in tables:
        migrations = _names(connection, "SELECT app || '.' || name FROM django_migrations ORDER BY id")
    sums = {table: _sum_of(connection, table, orders[table]) for table in tables}
    return Contents(sqlite3.sqlite_version, sums, _objects(connection), migrations)


def rows_of_tables(connection: sqlite3.Connection) -> dict[str, int]:
    """How many rows each table has that has any; SQLite's own counters are none."""
    names = _names(
        connection, "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT GLOB 'sqlite_*'"
    )
    counts = {
        name: connection.execute(f"SELECT count(*) FROM {_quoted(name)}").fetchone()[0] for name in names
    }
    return {name: rows for name, rows in counts.items() if rows}


def _sum_of(connection: sqlite3.Connection, table: str, order: str) -> TableSum:
    declared = connection.execute(f"PRAGMA table_info({_quoted(table)})").fetchall()
    holds_bytes = any("BLOB" in column[2].upper() for column in declared)
    query = f"SELECT * FROM {_quoted(table)} ORDER BY {order}"
    try:
        return _summed(connection.execute(query), holds_bytes)
    except sqlite3.OperationalError as error:
        if "decode" not in str(error):
            raise
    # Text that is no UTF-8 came in past the program; it is taken as it is.
    was, connection.text_factory = connection.text_factory, _decoded
    try:
        return _summed(connection.execute(query), holds_bytes)
    finally:
        connection.text_factory = was


def _summed(cursor: sqlite3.Cursor, holds_bytes: bool) -> TableSum:
    rows, summed = 0, hashlib.sha256()
    for row in cursor:
        summed.update(ascii(_hashed(row) if holds_bytes else row).encode())
        rows += 1
    return TableSum(rows, summed.hexdigest())


def _hashed(row: tuple[object, ...]) -> tuple[object, ...]:
    return tuple(hashlib.sha256(one).digest() if isinstance(one, bytes) else one for one in row)


def _decoded(raw: bytes) -> str:
    return raw.decode(errors="surrogateescape")


def _order_of(connection: sqlite3.Connection, table: str) -> str:
    """The columns of the primary key; where there is none, all of them."""
    columns = connection.execute(f"PRAGMA table_info({_quoted(table)})").fetchall()
    keys = [name for _, name, *_, place in sorted(columns, key=lambda column: column[5]) if place]
    return ", ".join(map(_quoted, keys or [column[1] for column in columns]))


def _objects(connection: sqlite3.Connection) -> list[str]:
    """Every table, index and trigger with the beginning of its definition's hash: a table's holds its constraints."""
    query = "SELECT type, name, coalesce(sql, '') FROM sqlite_master ORDER BY type, name"
    return [
        f"{kind} {name} ({hashlib.sha256(sql.encode()).hexdigest()[:12]})"
        for kind, name, sql in connection.execute(query)
    ]


def _names(connection: sqlite3.Connection, query: str) -> list[str]:
    return [str(name) for (name,) in connection.execute(query)]


def _quoted(name: str) -> str:
    return '"' + name.replace('"', '""') + '"'
