"""A backup of a newer trimops is refused by an older one, and the other way round it says what is still to do."""

import tomllib
from dataclasses import replace

import pytest

from tests.architecture.source_tree import ROOT
from tests.trimops.backup.test_archive import CONTENTS, MANIFEST
from trimops.backup.errors import OlderProgram
from trimops.backup.program import Program, this_program

PROGRAM = Program("0.2.0", frozenset({"farms.0001_initial", "farms.0002_more"}))


def of(*migrations):
    return replace(MANIFEST, contents=replace(CONTENTS, migrations=migrations))


def test_a_backup_with_a_migration_that_is_not_known_here_is_refused():
    with pytest.raises(OlderProgram, match=r"1 of its migrations are not known here \(farms\.0003_most\)"):
        PROGRAM.refuse_newer(of("farms.0001_initial", "farms.0003_most"))


@pytest.mark.parametrize(
    ("applied", "awaited"),
    [((), 2), (("farms.0001_initial",), 1), (("farms.0001_initial", "farms.0002_more"), 0)],
)
def test_an_older_one_is_taken_and_migrations_are_still_awaited(applied, awaited):
    PROGRAM.refuse_newer(of(*applied))
    assert PROGRAM.awaited(of(*applied)) == awaited


def test_this_program_knows_its_version_and_what_lies_on_the_disk(settings):
    settings.MIGRATION_MODULES = {}
    assert {
        "farms.0001_initial",
        "auth.0001_initial",
        "invoicing.0005_issued_stays",
    } <= this_program().migrations
    with (ROOT / "pyproject.toml").open("rb") as opened:
        assert this_program().version == tomllib.load(opened)["project"]["version"]
