"""Headings: plain, or with the sign of a meaning beside its words and a line in its colour below."""

from reportlab.lib.colors import HexColor
from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, Paragraph

from trimops.paper.colours import HEX, Meaning, Tint, tint_of
from trimops.paper.drawing import Drawing
from trimops.paper.fitting import fitting
from trimops.paper.signs import sign
from trimops.paper.styles import HEAD, LEAD, style, words
from trimops.paper.to_pdf import draw_on
from trimops.paper.typefaces import BOLD, runs_of
from trimops.paper.wording import clean

_HEIGHT = 19.0


def heading(text: str) -> Paragraph:
    """A heading within a column."""
    return words(text, style(HEAD, bold=True, before=10, after=3))


def section(text: str, room: float = 110.0) -> list[Flowable]:
    """A heading in the running text, on a new page when less than `room` points are left below it."""
    return [CondPageBreak(room), heading(text)]


class SignedHeading(Flowable):
    """A heading of one line with a meaning's sign, as wide as its column."""

    def __init__(self, text: str, meaning: Meaning) -> None:
        super().__init__()
        self.text = clean(text)
        self.meaning = meaning

    def wrap(self, available_width: float, _available_height: float) -> tuple[float, float]:
        self.width, self.height = available_width, _HEIGHT
        return self.width, self.height

    def draw(self) -> None:
        canvas = self.canv
        colour = HexColor(HEX[tint_of(self.meaning)])
        canvas.setStrokeColor(colour)
        canvas.setLineWidth(1.2)
        canvas.line(0, 1.5, self.width, 1.5)
        canvas.saveState()
        canvas.translate(0, 4.5)
        draw_on(canvas, Drawing(4, 4, sign(self.meaning, (2, 2), 3.6), self.meaning))
        canvas.restoreState()
        canvas.setFillColor(HexColor(HEX[Tint.INK]))
        x = 5.5 * mm
        for face, run in runs_of(fitting(self.text, self.width - x, LEAD, bold=True), BOLD):
            canvas.setFont(face, LEAD)
            canvas.drawString(x, 6, run)
            x += canvas.stringWidth(run, face, LEAD)
