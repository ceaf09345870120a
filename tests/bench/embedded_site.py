"""The program on its embedded default (SQLite in a file, jobs in place), in a folder that is gone afterwards.

Import this before anything that holds models: it is what makes the program ready where no test runner has.
"""

import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager

import django
from django.conf import settings
from django.db import connection, connections

if not settings.configured:
    os.environ["DJANGO_SETTINGS_MODULE"] = "trimops.settings.test"
    for server in ("DATABASE_URL", "REDIS_URL"):
        os.environ.pop(server, None)
    django.setup()

from tests.straight_tables import lay_tables  # because: its models want Django set up


@contextmanager
def embedded_site() -> Iterator[None]:
    """Inside, the database is an empty file of its own."""
    folder = tempfile.mkdtemp(prefix="trimops-bench-")
    before = connections.databases["default"]["NAME"]
    connections.databases["default"]["NAME"] = os.path.join(folder, "trimops.sqlite3")
    connection.close()
    try:
        lay_tables()
        yield
    finally:
        connection.close()
        connections.databases["default"]["NAME"] = before
        shutil.rmtree(folder, ignore_errors=True)
