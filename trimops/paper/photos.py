"""Photos on paper: side by side, as large as the rest of the page allows, with a line of words below each."""

from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO

from reportlab.lib.utils import ImageReader
from reportlab.platypus import Flowable

from trimops.paper.colours import Tint
from trimops.paper.styles import SMALL, style, words

UNREADABLE = (OSError, ValueError, SyntaxError)
"""What the picture library raises for bytes that are no whole picture."""

CANNOT_BE_DRAWN = "This photo cannot be drawn."
_GAP = 12.0
_BELOW = style(SMALL, tint=Tint.QUIET)


@dataclass(frozen=True)
class Photo:
    """A JPEG's bytes, and what is written below it."""

    picture: bytes
    words: str


class PhotoRow(Flowable):
    """Photos in one row, each in its own proportions. The row takes what is left of the page's height, between `least`
    and `most` points."""

    def __init__(self, photos: Sequence[Photo], *, least: float, most: float) -> None:
        super().__init__()
        self.least, self.most = least, most
        self.readers = [_reader(photo.picture) for photo in photos]
        self.below = [
            words(_below(photo, reader), _BELOW) for photo, reader in zip(photos, self.readers, strict=True)
        ]

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        self.each = (available_width - _GAP * (len(self.readers) - 1)) / len(self.readers)
        self.foot = max(line.wrap(self.each, available_height)[1] for line in self.below) + 2
        room = min(self.most, max(self.least, available_height - self.foot))
        self.tall = max((_height(reader, self.each, room) for reader in self.readers), default=0.0)
        self.width, self.height = available_width, self.tall + self.foot
        return self.width, self.height

    def draw(self) -> None:
        for place, (reader, line) in enumerate(zip(self.readers, self.below, strict=True)):
            left, high = place * (self.each + _GAP), 0.0
            if reader is not None:
                high = _height(reader, self.each, self.tall)
                across, down = reader.getSize()
                self.canv.drawImage(reader, left, self.height - high, high * across / down, high)
            line.drawOn(self.canv, left, self.height - high - 2 - line.height)


def _below(photo: Photo, reader: ImageReader | None) -> str:
    return photo.words if reader is not None else f"{photo.words}. {CANNOT_BE_DRAWN}"


def _reader(picture: bytes) -> ImageReader | None:
    """None for bytes that are no picture: a paper comes out all the same, and says so."""
    try:
        reader = ImageReader(BytesIO(picture))
        across, down = reader.getSize()
        reader.getRGBData()  # type: ignore[no-untyped-call]
    except UNREADABLE:
        return None
    return reader if across and down else None


def _height(reader: ImageReader | None, width: float, room: float) -> float:
    if reader is None:
        return 0.0
    across, down = reader.getSize()
    return min(room, width * down / across)
