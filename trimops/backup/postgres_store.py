"""A PostgreSQL database as a backup sees it: dumped and counted in one exported snapshot."""

import hashlib
import secrets
import socket
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import psycopg
from psycopg import sql

from trimops.backup.contents import Contents, differences
from trimops.backup.errors import BackupProblem, FaultyBackup, NotEmpty
from trimops.backup.postgres_address import PostgresAddress
from trimops.backup.postgres_contents import all_tables, postgres_contents, server_version
from trimops.backup.postgres_programs import ProgramFailed, Programs, programs_for

PINNED = "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY"
BARE = ("--no-owner", "--no-privileges")
IN_ONE = ("--exit-on-error", "--single-transaction")
TRY_OUT = "trimops_verify_"


@dataclass(frozen=True)
class PostgresStore:
    """The database at `address`."""

    address: PostgresAddress
    engine: str = "postgresql"
    dump_name: str = "database.dump"

    def size(self) -> int:
        with self._connected() as connection:
            found = connection.execute("SELECT pg_database_size(current_database())").fetchone()
        return int(found[0]) if found else 0

    def dumped_by(self) -> str:
        return self._programs().version

    def take(self, dump: Path) -> Contents:
        programs = self._programs()
        with self._connected() as connection:
            connection.execute(PINNED)
            connection.execute("SET LOCAL idle_in_transaction_session_timeout = 0")
            snapshot = connection.execute("SELECT pg_export_snapshot()").fetchone()
            if snapshot is None:
                raise BackupProblem("PostgreSQL exported no snapshot.")
            words = ("--format=custom", *BARE, f"--snapshot={snapshot[0]}", f"--file={dump}")
            programs.run("pg_dump", *words, at=self.address)
            return postgres_contents(connection)

    def try_out(self, dump: Path, told: Contents) -> list[str]:
        with self._passing_database() as passing:
            try:
                self._programs().run("pg_restore", *BARE, *IN_ONE, str(dump), at=passing.address)
            except ProgramFailed as failed:
                return [failed.message]
            return differences(told, passing.contents())

    def contents(self) -> Contents:
        with self._connected() as connection:
            connection.execute(PINNED)
            return postgres_contents(connection)

    def refuse_unless_empty(self) -> None:
        with self._connected() as connection:
            tables = all_tables(connection)
        if tables:
            raise NotEmpty(
                f"The database {self.address.name} holds {len(tables)} tables already ({tables[0]}, ...). A restore "
                "never writes over what is there: make an empty one (createdb) and let DATABASE_URL name it."
            )

    def load(self, dump: Path, told: Contents) -> None:
        self._programs().run("pg_restore", *BARE, *IN_ONE, str(dump), at=self.address)
        if wrong := differences(told, self.contents()):
            self._clear()
            raise FaultyBackup("The backup does not restore to what it says: " + "; ".join(wrong[:20]))

    def _clear(self) -> None:
        """Take away again all that was just put into what was empty."""
        with self._connected() as connection, connection.transaction():
            connection.execute("DROP SCHEMA public CASCADE")
            connection.execute("CREATE SCHEMA public")

    def _programs(self) -> Programs:
        with self._connected() as connection:
            return programs_for(int(server_version(connection).partition(".")[0]))

    @contextmanager
    def _connected(self) -> Iterator[psycopg.Connection]:
        try:
            connection = self.address.connect()
        except psycopg.OperationalError as error:
            raise BackupProblem(f"The database {self.address.name} cannot be reached: {error}") from error
        with connection:
            yield connection

    @contextmanager
    def _passing_database(self) -> Iterator["PostgresStore"]:
        """An empty database on the same server, gone afterwards; those that a killed try-out left go first."""
        beginning = f"{TRY_OUT}{self._mark()}_"
        name = beginning + secrets.token_hex(6)
        with self._connected() as connection:
            query = "SELECT datname FROM pg_database WHERE starts_with(datname, %s)"
            for (left,) in connection.execute(query, (beginning,)).fetchall():
                _drop(connection, left)
            try:
                connection.execute(
                    sql.SQL("CREATE DATABASE {} TEMPLATE template0").format(sql.Identifier(name))
                )
            except psycopg.errors.InsufficientPrivilege as error:
                raise BackupProblem(
                    "The database's user may make no database to try the backup in: ALTER ROLE ... CREATEDB, "
                    "or --no-verify."
                ) from error
            try:
                yield PostgresStore(self.address.beside(name))
            finally:
                _drop(connection, name)

    def _mark(self) -> str:
        """Of this database as backed up from this machine: nobody else's try-out is cleared away."""
        return hashlib.sha256(f"{socket.gethostname()} {self.address.conninfo()}".encode()).hexdigest()[:12]


def _drop(connection: psycopg.Connection, name: str) -> None:
    connection.execute(sql.SQL("DROP DATABASE IF EXISTS {} WITH (FORCE)").format(sql.Identifier(name)))
