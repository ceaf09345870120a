"""The address of a PostgreSQL database shows no password where others can read it."""

from pathlib import Path

import pytest

from trimops.backup.errors import BackupProblem
from trimops.backup.place import place_of_postgres
from trimops.backup.postgres_address import PostgresAddress
from trimops.backup.postgres_programs import Programs, programs_for

OF_DJANGO = {
    **{"NAME": "hooves", "USER": "trimmer", "PASSWORD": "s3cret", "HOST": "db.example", "PORT": 5433},
    "OPTIONS": {"sslmode": "require"},
}
ADDRESS = PostgresAddress.of_settings(OF_DJANGO)


def test_it_is_read_as_django_has_it():
    assert ADDRESS.name == "hooves"
    assert ADDRESS.parts == {
        "dbname": "hooves",
        "user": "trimmer",
        "host": "db.example",
        "port": "5433",
        "sslmode": "require",
    }


def test_the_password_goes_by_the_environment_only():
    assert "s3cret" not in ADDRESS.conninfo()
    assert "s3cret" not in repr(place_of_postgres(ADDRESS, Path("/nowhere")))
    assert ADDRESS.env()["PGPASSWORD"] == "s3cret"
    assert ADDRESS.beside("other").env()["PGPASSWORD"] == "s3cret"


def test_what_only_django_understands_is_left_out():
    of = PostgresAddress.of_settings({"NAME": "a", "OPTIONS": {"pool": True, "sslmode": "verify-full"}})
    assert of.parts == {"dbname": "a", "sslmode": "verify-full"}


def test_a_server_that_is_not_there_is_told(tmp_path):
    place = place_of_postgres(PostgresAddress({"dbname": "hooves", "host": str(tmp_path)}), tmp_path)
    with pytest.raises(BackupProblem, match="hooves cannot be reached"):
        place.store.size()


def test_the_programs_are_at_least_as_new_as_the_server_and_no_newer_than_they_must():
    found = programs_for(9)
    assert (found.folder / "pg_dump").exists()
    assert programs_for(found.major) == found
    assert programs_for(18).major >= 18
    with pytest.raises(BackupProblem, match="Install postgresql-client-999"):
        programs_for(999)


def test_a_program_that_fails_says_what_it_said(tmp_path):
    (tmp_path / "pg_dump").write_text("#!/bin/sh\necho out of hay >&2\nexit 3\n")
    (tmp_path / "pg_dump").chmod(0o755)
    with pytest.raises(BackupProblem, match="pg_dump failed: out of hay"):
        Programs(tmp_path, "18.6").run("pg_dump", at=ADDRESS)
