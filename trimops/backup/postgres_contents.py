"""Counting and hashing what stands in a PostgreSQL database.

A row is told as PostgreSQL's own COPY tells it in text, under settings that do not hang on the server: each row is one
line, whatever stands in it. Keys of text are ordered by their bytes, since the copy may know other languages.
"""

import hashlib
from collections.abc import Iterator

import psycopg
from psycopg import sql

from trimops.backup.contents import Contents, TableSum

SETTINGS = (
    "SET LOCAL TimeZone = 'UTC'",
    "SET LOCAL DateStyle = 'ISO, YMD'",
    "SET LOCAL IntervalStyle = 'postgres'",
    "SET LOCAL extra_float_digits = 1",
    "SET LOCAL bytea_output = 'hex'",
    "SET LOCAL client_encoding = 'UTF8'",
    "SET LOCAL statement_timeout = 0",
    "SET LOCAL idle_in_transaction_session_timeout = 0",
)
# What an extension brought belongs to the extension: a dump only names it.
OURS = """
    n.nspname NOT IN ('pg_catalog', 'information_schema') AND n.nspname NOT LIKE 'pg\\_toast%%'
    AND n.nspname NOT LIKE 'pg\\_temp%%'
    AND NOT EXISTS (SELECT 1 FROM pg_depend d WHERE d.objid = {oid} AND d.deptype = 'e')
"""
TABLES = f"""
    SELECT n.nspname, c.relname FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
    WHERE c.relkind = 'r' AND {OURS.format(oid="c.oid")} ORDER BY 1, 2
"""
COLUMNS = """
    SELECT a.attname, a.attcollation <> 0, coalesce(array_position(i.indkey::int2[], a.attnum), -1)
    FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid JOIN pg_namespace n ON n.oid = c.relnamespace
    LEFT JOIN pg_index i ON i.indrelid = c.oid AND i.indisprimary
    WHERE n.nspname = %s AND c.relname = %s AND a.attnum > 0 AND NOT a.attisdropped ORDER BY a.attnum
"""
# Not-null constraints (n) have names of their own in newer servers only, and stand in the columns anyway.
OBJECTS = f"""
    SELECT 'relation ' || c.relkind::text || ' ' || c.relname FROM pg_class c
        JOIN pg_namespace n ON n.oid = c.relnamespace WHERE {OURS.format(oid="c.oid")}
    UNION ALL SELECT 'trigger ' || t.tgname || ' on ' || c.relname FROM pg_trigger t
        JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_namespace n ON n.oid = c.relnamespace
        WHERE NOT t.tgisinternal AND {OURS.format(oid="t.oid")}
    UNION ALL SELECT 'constraint ' || k.conname || ' on ' || k.conrelid::regclass::text FROM pg_constraint k
        JOIN pg_namespace n ON n.oid = k.connamespace
        WHERE k.contype <> 'n' AND k.conrelid <> 0 AND {OURS.format(oid="k.oid")}
    UNION ALL SELECT 'function ' || p.proname FROM pg_proc p
        JOIN pg_namespace n ON n.oid = p.pronamespace WHERE {OURS.format(oid="p.oid")}
    ORDER BY 1
"""


def postgres_contents(connection: psycopg.Connection) -> Contents:
    """What the database holds. Inside a transaction of `connection` that keeps its moment (repeatable read)."""
    for setting in SETTINGS:
        connection.execute(setting)
    tables = [(str(schema), str(name)) for schema, name in connection.execute(TABLES)]
    sums = {_said(schema, name): _sum_of(connection, schema, name) for schema, name in tables}
    objects = [str(name) for (name,) in connection.execute(OBJECTS)]
    return Contents(server_version(connection), sums, objects, _migrations(connection))


def server_version(connection: psycopg.Connection) -> str:
    """Such as "18.6"."""
    number = connection.info.server_version
    return f"{number // 10000}.{number % 10000}"


def all_tables(connection: psycopg.Connection) -> list[str]:
    """The names of all tables, filled or not."""
    return [_said(str(schema), str(name)) for schema, name in connection.execute(TABLES)]


def _sum_of(connection: psycopg.Connection, schema: str, name: str) -> TableSum:
    columns = connection.execute(COLUMNS, (schema, name)).fetchall()
    keys = sorted((place, column) for column, _, place in columns if place >= 0)
    by_bytes = {column for column, has_language, _ in columns if has_language}
    order = [column for _, column in keys] or [column for column, *_ in columns]
    query = sql.SQL("COPY (SELECT {} FROM {} ORDER BY {}) TO STDOUT").format(
        sql.SQL(", ").join(sql.Identifier(column) for column, *_ in columns),
        sql.Identifier(schema, name),
        sql.SQL(", ").join(_ordered(column, column in by_bytes) for column in order),
    )
    rows, summed = 0, hashlib.sha256()
    for line in _lines(connection, query):
        summed.update(line)
        rows += 1
    return TableSum(rows, summed.hexdigest())


def _lines(connection: psycopg.Connection, query: sql.Composed) -> Iterator[bytes | bytearray | memoryview]:
    """One a row, as the server sends them."""
    with connection.cursor() as cursor, cursor.copy(query) as copy:
        yield from copy


def _ordered(column: str, by_bytes: bool) -> sql.Composable:
    return sql.SQL('{} COLLATE "C"').format(sql.Identifier(column)) if by_bytes else sql.Identifier(column)


def _migrations(connection: psycopg.Connection) -> list[str]:
    if connection.execute("SELECT to_regclass('django_migrations')").fetchone() == (None,):
        return []
    query = "SELECT app || '.' || name FROM django_migrations ORDER BY id"
    return [str(name) for (name,) in connection.execute(query)]


def _said(schema: str, name: str) -> str:
    return name if schema == "public" else f"{schema}.{name}"
