"""Files that survive a crash, and room for them."""

import errno
import hashlib
import os
import shutil
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

from trimops.backup.errors import BackupProblem

CHUNK = 1 << 20
SPARE = 32 << 20
"""So many bytes are left free in any case."""
SHARE = 1.1


def new_private_file(path: Path) -> BinaryIO:
    """A new file that its owner alone may read, opened for writing. FileExistsError where there is one."""
    return os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb")


def flush_file(path: Path) -> None:
    """Return when the file's bytes are on the disk."""
    with path.open("rb") as opened:
        os.fsync(opened.fileno())


def flush_folder(path: Path) -> None:
    """Return when the names in the folder are on the disk."""
    handle = os.open(path, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(handle)
    except OSError as error:
        # Some network disks know no such thing for folders.
        if error.errno != errno.EINVAL:
            raise
    finally:
        os.close(handle)


@dataclass(frozen=True)
class FileSum:
    """Size in bytes and SHA-256 of a file."""

    size: int
    sha256: str


def copy_hashed(source: BinaryIO, sink: BinaryIO) -> FileSum:
    """Copy all of it in pieces, and tell what it was."""
    size, summed = 0, hashlib.sha256()
    while piece := source.read(CHUNK):
        sink.write(piece)
        summed.update(piece)
        size += len(piece)
    return FileSum(size, summed.hexdigest())


def file_sum(path: Path) -> FileSum:
    """Read it once, in pieces."""
    with path.open("rb") as source, open(os.devnull, "wb") as nowhere:
        return copy_hashed(source, nowhere)


def refuse_without_room(
    needs: Iterable[tuple[Path, int]],
    free_in: Callable[[Path], int] = lambda folder: shutil.disk_usage(folder).free,
) -> None:
    """BackupProblem where the disk of a folder has less free than the bytes that are needed there, all together."""
    wanted: dict[int, tuple[Path, int]] = {}
    for folder, size in needs:
        disk = folder.stat().st_dev
        before = wanted.get(disk, (folder, SPARE))
        wanted[disk] = (before[0], before[1] + round(SHARE * size))
    for folder, size in wanted.values():
        free = free_in(folder)
        if free < size:
            raise BackupProblem(
                f"The disk of {folder} has {megabytes(free)} free, and about {megabytes(size)} are needed. "
                "Make room, or name another disk."
            )


def megabytes(size: int) -> str:
    return f"{size / 1e6:,.1f} MB"
