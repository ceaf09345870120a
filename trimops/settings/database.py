"""The database: SQLite that bears several writers by default, PostgreSQL when DATABASE_URL says so."""

from pathlib import Path

import dj_database_url

KEPT_ALIVE = "-c tcp_keepalives_idle=30 -c tcp_keepalives_interval=10 -c tcp_keepalives_count=3"


def database_from(url: str | None, data_dir: Path) -> dict[str, object]:
    """Django's settings for the one database; `url` as in DATABASE_URL, None for SQLite in `data_dir`."""
    if url and not url.startswith("sqlite"):
        return _postgres(url)
    data_dir.mkdir(parents=True, exist_ok=True)
    name = url.removeprefix("sqlite:///") if url else str(data_dir / "trimops.sqlite3")
    return {
        "ENGINE": "django.db.backends.sqlite3",
        "NAME": name,
        "OPTIONS": {
            # A writer takes its lock at BEGIN: a deferred one fails with "database is locked" on upgrade.
            "transaction_mode": "IMMEDIATE",
            "timeout": 20,
            "init_command": "PRAGMA journal_mode=WAL; PRAGMA synchronous=NORMAL; PRAGMA foreign_keys=ON;",
        },
    }


def _postgres(url: str) -> dict[str, object]:
    at = dj_database_url.parse(url, conn_max_age=60, conn_health_checks=True)
    # A machine that lost its power says no goodbye: the server asks after it, and what it held locked is free again.
    return {**at, "OPTIONS": {"options": KEPT_ALIVE, **at.get("OPTIONS", {})}}
