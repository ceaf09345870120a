"""A cache in a file that all processes of the machine share."""

import os
import sqlite3
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

import pytest

from trimops.settings import base
from trimops.web import shared_cache
from trimops.web.shared_cache import SharedCache

ANOTHER = """
import sys
from django.conf import settings
settings.configure()
from trimops.web.shared_cache import SharedCache
kept = SharedCache(sys.argv[1], {})
print(kept.add("once", 1, 60), [kept.incr("count") for _ in range(200)][-1])
"""


@pytest.fixture
def kept(tmp_path) -> SharedCache:
    return SharedCache(str(tmp_path / "counts.sqlite3"), {"OPTIONS": {"MAX_ENTRIES": 100}})


def test_processes_count_together_and_nobody_is_lost(kept, tmp_path):
    kept.add("count", 0, 60)
    command = [sys.executable, "-c", ANOTHER, str(tmp_path / "counts.sqlite3")]
    others = [subprocess.Popen(command, stdout=subprocess.PIPE, text=True) for _ in range(2)]
    with ThreadPoolExecutor(4) as threads:
        list(threads.map(lambda _: kept.incr("count"), range(200)))
    said = [each.communicate(timeout=60)[0].split() for each in others]
    assert kept.get("count") == 600
    # Of those who put down the same one is told that it is theirs.
    assert sorted(words[0] for words in said) == ["False", "True"]
    assert kept.add("once", 1, 60) is False


def test_what_is_kept_ends_when_it_was_said(kept, monkeypatch):
    kept.set("short", [1.5, 2.5], 10)
    kept.set("for-good", "x", None)
    assert (kept.get("short"), kept.get("for-good"), kept.get("nothing", 7)) == ([1.5, 2.5], "x", 7)
    later = shared_cache.time.time() + 11
    monkeypatch.setattr("trimops.web.shared_cache.time.time", lambda: later)
    assert (kept.get("short"), kept.get("for-good")) == (None, "x")
    with pytest.raises(ValueError, match="short"):
        kept.incr("short")
    assert kept.touch("short", 60) is False
    assert kept.add("short", 1, 60) is True
    assert (kept.touch("short", 60), kept.delete("short"), kept.delete("short")) == (True, True, False)
    assert kept.get_many(["short", "for-good"]) == {"for-good": "x"}
    kept.clear()
    assert kept.get("for-good") is None


def test_it_does_not_grow_for_ever_and_what_lasts_longest_stays(kept, monkeypatch):
    monkeypatch.setattr(shared_cache, "SWEPT_EACH", 50)
    kept.set("lasts", 1, 3600)
    for number in range(500):
        kept.set(f"place-{number}", 1, 60)
    left = sum(kept.get(f"place-{number}") is not None for number in range(500))
    assert left <= 150
    assert kept.get("lasts") == 1


def test_a_spoiled_file_is_begun_anew_and_keeps_nobody_out(tmp_path):
    file = tmp_path / "counts.sqlite3"
    file.write_bytes(b"a full disk left this" * 400)
    kept = SharedCache(str(file), {})
    kept.set("x", 1, 60)
    assert kept.get("x") == 1


def test_nothing_but_plain_values_is_kept_and_only_its_owner_reads_it(kept, tmp_path):
    with pytest.raises(TypeError):
        kept.set("x", object())
    kept.clear()
    assert oct((tmp_path / "counts.sqlite3").stat().st_mode & 0o077) == "0o0"


def test_a_file_that_cannot_be_had_says_so(tmp_path):
    (tmp_path / "folder").mkdir()
    with pytest.raises(sqlite3.Error):
        SharedCache(str(tmp_path / "folder"), {}).get("x")


@pytest.mark.skipif(bool(os.environ.get("REDIS_URL")), reason="counted in Redis there")
def test_without_redis_the_limits_are_counted_in_it():
    assert base.CACHES["default"]["BACKEND"] == "trimops.web.shared_cache.SharedCache"
