"""What a spreadsheet file would become, told before anybody opens it.

A small file may unpack to gigabytes, hold words that multiply themselves, or a row of ten million cells; none of it
comes from a farm. So every part is walked through once with a reader that keeps nothing.
"""

import io
import zipfile
from xml.parsers import expat

MOST_PARTS = 400
MOST_UNPACKED = 40 * 1024 * 1024
MOST_PLAIN = 4 * 1024 * 1024
"""Bytes of one part that is no XML, as a picture is none."""
MOST_TAGS = 250_000
"""Two a cell: 24 columns of five thousand rows, which take two seconds to read. A CSV may hold more."""
MOST_WORDS = 40_000
"""In the list of words, or in their cells: the library takes twenty to fifty microseconds for each."""
MOST_TAGS_IN_ONE = 30_000
"""Between two rows, or two words: so many the library holds at once, some kilobytes each."""
PIECE = 256 * 1024
_BEGINS_ANEW, _WORDS = ("row", "si"), ("is", "si")
_MARKS = (b"<", b"\xff\xfe", b"\xfe\xff", b"\xef\xbb\xbf", b"\0<", b"<\0")


class NotOpened(ValueError):
    """The file would do harm, or is none; the message is for the log, not for people."""


def refuse_bombs(content: bytes) -> None:
    """NotOpened for a zip with too many parts, too much in it, or XML that no spreadsheet program writes; zipfile's own
    errors for what is no zip."""
    with zipfile.ZipFile(io.BytesIO(content)) as packed:
        parts = packed.infolist()
        if len(parts) > MOST_PARTS:
            raise NotOpened("too many parts")
        # The sizes stand in the directory, and zipfile reads no part beyond the size given there.
        if sum(part.file_size for part in parts) > MOST_UNPACKED:
            raise NotOpened("unpacks to too much")
        tags = 0
        for part in parts:
            tags = _walk(packed, part, tags)


def _walk(packed: zipfile.ZipFile, part: zipfile.ZipInfo, tags: int) -> int:
    with packed.open(part) as file:
        piece = file.read(PIECE)
        if not piece.lstrip(b" \t\r\n").startswith(_MARKS):
            if part.file_size > MOST_PLAIN:
                raise NotOpened("a large part that is no XML")
            return tags
        walker = _Walker(tags)
        while piece:
            walker.feed(piece)
            piece = file.read(PIECE)
        walker.feed(b"", is_last=True)
        return walker.tags


class _Walker:
    def __init__(self, tags: int) -> None:
        self.tags = tags
        self.in_one = self.words = 0
        self.parser = expat.ParserCreate()
        self.parser.StartElementHandler = self._opened
        self.parser.StartDoctypeDeclHandler = self._doctype

    def feed(self, piece: bytes, *, is_last: bool = False) -> None:
        try:
            self.parser.Parse(piece, is_last)
        except expat.ExpatError as fault:
            raise NotOpened("broken XML") from fault

    def _opened(self, name: str, attributes: dict[str, str]) -> None:
        self.tags += 1
        bare = name.rpartition(":")[2]
        self.in_one = 0 if bare in _BEGINS_ANEW else self.in_one + 1
        self.words += bare in _WORDS
        if self.tags > MOST_TAGS or self.in_one > MOST_TAGS_IN_ONE or self.words > MOST_WORDS:
            raise NotOpened("too many tags")

    def _doctype(self, *_said: object) -> None:
        raise NotOpened("a document type")
