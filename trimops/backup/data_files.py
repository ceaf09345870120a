"""The files of the data folder: which belong into a backup, and how they come back."""

import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path

from trimops.backup.disk import FileSum, copy_hashed, file_sum, flush_folder, new_private_file
from trimops.backup.errors import BackupProblem, NotEmpty
from trimops.backup.names import read_name
from trimops.backup.work_folder import LOCK, WORK

SECRET_KEY = "secret-key"
BEFORE = "before-restore"


@dataclass(frozen=True)
class DataFolder:
    """`path` with all that lies in it, except what is `left_out`: the database, backups, maps that can be made anew."""

    path: Path
    left_out: frozenset[Path] = field(default_factory=frozenset)

    def files(self) -> Iterator[Path]:
        """Each file that belongs into a backup, in order."""
        for folder, folders, names in os.walk(self.path):
            here = Path(folder)
            folders[:] = sorted(name for name in folders if not self._is_left_out(here / name))
            yield from (here / name for name in sorted(names) if self._belongs(here / name))

    def without(self, *paths: Path) -> "DataFolder":
        """The same with more left out."""
        return replace(self, left_out=self.left_out | set(paths))

    def size(self) -> int:
        return sum(path.stat().st_size for path in self.files())

    def links_left_out(self) -> list[Path]:
        """Links to folders: what they lead to is not taken."""
        return [
            Path(folder) / name
            for folder, folders, _ in os.walk(self.path)
            for name in sorted(folders)
            if (Path(folder) / name).is_symlink()
        ]

    @cached_property
    def _left_out(self) -> frozenset[str]:
        """However they were named: relative, through links."""
        return frozenset(os.path.realpath(path) for path in self.left_out)

    def _belongs(self, path: Path) -> bool:
        return path.is_file() and read_name(path) is None and not self._is_left_out(path)

    def _is_left_out(self, path: Path) -> bool:
        return path.name == LOCK or path.name.startswith(WORK) or os.path.realpath(path) in self._left_out


def copy_files(folder: DataFolder, into: Path) -> dict[str, FileSum]:
    """Copy every file to the new folder `into`, so that what is packed stands still; sizes and hashes by path."""
    copied = {}
    for path in folder.files():
        inner = path.relative_to(folder.path)
        target = into / inner
        target.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        try:
            with path.open("rb") as source, new_private_file(target) as sink:
                copied[inner.as_posix()] = copy_hashed(source, sink)
        except FileNotFoundError:
            # Sent or cleared away between two looks: a file that is no more is no part of this moment.
            target.unlink(missing_ok=True)
    return copied


def refuse_other_files(folder: Path, wanted: Mapping[str, FileSum]) -> None:
    """NotEmpty where the data folder holds a file of a name that would come back with other contents.

    The signing key is none of them: starting the program has made one, and an empty database knows nothing of it.
    """
    for name, told in wanted.items():
        if name != SECRET_KEY and (folder / name).exists() and file_sum(folder / name) != told:
            raise NotEmpty(
                f"{folder / name} is there already with other contents: restore into an empty folder."
            )


def put_back(unpacked: Path, folder: Path, wanted: Mapping[str, FileSum]) -> None:
    """Bring each file to its place by renaming; a signing key that differs is kept under another name."""
    for name, told in wanted.items():
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        if name == SECRET_KEY and target.exists() and file_sum(target) != told:
            _set_aside(target)
        os.replace(unpacked / name, target)
        flush_folder(target.parent)


def _set_aside(path: Path) -> None:
    aside = path.with_name(f"{path.name}.{BEFORE}")
    if aside.exists():
        raise BackupProblem(f"{aside} is there from an earlier restore: move it away first.")
    os.replace(path, aside)
