"""One at a time, and free the moment its holder dies: on a file of SQLite with real processes, on PostgreSQL too."""

import os
import signal
import subprocess
import sys
import threading
import time
from contextlib import contextmanager

import pytest
from django.conf import settings
from django.db import connection, transaction

from tests.services.worker import database_url_of_test
from trimops.errands import only_one as locks
from trimops.errands.only_one import only_one

HOLDER = """
import sys, django
django.setup()
from trimops.errands.only_one import only_one
with only_one("a name") as is_mine:
    print("mine" if is_mine else "taken", flush=True)
    sys.stdin.readline()
"""


@contextmanager
def other_process(url):
    """Another process that asks for the lock and keeps it until it is told to go on, or killed."""
    env = {
        **os.environ,
        "DATABASE_URL": url,
        "DJANGO_SETTINGS_MODULE": "trimops.settings.base",
        "REDIS_URL": "",
    }
    command = [sys.executable, "-c", HOLDER]
    with subprocess.Popen(
        command, env=env, cwd=settings.BASE_DIR, text=True, stdin=subprocess.PIPE, stdout=subprocess.PIPE
    ) as process:
        try:
            process.said = process.stdout.readline().strip()
            yield process
        finally:
            process.kill()


@pytest.fixture
def on_file(tmp_path, monkeypatch):
    """The locks of this process are those of a database in a file."""
    if connection.vendor != "sqlite":
        pytest.skip("a lock on a file is SQLite's")
    name = tmp_path / "locked.sqlite3"
    monkeypatch.setitem(connection.settings_dict, "NAME", str(name))
    return f"sqlite:///{name}"


def taken():
    with only_one("a name") as is_mine:
        return not is_mine


def test_another_process_finds_it_taken_and_has_it_once_it_is_free(on_file):
    with only_one("a name") as is_mine, other_process(on_file) as other:
        assert (is_mine, other.said) == (True, "taken")
    with other_process(on_file) as other:
        assert other.said == "mine"
        assert taken()
        other.stdin.write("\n")
        other.stdin.flush()
        assert other.wait(20) == 0
        assert not taken()


def test_a_killed_process_leaves_nothing_locked(on_file):
    with other_process(on_file) as other:
        assert taken()
        os.kill(other.pid, signal.SIGKILL)
        other.wait(20)
        assert not taken()


def test_a_child_that_was_forked_holds_nothing_and_takes_nothing_away(on_file):
    with only_one("a name"):
        child = os.fork()
        if not child:
            with only_one("another name") as is_mine:
                # What the parent holds the child sees as taken by somebody else.
                os._exit(0 if is_mine and taken() else 1)
        _, status = os.waitpid(child, 0)
        assert os.waitstatus_to_exitcode(status) == 0
        with other_process(on_file) as other:
            assert other.said == "taken"


def test_other_names_are_free_and_closing_one_lets_no_other_go(on_file):
    with only_one("a name"):
        with only_one("another name") as is_mine:
            assert is_mine
        with other_process(on_file) as other:
            assert other.said == "taken"


@pytest.mark.django_db(transaction=True)
def test_it_is_not_given_a_second_time_within_a_process():
    with only_one("a name") as is_mine:
        assert is_mine
        assert taken()
        found = []
        thread = threading.Thread(target=lambda: (found.append(taken()), connection.close()))
        thread.start()
        thread.join()
        assert found == [True]
    assert not taken()


@pytest.mark.django_db(transaction=True)
def test_what_the_block_raises_goes_on_and_the_lock_is_free():
    with pytest.raises(ZeroDivisionError), only_one("a name"):
        raise ZeroDivisionError
    assert not taken()
    assert not locks._held.keys


@pytest.mark.services
@pytest.mark.django_db(transaction=True)
def test_on_postgres_another_process_has_it_once_the_first_is_killed():
    with other_process(database_url_of_test()) as other:
        assert other.said == "mine"
        assert taken()
        os.kill(other.pid, signal.SIGKILL)
        other.wait(20)
        # The server notices that the line is gone in its own time.
        deadline = time.monotonic() + 10
        while taken():
            assert time.monotonic() < deadline
            time.sleep(0.02)


@pytest.mark.services
@pytest.mark.django_db(transaction=True)
def test_on_postgres_a_lock_is_not_kept_by_a_connection_whose_transaction_failed():
    with pytest.raises(ZeroDivisionError), transaction.atomic(), only_one("a name") as is_mine:
        assert is_mine
        with connection.cursor() as cursor, pytest.raises(Exception, match="division by zero"):
            cursor.execute("SELECT 1/0")
        raise ZeroDivisionError
    with other_process(database_url_of_test()) as other:
        assert other.said == "mine"


@pytest.mark.services
@pytest.mark.django_db(transaction=True)
def test_on_postgres_a_connection_that_was_closed_has_let_it_go():
    with only_one("a name"):
        connection.close()
        with other_process(database_url_of_test()) as other:
            assert other.said == "mine"
        connection.ensure_connection()
    assert not taken()
