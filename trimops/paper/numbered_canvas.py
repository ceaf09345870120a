"""A canvas that knows on its last page how many there are, and then writes "page 2 of 3" on each."""

from datetime import datetime
from typing import ClassVar

from reportlab.lib.colors import HexColor
from reportlab.lib.pagesizes import A4
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from trimops.paper.colours import HEX, Tint
from trimops.paper.fitting import fitting
from trimops.paper.footing import FOOT_SIZE, FOOT_WIDTH
from trimops.paper.typefaces import BODY, runs_of
from trimops.paper.wording import clean

_MARGIN = 15 * mm


class _MadeAt:
    """The given instant in the shape in which the PDF writer reads its own clock (UTC, no offset)."""

    dhh: ClassVar[int] = 0
    dmm: ClassVar[int] = 0

    def __init__(self, at: datetime) -> None:
        self.YMDhms = at.timetuple()[:6]


class NumberedCanvas(Canvas):
    """Keeps every page until the end, then writes footers. `made_at` (UTC) is what the file's dates say."""

    def __init__(self, filename: object, *, footer: str, made_at: datetime, **options: object) -> None:
        super().__init__(filename, **options)  # type: ignore[arg-type]
        self._doc._timeStamp = _MadeAt(made_at)  # type: ignore[attr-defined]
        self._footer = clean(footer).replace("\n", " ")
        self._kept: list[dict[str, object]] = []

    def showPage(self) -> None:
        """Put the page aside instead of writing it."""
        self._kept.append(dict(self.__dict__))
        self._startPage()  # type: ignore[attr-defined]

    def save(self) -> None:
        """Write all pages with their footers, then the file."""
        pages = self._kept
        for number, page in enumerate(pages, start=1):
            self.__dict__.update(page)
            self._write_furniture(number, len(pages))
            super().showPage()
        super().save()

    def _write_furniture(self, number: int, total: int) -> None:
        width, _ = A4
        self.setStrokeColor(HexColor(HEX[Tint.RULE]))
        self.setLineWidth(0.5)
        self.line(_MARGIN, _MARGIN + 5 * mm, width - _MARGIN, _MARGIN + 5 * mm)
        self.setFillColor(HexColor(HEX[Tint.QUIET]))
        count = f"page {number} of {total}"
        self.setFont(BODY, FOOT_SIZE)
        self.drawRightString(width - _MARGIN, _MARGIN + 1 * mm, count)
        self._write_run(fitting(self._footer, FOOT_WIDTH, FOOT_SIZE))

    def _write_run(self, text: str) -> None:
        x = _MARGIN
        for face, run in runs_of(text, BODY):
            self.setFont(face, FOOT_SIZE)
            self.drawString(x, _MARGIN + 1 * mm, run)
            x += self.stringWidth(run, face, FOOT_SIZE)
