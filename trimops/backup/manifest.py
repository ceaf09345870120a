"""What a backup says about itself: `manifest.json`, the first thing in the file."""

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from datetime import datetime

from trimops.backup.contents import Contents, TableSum
from trimops.backup.disk import FileSum
from trimops.backup.errors import FaultyBackup, OlderProgram

FORMAT = 1


@dataclass(frozen=True)
class Manifest:
    """`made_at` is aware: nothing committed before it is missing. `program` is trimops' version, `engine` sqlite or
    postgresql, `dumped_by` the version of the program that wrote `dump`, the database's file in the backup; `files`
    are those of the data folder by their path in it.
    """

    made_at: datetime
    program: str
    engine: str
    dumped_by: str
    dump: str
    dump_sum: FileSum
    contents: Contents
    files: Mapping[str, FileSum]


def to_json(manifest: Manifest) -> bytes:
    """The same bytes for the same manifest."""
    told = {"format": FORMAT, **asdict(manifest), "made_at": manifest.made_at.isoformat()}
    return json.dumps(told, sort_keys=True, indent=1).encode()


def from_json(raw: bytes) -> Manifest:
    """FaultyBackup where it is none, OlderProgram where a later trimops wrote it in a way of its own."""
    try:
        told = json.loads(raw)
        if told["format"] > FORMAT:
            raise OlderProgram(
                "This backup was written in a newer form: restore it with the trimops that made it."
            )
        return _read(told)
    except (ValueError, KeyError, TypeError, AttributeError) as error:
        raise FaultyBackup(f"The backup's manifest cannot be read ({error}).") from error


def _read(told: dict[str, object]) -> Manifest:
    return Manifest(
        made_at=datetime.fromisoformat(_text(told["made_at"])),
        program=_text(told["program"]),
        engine=_text(told["engine"]),
        dumped_by=_text(told["dumped_by"]),
        dump=_text(told["dump"]),
        dump_sum=_file_sum(told["dump_sum"]),
        contents=_contents(_object(told["contents"])),
        files={name: _file_sum(one) for name, one in _object(told["files"]).items()},
    )


def _contents(told: dict[str, object]) -> Contents:
    return Contents(
        server=_text(told["server"]),
        tables={name: _table_sum(one) for name, one in _object(told["tables"]).items()},
        objects=_texts(told["objects"]),
        migrations=_texts(told["migrations"]),
    )


def _table_sum(raw: object) -> TableSum:
    told = _object(raw)
    return TableSum(_number(told["rows"]), _text(told["sha256"]))


def _file_sum(raw: object) -> FileSum:
    told = _object(raw)
    return FileSum(_number(told["size"]), _text(told["sha256"]))


def _object(raw: object) -> dict[str, object]:
    if not isinstance(raw, dict):
        raise TypeError(f"{raw!r:.40} is no object")
    return raw


def _texts(raw: object) -> list[str]:
    if not isinstance(raw, list):
        raise TypeError(f"{raw!r:.40} is no list")
    return [_text(one) for one in raw]


def _text(raw: object) -> str:
    if not isinstance(raw, str):
        raise TypeError(f"{raw!r:.40} is no text")
    return raw


def _number(raw: object) -> int:
    if not isinstance(raw, int):
        raise TypeError(f"{raw!r:.40} is no number")
    return raw
