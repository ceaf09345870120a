"""A body that is the file itself, as it lies on a disk."""

import hashlib
from collections.abc import Mapping
from typing import IO, ClassVar

from rest_framework.parsers import BaseParser

from trimops.api.op import Shape
from trimops.api.view import Api
from trimops.web.refusals import Malformed

# What `Op(takes=...)` says of such a body: it is no set of fields.
FILE: Shape = {"application/octet-stream": {"type": "string", "format": "binary", "minLength": 1}}


class FileParser(BaseParser):
    """The bytes as they came, read no further than `most`; -1: all."""

    media_type = "application/octet-stream"
    most: ClassVar[int] = -1

    def parse(
        self,
        stream: IO[bytes],
        media_type: str | None = None,
        parser_context: Mapping[str, object] | None = None,
    ) -> dict[str, bytes]:
        return {"file": stream.read(self.most)}


class RawBodyApi(Api):
    """Takes a file of at most `most_bytes`; a call is known again by its digest."""

    parser_classes = [FileParser]

    @property
    def sent_file(self) -> bytes:
        """The file. TooLarge (413); Malformed (400) where nothing was sent."""
        sent = self._sent()
        found = bytes(sent.get("file", b"")) if isinstance(sent, dict) else b""
        if not found:
            raise Malformed([("body", "The file is missing.")])
        return found

    def _body_mark(self) -> str:
        return hashlib.sha256(self.sent_file).hexdigest()
