"""Bring a backup back into an empty place: all of it, proven, or nothing."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from trimops.backup.archive import FILES, unpack
from trimops.backup.data_files import put_back, refuse_other_files
from trimops.backup.disk import refuse_without_room
from trimops.backup.errors import BackupProblem
from trimops.backup.manifest import Manifest
from trimops.backup.place import Place
from trimops.backup.work_folder import work_folder

ENGINES = {"sqlite": "SQLite", "postgresql": "PostgreSQL"}


def restore_backup(
    *, file: Path, place: Place, key: str | None = None, accept: Callable[[Manifest], None] = lambda _: None
) -> Manifest:
    """Fill the empty `place` from `file`, and prove that every table and file is what the backup says; which it says.

    `accept` may refuse the manifest. NotEmpty: the place holds something. WrongKey, FaultyBackup, OlderProgram and any
    other BackupProblem: the database is still empty. Files come first and the database last and at once, so a
    restore that was broken off leaves an empty database and can be begun again.
    """
    if not file.is_file():
        raise BackupProblem(f"There is no file {file}.")
    place.store.refuse_unless_empty()
    with work_folder(place.folder.path) as work:
        refuse_without_room([(work, 2 * file.stat().st_size)])
        try:
            manifest = unpack(file, key, work, partial(_accept, place, accept))
            put_back(work / FILES, place.folder.path, manifest.files)
            place.store.load(work / manifest.dump, manifest.contents)
        except OSError as error:
            raise BackupProblem(f"The backup could not be restored: {error}") from error
    return manifest


def _accept(place: Place, accept: Callable[[Manifest], None], manifest: Manifest) -> None:
    """Everything that may be refused, before a byte is unpacked."""
    if manifest.engine != place.store.engine:
        raise BackupProblem(
            f"This backup is of {ENGINES.get(manifest.engine, manifest.engine)}, and the database that is set is of "
            f"{ENGINES[place.store.engine]}: set DATABASE_URL as it was when the backup was made."
        )
    accept(manifest)
    refuse_other_files(place.folder.path, manifest.files)
