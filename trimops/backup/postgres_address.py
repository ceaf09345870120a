"""Where a PostgreSQL database is, for psycopg and for PostgreSQL's own programs."""

import os
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import psycopg
from psycopg.conninfo import make_conninfo
from psycopg.pq import Conninfo

OF_DJANGO = {"NAME": "dbname", "USER": "user", "HOST": "host", "PORT": "port"}


@dataclass(frozen=True)
class PostgresAddress:
    """`parts` are libpq's keywords without the password, which no list of processes may show."""

    parts: Mapping[str, str]
    password: str = field(default="", repr=False)

    @classmethod
    def of_settings(cls, database: Mapping[str, object]) -> "PostgresAddress":
        """From an entry of Django's DATABASES; options that are Django's own are left out."""
        parts = {key: str(database[name]) for name, key in OF_DJANGO.items() if database.get(name)}
        known = {option.keyword.decode() for option in Conninfo.get_defaults()}
        options = database.get("OPTIONS")
        if isinstance(options, Mapping):
            parts |= {name: str(value) for name, value in options.items() if name in known}
        return cls(parts, str(database.get("PASSWORD") or ""))

    @property
    def name(self) -> str:
        return self.parts["dbname"]

    def beside(self, name: str) -> "PostgresAddress":
        """Another database of the same server."""
        return replace(self, parts={**self.parts, "dbname": name})

    def conninfo(self) -> str:
        """For the command line of a program: no password in it."""
        return make_conninfo("", **self.parts)

    def env(self) -> dict[str, str]:
        """The environment of a program that is to connect."""
        return {**os.environ, **({"PGPASSWORD": self.password} if self.password else {})}

    def connect(self) -> psycopg.Connection:
        """A connection on which each statement stands by itself until a transaction is begun."""
        secret = {"password": self.password} if self.password else {}
        return psycopg.connect(make_conninfo(self.conninfo(), **secret), autocommit=True)
