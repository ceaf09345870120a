"""The backup file itself: a tar of the manifest, the database's dump and the files, sealed or plain.

Both ways are streams: memory stays small whatever the size.
"""

import hashlib
import io
import os
import tarfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path, PurePosixPath
from typing import BinaryIO, Protocol, cast

from trimops.backup.disk import FileSum, copy_hashed, new_private_file
from trimops.backup.errors import FaultyBackup, WrongKey
from trimops.backup.manifest import Manifest, from_json, to_json
from trimops.backup.sealed import OpeningReader, SealingWriter, is_sealed

MANIFEST = "manifest.json"
MANIFEST_SUM = "manifest.sha256"
FILES = "files/"
BLOCK = 1 << 20
LONGEST_MANIFEST = 256 << 20


class Readable(Protocol):
    """What gives bytes in order."""

    def read(self, size: int, /) -> bytes: ...


def write_archive(path: Path, manifest: Manifest, packed: Path, key: str | None) -> None:
    """Write the new file `path` from the folder `packed` (the dump, and `files/`); it is on the disk afterwards."""
    raw = to_json(manifest)
    with new_private_file(path) as sink:
        with _written(sink, key) as tar:
            _add_bytes(tar, MANIFEST, raw)
            _add_bytes(tar, MANIFEST_SUM, hashlib.sha256(raw).hexdigest().encode())
            for name in _members(manifest):
                tar.add(packed / name, name, recursive=False, filter=_bare)
        sink.flush()
        os.fsync(sink.fileno())


def read_manifest(path: Path, key: str | None) -> Manifest:
    """What the backup says about itself; nothing else of it is read or proven."""
    with path.open("rb") as source, _told_as_faulty():
        return _manifest(_read(_plain(source, key)))


def unpack(
    path: Path, key: str | None, into: Path, accept: Callable[[Manifest], None] = lambda _: None
) -> Manifest:
    """Unpack all of it into the empty folder `into`, as it was packed, and hold each file against the manifest.

    `accept` sees the manifest before anything else is unpacked and may raise. FaultyBackup where a byte differs, is
    missing, or follows; WrongKey.
    """
    with path.open("rb") as source, _told_as_faulty():
        stream = _plain(source, key)
        members = _read(stream)
        manifest = _manifest(members)
        _refuse_outside(manifest)
        accept(manifest)
        awaited = _members(manifest)
        for name, content in members:
            if name not in awaited:
                raise FaultyBackup(f"The backup holds {name}, of which its manifest knows nothing.")
            _unpack_one(content, into / name, awaited.pop(name))
        if awaited:
            raise FaultyBackup(f"The backup lacks {', '.join(sorted(awaited))}: it was cut short.")
        # To the last byte, so that the seal of the end is seen as well.
        while stream.read(BLOCK):
            pass
    return manifest


def _members(manifest: Manifest) -> dict[str, FileSum]:
    """All that is packed beside the manifest, by its name in the archive."""
    return {manifest.dump: manifest.dump_sum} | {FILES + name: told for name, told in manifest.files.items()}


def _refuse_outside(manifest: Manifest) -> None:
    """A backup from somebody else must not name a place on this machine, neither from the root nor by climbing."""
    for name in (manifest.dump, *manifest.files):
        path = PurePosixPath(name)
        if path.is_absolute() or not path.name or ".." in path.parts:
            raise FaultyBackup(f"The backup names a file outside of itself: {name}.")


def _unpack_one(content: BinaryIO, target: Path, told: FileSum) -> None:
    target.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
    with new_private_file(target) as sink:
        found = copy_hashed(content, sink)
        sink.flush()
        os.fsync(sink.fileno())
    if found != told:
        raise FaultyBackup(f"{target.name} in the backup is not what was packed.")


@contextmanager
def _written(sink: BinaryIO, key: str | None) -> Iterator[tarfile.TarFile]:
    if key is None:
        with tarfile.open(fileobj=sink, mode="w|", bufsize=BLOCK) as tar:
            yield tar
        return
    sealing = SealingWriter(sink, key)
    with tarfile.open(fileobj=cast(BinaryIO, sealing), mode="w|", bufsize=BLOCK) as tar:
        yield tar
    sealing.close()


def _plain(source: BinaryIO, key: str | None) -> Readable:
    """The bytes of the tar, opened where they are sealed."""
    if not is_sealed(source):
        return source
    if key is None:
        raise WrongKey("This backup is sealed: give its key by TRIMOPS_BACKUP_KEY or --key-file.")
    return OpeningReader(source, key)


@contextmanager
def _told_as_faulty() -> Iterator[None]:
    """Where it is no tar, or ends early: that shows wherever the next byte is wanted."""
    try:
        yield
    except (tarfile.TarError, EOFError) as error:
        raise FaultyBackup(f"This is no whole backup: it was altered or cut short ({error}).") from error


def _read(stream: Readable) -> Iterator[tuple[str, BinaryIO]]:
    """Each member's name and content, in order."""
    with tarfile.open(fileobj=cast(BinaryIO, stream), mode="r|", bufsize=BLOCK) as tar:
        for member in tar:
            content = tar.extractfile(member) if member.isreg() else None
            if content is None:
                raise FaultyBackup(f"The backup holds {member.name}, which is no plain file.")
            yield member.name, cast(BinaryIO, content)


def _manifest(members: Iterator[tuple[str, BinaryIO]]) -> Manifest:
    """The first two members."""
    read = []
    for wanted in (MANIFEST, MANIFEST_SUM):
        name, content = next(members, ("", io.BytesIO()))
        if name != wanted:
            raise FaultyBackup("This is no backup of trimops: it does not begin with a manifest.")
        read.append(content.read(LONGEST_MANIFEST))
    raw, told = read
    if hashlib.sha256(raw).hexdigest().encode() != told:
        raise FaultyBackup("The backup's manifest was altered.")
    return from_json(raw)


def _add_bytes(tar: tarfile.TarFile, name: str, raw: bytes) -> None:
    member = tarfile.TarInfo(name)
    member.size, member.mode = len(raw), 0o600
    tar.addfile(member, io.BytesIO(raw))


def _bare(member: tarfile.TarInfo) -> tarfile.TarInfo:
    """Without whose it was on the machine that packed it."""
    member.uid = member.gid = 0
    member.uname = member.gname = ""
    member.mode = 0o600
    return member
