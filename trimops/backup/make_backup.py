"""Make one backup: take all down as of one moment, pack it, restore it for a trial, and only then call it good."""

import os
import shutil
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path

from trimops.backup.archive import FILES, unpack, write_archive
from trimops.backup.data_files import copy_files
from trimops.backup.disk import file_sum, flush_folder, refuse_without_room
from trimops.backup.errors import BackupProblem, FaultyBackup, NotVerified
from trimops.backup.manifest import Manifest
from trimops.backup.names import BackupState, abandoned_in, backups_in, file_name, part_name
from trimops.backup.place import Place
from trimops.backup.retention import Keep, backups_to_drop
from trimops.backup.sealed import refuse_weak_key
from trimops.backup.store import Store
from trimops.backup.work_folder import work_folder

ABANDONED = timedelta(days=1)


@dataclass(frozen=True)
class BackupMade:
    """The file, what it says of itself, what was dropped for it, and links to folders, which it lacks."""

    path: Path
    state: BackupState
    manifest: Manifest
    dropped: Sequence[Path]
    left_out: Sequence[Path]


def make_backup(
    *,
    place: Place,
    to: Path,
    at: datetime,
    program: str,
    key: str | None = None,
    keep: Keep | None = None,
    is_tried_out: bool = True,
) -> BackupMade:
    """Write `trimops-<at>.tar` (`.tar.enc` with a `key`) into the folder `to`, while the site works on.

    `at` is the aware instant at which it was begun: nothing committed before is missing. `program` is this trimops'
    version. With `keep`, verified backups that it does not hold are dropped, once this one is verified. FaultyBackup:
    the file does not restore to what was taken down, and is called `.faulty`. NotVerified: that could not be tried, and
    it is called `-unverified`. Any other BackupProblem: nothing was made.
    """
    if key is not None:
        refuse_weak_key(key)
    to.mkdir(parents=True, exist_ok=True, mode=0o700)
    folder = place.folder.without(to)
    with work_folder(folder.path) as work:
        for left in abandoned_in(to, at - ABANDONED):
            left.unlink(missing_ok=True)
        size = place.store.size() + folder.size()
        refuse_without_room([(work, size), (to, size)])
        part = to / part_name(file_name(at, is_sealed=key is not None, state=BackupState.VERIFIED))
        try:
            manifest = _pack(Place(place.store, folder), at, program, key, work / "packed", part)
            state, why = BackupState.UNVERIFIED, ""
            if is_tried_out:
                state, why = _try_out(place.store, part, key, work / "tried")
            path = _named(part, to / file_name(at, is_sealed=key is not None, state=state))
        except OSError as error:
            raise BackupProblem(f"The backup could not be written: {error}") from error
        finally:
            part.unlink(missing_ok=True)
    if why:
        _refuse(state, why, path)
    dropped = _drop_old(to, keep) if keep and state is BackupState.VERIFIED else []
    return BackupMade(path, state, manifest, dropped, folder.links_left_out())


def _pack(place: Place, at: datetime, program: str, key: str | None, packed: Path, part: Path) -> Manifest:
    """Take the database and the files down into the folder `packed`, and write all of it to `part`."""
    packed.mkdir(mode=0o700)
    dump = packed / place.store.dump_name
    contents = place.store.take(dump)
    manifest = Manifest(
        made_at=at,
        program=program,
        engine=place.store.engine,
        dumped_by=place.store.dumped_by(),
        dump=dump.name,
        dump_sum=file_sum(dump),
        contents=contents,
        files=copy_files(place.folder, packed / FILES),
    )
    write_archive(part, manifest, packed, key)
    # because: what is tried out next takes as much room again
    shutil.rmtree(packed)
    return manifest


def _try_out(store: Store, part: Path, key: str | None, tried: Path) -> tuple[BackupState, str]:
    """What a restore into an empty place shows; in words where the backup is not verified by it."""
    try:
        manifest = unpack(part, key, tried)
        wrong = store.try_out(tried / manifest.dump, manifest.contents)
    except FaultyBackup as fault:
        return BackupState.FAULTY, fault.message
    except (BackupProblem, OSError) as problem:
        return BackupState.UNVERIFIED, str(problem)
    return (BackupState.FAULTY, "; ".join(wrong[:20])) if wrong else (BackupState.VERIFIED, "")


def _named(part: Path, path: Path) -> Path:
    """Give the whole file its name; one that is there is never written over."""
    if path.exists():
        raise BackupProblem(f"{path} is there already: two backups of one second.")
    os.replace(part, path)
    flush_folder(path.parent)
    return path


def _refuse(state: BackupState, why: str, path: Path) -> None:
    if state is BackupState.FAULTY:
        raise FaultyBackup(
            f"This backup does not restore to what was taken down, and is kept as {path}: {why}"
        )
    raise NotVerified(f"This backup could not be tried out, and is kept as {path}: {why}")


def _drop_old(to: Path, keep: Keep) -> list[Path]:
    """Drop what `keep` does not hold; unverified and faulty ones are a person's to look at."""
    good = [told for told in backups_in(to) if told.state is BackupState.VERIFIED]
    drop = backups_to_drop([told.stamp for told in good], keep)
    dropped = [told.path for told in good if told.stamp in drop]
    for path in dropped:
        path.unlink(missing_ok=True)
    flush_folder(to)
    return dropped
