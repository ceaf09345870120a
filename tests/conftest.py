"""What every test run shares: jobs in place, and a Redis database of its own for each test process."""

import gc
import importlib
import os
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest
from django.conf import settings
from django.core.cache import caches
from django.db import connection
from hypothesis import settings as hypothesis_settings
from pytest_django import DjangoDbBlocker

from tests.emptied_tables import empty_after_each
from tests.random_examples import HAS_TIME, IS_HUNT, examples
from tests.services.worker import Worker, worker
from trimops.celery import app

BROWSER_TESTS = Path(__file__).parent / "browser"
# The longest first: `make test` hands files out in this order, so that two processes end at about the same time.
LONG = (
    *("test_part_1.py", "test_part_2.py", "test_every_cell.py", "test_nothing_is_lost.py"),
    *("test_demo_command.py", "test_server.py", "test_crush_machine.py", "test_orienteering.py"),
    "test_en16931_rules.py",
)
LONG_IN_THE_BROWSER = (
    *("test_crush_states.py", "test_every_page.py", "test_crush_offline.py", "test_crush_sixty.py"),
    *("test_crush_sender.py", "test_crush_queue.py", "test_crush_store.py", "test_crush_installed.py"),
    *("test_crush_two_phones.py", "test_phone_and_server.py", "test_keyboard_and_theme.py"),
)
# Runs of many minutes that hang on nothing but the crush page: `make long`, and a part of `make bench`.
LONG_RUNS = {
    *("test_crush_bench.py", "test_crush_list_keys.py", "test_crush_photo_size.py"),
    *("test_crush_sender_pauses.py", "test_crush_shown.py", "test_crush_sign_out.py", "test_crush_slips.py"),
    *("test_crush_states.py", "test_crush_taps.py", "test_crush_told.py"),
    # 45 seconds of a core for one walk through old tables; each migration runs once in make check as well.
    "test_kit_into_places.py",
    # Each fault by itself, eleven starts of a worker; all of them together are in test_fault_run.py.
    "test_errand_kills.py",
}
COMMITTING_FIXTURES = {"transactional_db", "live_server", "job_worker"}
DATABASE_FIXTURES = {"db", *COMMITTING_FIXTURES}

# because: a busy machine makes an example slow, and slowness is no fault of the rule under test; and a change must pass
# or fail by itself, so its random examples are the same each time. `make hunt` looks for new ones, and for more.
hypothesis_settings.register_profile(
    "trimops", deadline=None, derandomize=not IS_HUNT, max_examples=examples(120)
)
hypothesis_settings.load_profile("trimops")


def pytest_configure(config: pytest.Config) -> None:
    """Jobs run where they are enqueued, whatever REDIS_URL says; the `job_worker` fixture is the exception."""
    app.conf.task_always_eager = True
    empty_after_each()
    if settings.REDIS_URL:
        # Two test processes that shared one would see each other's limits and take each other's jobs.
        number = int(os.environ.get("PYTEST_XDIST_WORKER", "gw0").removeprefix("gw")) + 1
        settings.REDIS_URL = settings.REDIS_URL.removesuffix("/0") + f"/{number}"
        settings.CACHES["default"]["LOCATION"] = settings.REDIS_URL
        app.conf.broker_url = settings.REDIS_URL


@pytest.hookimpl(wrapper=True)
def pytest_collection(session: pytest.Session) -> Iterator[object]:
    """Ten thousand tests are made and stay: nothing of them is looked through for garbage again and again."""
    gc.disable()
    try:
        return (yield)
    finally:
        gc.freeze()
        gc.enable()


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> Iterator[None]:
    """Mark what touches the database or the browser, so that `make test` can choose by mark; then put them in turn."""
    if not HAS_TIME:
        items[:] = [item for item in items if item.path.name not in LONG_RUNS]
    places = {path: place for place, path in enumerate(dict.fromkeys(item.path for item in items))}
    has_servers = bool(settings.REDIS_URL) and "postgresql" in settings.DATABASES["default"]["ENGINE"]
    if has_servers and not HAS_TIME:
        items[:] = _part_for_servers(items)
    for item in items:
        if _touches_database(item):
            item.add_marker("database")
        if item.path.is_relative_to(BROWSER_TESTS):
            item.add_marker("browser")
        if item.get_closest_marker("services") and not has_servers:
            item.add_marker(
                pytest.mark.skip(reason="needs DATABASE_URL and REDIS_URL: run `make test-servers`")
            )
    yield  # the database plugin has an order of its own, which tears files apart
    items.sort(key=lambda item: (_turn(item), places[item.path], not _commits(item)))


def _part_for_servers(items: list[pytest.Item]) -> list[pytest.Item]:
    """Of a table of cases the servers are asked the first and the last, of a file the first two tests and a third of
    the rest: all of them were tried on the embedded form.

    What is meant for the servers alone, or bears `both`, is there with all of its cases; with time (`TRIMOPS_LONG`) so
    is everything.
    """
    tables: dict[str, list[pytest.Item]] = {}
    for item in items:
        tables.setdefault(item.nodeid.partition("[")[0], []).append(item)
    places: Counter[Path] = Counter()
    chosen: list[pytest.Item] = []
    for cases in tables.values():
        if _is_whole(cases[0]):
            chosen += cases
            continue
        place = places[cases[0].path]
        places[cases[0].path] += 1
        if place < 2 or place % 3 == 0:
            chosen += dict.fromkeys((cases[0], cases[-1]))
    return chosen


def _is_whole(item: pytest.Item) -> bool:
    return any(item.get_closest_marker(mark) for mark in ("services", "both"))


def _turn(item: pytest.Item) -> int:
    """Browsers last: one leaves its event loop in the process, and asynchronous tests want one of their own."""
    if item.path.name in LONG:
        return LONG.index(item.path.name) - len(LONG)
    if not item.get_closest_marker("browser"):
        return 0
    if item.path.name in LONG_IN_THE_BROWSER:
        return 1 + LONG_IN_THE_BROWSER.index(item.path.name)
    return 1 + len(LONG_IN_THE_BROWSER)


@pytest.fixture(autouse=True)
def _nobody_has_been_here_before() -> None:
    """Limits on sign-in are counted in the cache; each test starts with none counted."""
    for alias in settings.CACHES:
        caches[alias].clear()


@pytest.fixture(scope="session")
def django_db_setup(
    request: pytest.FixtureRequest, django_db_setup: None, django_db_blocker: DjangoDbBlocker
) -> None:
    """Tables made straight from the models (--nomigrations) get the locks that a migration puts on them."""
    if request.config.getoption("nomigrations"):
        with django_db_blocker.unblock():
            importlib.import_module("tests.straight_tables").put_locks_on()
    if connection.vendor == "sqlite":
        # because: a test that commits empties all tables by DELETE afterwards
        trail = importlib.import_module("trimops.audit.models.audit_locks")
        with django_db_blocker.unblock():
            trail.unlock_deleting(connection)


@pytest.fixture
def job_worker(transactional_db: None, tmp_path: Path) -> Iterator[Worker]:
    """A real Celery worker on the test's own database and an empty broker. Mark such a test `services`."""
    with worker(app, tmp_path / "worker.log") as started:
        yield started


def _commits(item: pytest.Item) -> bool:
    """Such tests are the first of their file: what stands for a file is in a transaction, which they must not be in."""
    mark = item.get_closest_marker("django_db")
    return bool(mark and mark.kwargs.get("transaction")) or bool(COMMITTING_FIXTURES & _fixtures_of(item))


def _touches_database(item: pytest.Item) -> bool:
    return item.get_closest_marker("django_db") is not None or bool(DATABASE_FIXTURES & _fixtures_of(item))


def _fixtures_of(item: pytest.Item) -> set[str]:
    return set(getattr(item, "fixturenames", ()))
