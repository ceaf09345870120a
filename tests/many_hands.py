"""The same call by many at the same moment, each on a database connection of its own."""

import sqlite3
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from threading import Barrier

from django.db import connection, connections


class ManyHands:
    """SQLite tests live in memory, where writers do not wait for one another: there the hands get what stands in it
    as a file, which is what the program runs on. Look at the outcome through a hand too."""

    def __init__(self, folder, monkeypatch):
        self.copy, self.monkeypatch = folder / "copy.sqlite3", monkeypatch

    def __call__(self, call, arguments):
        if connection.vendor == "sqlite" and not self.copy.exists():
            with connection.cursor() as cursor:
                cursor.execute("VACUUM INTO %s", [str(self.copy)])
            # because: a database that was set up is so already, and who turns it waits for nobody
            with closing(sqlite3.connect(self.copy)) as file:
                file.execute("PRAGMA journal_mode=WAL")
            self.monkeypatch.setitem(connections.databases["default"], "NAME", str(self.copy))
        start = Barrier(len(arguments))
        with ThreadPoolExecutor(len(arguments)) as hands:
            return list(hands.map(lambda argument: self._hand(call, argument, start), arguments))

    @staticmethod
    def _hand(call, argument, start):
        try:
            start.wait()
            return call(argument)
        finally:
            connection.close()
