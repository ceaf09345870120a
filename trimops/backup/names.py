"""The names of backup files: when they were made, whether they are sealed, and what is known of them.

`trimops-20261130T020000Z.tar`, `.tar.enc` when sealed, `-unverified` before the ending where nobody has
restored it, `.faulty` behind it where that was tried and failed.
"""

import re
from dataclasses import dataclass
from datetime import UTC, datetime
from enum import StrEnum
from pathlib import Path

PART = ".part"
STAMP = "%Y%m%dT%H%M%SZ"
NAME = re.compile(
    r"trimops-(?P<stamp>\d{8}T\d{6}Z)(?P<unverified>-unverified)?\.tar(?P<enc>\.enc)?(?P<faulty>\.faulty)?"
)


class BackupState(StrEnum):
    """What is known of a backup file."""

    VERIFIED = "verified"
    UNVERIFIED = "unverified"
    FAULTY = "faulty"


@dataclass(frozen=True)
class BackupFile:
    """A backup as its name tells it; `stamp` is aware, UTC, to the second."""

    path: Path
    stamp: datetime
    state: BackupState
    is_sealed: bool


def file_name(at: datetime, *, is_sealed: bool, state: BackupState) -> str:
    """The name of a backup made at the aware instant `at`."""
    unverified = "-unverified" if state is BackupState.UNVERIFIED else ""
    sealed = ".enc" if is_sealed else ""
    faulty = ".faulty" if state is BackupState.FAULTY else ""
    return f"trimops-{at.astimezone(UTC):{STAMP}}{unverified}.tar{sealed}{faulty}"


def read_name(path: Path) -> BackupFile | None:
    """What the name of `path` says; None where it is not the name of a backup."""
    match = NAME.fullmatch(path.name)
    if match is None:
        return None
    try:
        stamp = datetime.strptime(match["stamp"], STAMP).replace(tzinfo=UTC)
    except ValueError:
        return None
    state = BackupState.VERIFIED
    if match["faulty"]:
        state = BackupState.FAULTY
    elif match["unverified"]:
        state = BackupState.UNVERIFIED
    return BackupFile(path, stamp, state, is_sealed=bool(match["enc"]))


def part_name(name: str) -> str:
    """Of the file that is not whole yet and is to be called `name`."""
    return f".{name}{PART}"


def abandoned_in(folder: Path, before: datetime) -> list[Path]:
    """Files that were begun before the aware instant `before` and never came to their name."""
    parts = [path for path in folder.glob(f".trimops-*{PART}") if path.is_file()]
    begun = [(path, read_name(Path(path.name.removeprefix(".").removesuffix(PART)))) for path in parts]
    return [path for path, told in begun if told and told.stamp < before]


def backups_in(folder: Path) -> list[BackupFile]:
    """Every backup that lies in `folder`, oldest first; none where there is no such folder."""
    if not folder.is_dir():
        return []
    found = [told for path in folder.iterdir() if (told := read_name(path)) and path.is_file()]
    return sorted(found, key=lambda told: (told.stamp, told.path.name))
