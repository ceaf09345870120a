"""What every test run shares: jobs in place, and a Redis database of its own for each test process."""

import importlib
import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from django.apps import apps
from django.conf import settings
from django.core.cache import cache
from django.db import connection
from hypothesis import settings as hypothesis_settings
from pytest_django import DjangoDbBlocker

from tests.services.worker import Worker, worker
from trimops.celery import app

BROWSER_TESTS = Path(__file__).parent / "browser"
LONG_IN_THE_BROWSER = {"test_crush_sixty.py", "test_crush_states.py", "test_every_page.py"}
# Runs of many minutes that hang on nothing but the crush page: `make long`, and a part of `make bench`.
LONG_RUNS = {
    *(
        "test_crush_bench.py",
        "test_crush_list_keys.py",
        "test_crush_photo_size.py",
        "test_crush_sender_pauses.py",
    ),
    *(
        "test_crush_shown.py",
        "test_crush_sign_out.py",
        "test_crush_sixty.py",
        "test_crush_slips.py",
        "test_crush_states.py",
    ),
    *("test_crush_taps.py", "test_crush_told.py", "test_crush_two_phones.py"),
}
HAS_TIME = os.environ.get("TRIMOPS_LONG", "0") == "1"
DATABASE_FIXTURES = {"db", "transactional_db", "live_server", "job_worker"}

# because: a busy machine makes an example slow, and slowness is no fault of the rule under test; and a change must pass
# or fail by itself, so its random examples are the same each time. `make hunt` looks for new ones.
IS_HUNT = os.environ.get("TRIMOPS_HUNT", "0") == "1"
hypothesis_settings.register_profile("trimops", deadline=None, derandomize=not IS_HUNT)
hypothesis_settings.load_profile("trimops")


def pytest_configure(config: pytest.Config) -> None:
    """Jobs run where they are enqueued, whatever REDIS_URL says; the `job_worker` fixture is the exception."""
    app.conf.task_always_eager = True
    if settings.REDIS_URL:
        # Two test processes that shared one would see each other's limits and take each other's jobs.
        number = int(os.environ.get("PYTEST_XDIST_WORKER", "gw0").removeprefix("gw")) + 1
        settings.REDIS_URL = settings.REDIS_URL.removesuffix("/0") + f"/{number}"
        settings.CACHES["default"]["LOCATION"] = settings.REDIS_URL
        app.conf.broker_url = settings.REDIS_URL


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> Iterator[None]:
    """Mark what touches the database or the browser, so that `make test` can choose by mark; then put them in turn."""
    if not HAS_TIME:
        items[:] = [item for item in items if item.path.name not in LONG_RUNS]
    has_servers = bool(settings.REDIS_URL) and "postgresql" in settings.DATABASES["default"]["ENGINE"]
    for item in items:
        if _touches_database(item):
            item.add_marker("database")
        if item.path.is_relative_to(BROWSER_TESTS):
            item.add_marker("browser")
        if item.get_closest_marker("services") and not has_servers:
            item.add_marker(
                pytest.mark.skip(reason="needs DATABASE_URL and REDIS_URL: run `make test-servers`")
            )
    yield  # the database plugin has an order of its own
    items.sort(key=_turn)


def _turn(item: pytest.Item) -> int:
    """Browsers last: one leaves its event loop in the process, and asynchronous tests want one of their own.

    Of them the longest first, so that two processes end at about the same time.
    """
    if not item.get_closest_marker("browser"):
        return 0
    return 1 if item.path.name in LONG_IN_THE_BROWSER else 2


@pytest.fixture(autouse=True)
def _nobody_has_been_here_before() -> None:
    """Limits on sign-in are counted in the cache; each test starts with none counted."""
    cache.clear()


@pytest.fixture(scope="session")
def django_db_setup(
    request: pytest.FixtureRequest, django_db_setup: None, django_db_blocker: DjangoDbBlocker
) -> None:
    """Tables made straight from the models (--nomigrations) get the locks that a migration puts on them."""
    if request.config.getoption("nomigrations"):
        locks = importlib.import_module("invoicing.models.issued_locks")
        with django_db_blocker.unblock(), connection.schema_editor() as editor:
            locks.lock_issued(apps, editor)


@pytest.fixture
def job_worker(transactional_db: None, tmp_path: Path) -> Iterator[Worker]:
    """A real Celery worker on the test's own database and an empty broker. Mark such a test `services`."""
    with worker(app, tmp_path / "worker.log") as started:
        yield started


def _touches_database(item: pytest.Item) -> bool:
    return item.get_closest_marker("django_db") is not None or bool(DATABASE_FIXTURES & _fixtures_of(item))


def _fixtures_of(item: pytest.Item) -> set[str]:
    return set(getattr(item, "fixturenames", ()))
