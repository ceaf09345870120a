"""Two databases are told the same only where every row, value and definition is the same."""

import sqlite3
from contextlib import closing
from hashlib import sha256

import pytest

from tests.trimops.backup.small_places import filled_place, opened, rows_of, run_in
from trimops.backup.contents import differences
from trimops.backup.sqlite_contents import sqlite_contents


def told(place):
    with opened(place.store.path) as database:
        return sqlite_contents(database)


def test_it_counts_rows_and_names_triggers_indexes_and_migrations(tmp_path):
    contents = told(filled_place(tmp_path, cows=20))
    assert {name: table.rows for name, table in contents.tables.items()} == {
        "cow": 20,
        "farm": 2,
        "django_migrations": 1,
    }
    assert contents.rows == 23
    names = [" ".join(name.split()[:2]) for name in contents.objects]
    assert names == [
        "index cow_farm",
        "table cow",
        "table django_migrations",
        "table farm",
        "trigger cow_stays",
    ]
    assert contents.migrations == ["farms.0001_initial"]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ("DELETE FROM cow WHERE id = 7", "table cow has 19 rows, not 20"),
        ("UPDATE farm SET name = 'Low Tarnoch' WHERE id = 2", "table farm has other rows, as many"),
        ("UPDATE farm SET id = 3 WHERE id = 2", "table farm has other rows, as many"),
        ("DROP TRIGGER cow_stays", "trigger cow_stays"),
        ("DROP INDEX cow_farm", "index cow_farm"),
        ("DROP TABLE farm", "table farm is missing"),
        ("CREATE TABLE shed (id integer)", "table shed was not there"),
        (
            "INSERT INTO django_migrations (app, name) VALUES ('farms', '0002')",
            "migration farms.0002 differs",
        ),
    ],
)
def test_every_change_shows(tmp_path, change, words):
    place = filled_place(tmp_path)
    before = told(place)
    run_in(place, "PRAGMA foreign_keys = OFF; " + change)
    assert any(words in line for line in differences(before, told(place)))


def test_the_same_is_told_the_same_whatever_order_it_was_written_in(tmp_path):
    place = filled_place(tmp_path)
    before = told(place)
    run_in(place, "DELETE FROM farm WHERE id = 1; INSERT INTO farm (id, name) VALUES (1, 'Høje Eng')")
    run_in(place, "VACUUM")
    assert differences(before, told(place)) == []


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (("1",), (1,)),
        ((1,), (1.0,)),
        ((b"cow",), ("cow",)),
        ((b"cow",), (sha256(b"cow").digest(),)),
        ((b"cow",), (sha256(b"cow").hexdigest(),)),
        ((None,), ("None",)),
        (("",), (None,)),
        (("a', 'b", "c"), ("a", "b', 'c")),
        (("a\x00b",), ("a",)),
        ((0.1 + 0.2,), (0.3,)),
        ((2**62,), (2**62 + 1,)),
        (("é",), ("e\u0301",)),
    ],
)
@pytest.mark.parametrize("kind", ["", " blob"])
def test_no_two_different_rows_are_told_the_same(one, other, kind):
    assert sum_of(one, kind) != sum_of(other, kind)
    assert sum_of(one, kind) == sum_of(one, kind)


def sum_of(row, kind):
    with closing(sqlite3.connect(":memory:")) as database:
        database.execute(f"CREATE TABLE t ({', '.join(name + kind for name in 'abcdef'[: len(row)])})")
        database.execute(f"INSERT INTO t VALUES ({', '.join('?' * len(row))})", row)
        return sqlite_contents(database).tables["t"].sha256


def test_text_that_is_no_utf_8_is_told_as_it_is(tmp_path):
    place = filled_place(tmp_path)
    run_in(place, "UPDATE farm SET name = CAST(x'ff41' AS text) WHERE id = 1")
    one = told(place)
    assert one.tables["farm"].rows == 2
    run_in(place, "UPDATE farm SET name = CAST(x'fe41' AS text) WHERE id = 1")
    assert differences(one, told(place)) == ["table farm has other rows, as many"]
    assert rows_of(place, "SELECT count(*) FROM cow") == [(20,)]
