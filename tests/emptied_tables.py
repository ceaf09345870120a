"""All tables made empty after a test that committed: only those are touched in which something lies.

Django's own way takes a tenth of a second and more: it empties every table there is, and then writes all content types
and permissions anew, which no test changes.
"""

from collections.abc import Sequence
from functools import cache

from django.db import connections, transaction
from django.test import TransactionTestCase

KEPT = {"django_migrations", "django_content_type", "auth_permission"}


def empty_after_each() -> None:
    """From here on, tests that commit are followed by `empty_tables`."""
    TransactionTestCase._fixture_teardown = _empty_all  # type: ignore[attr-defined]


def empty_tables(alias: str = "default") -> None:
    """Delete every row but those that the tables were made with."""
    connection = connections[alias]
    names = _tables(alias, str(connection.settings_dict["NAME"]))
    with transaction.atomic(using=alias), connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            # Whoever is still at it (a killed worker's last statement) is waited for, as TRUNCATE does.
            cursor.execute(f"LOCK TABLE {', '.join(names)} IN ACCESS EXCLUSIVE MODE")
            cursor.execute("SET LOCAL session_replication_role = replica")
        cursor.execute(" UNION ALL ".join(f"SELECT '{n}' WHERE EXISTS (SELECT 1 FROM {n})" for n in names))
        for (name,) in cursor.fetchall():
            cursor.execute(f"DELETE FROM {name}")


def _empty_all(test: TransactionTestCase) -> None:
    for alias in test._databases_names(include_mirrors=False):  # type: ignore[attr-defined]
        empty_tables(alias)


@cache
def _tables(alias: str, database: str) -> Sequence[str]:
    """Quoted; asked for once in each database, for no test makes any."""
    connection = connections[alias]
    found = connection.introspection.django_table_names(only_existing=True, include_views=False)
    return tuple(connection.ops.quote_name(name) for name in sorted({*found} - KEPT))
