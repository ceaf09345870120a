"""Many files as one zip; the same files of the same moment make the same bytes."""

import io
import zipfile
from collections.abc import Iterable
from datetime import datetime
from typing import IO

_BEGINNING = datetime(1980, 1, 1)  # noqa: DTZ001  # because: a zip knows no zone
"""The first moment that a zip can tell, for files that bear none."""
_PACKED_ALREADY = (".jpg", ".pdf", ".xlsx")


def pack_into(target: IO[bytes], files: Iterable[tuple[str, bytes]], made_at: datetime = _BEGINNING) -> None:
    """Write (name, content) one after the other, so that no more than one file is in memory.

    `made_at` is the moment that each file is said to be of, by the clock on the wall.
    """
    with zipfile.ZipFile(target, "w") as parts:
        for name, content in files:
            part = zipfile.ZipInfo(name, made_at.timetuple()[:6])
            part.external_attr = 0o644 << 16
            is_packed = name.lower().endswith(_PACKED_ALREADY)
            part.compress_type = zipfile.ZIP_STORED if is_packed else zipfile.ZIP_DEFLATED
            parts.writestr(part, content)


def packed(files: Iterable[tuple[str, bytes]]) -> bytes:
    """The zip in memory: for what is small."""
    out = io.BytesIO()
    pack_into(out, files)
    return out.getvalue()
