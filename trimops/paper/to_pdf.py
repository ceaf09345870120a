"""The same drawing on paper: drawn with vectors on a reportlab canvas, or as a piece of a running text."""

from functools import lru_cache, singledispatch
from io import BytesIO
from itertools import groupby
from typing import Literal

from reportlab.lib.colors import HexColor
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable

from trimops.paper.colours import HEX, Tint
from trimops.paper.drawing import Circle, Curve, Drawing, Line, Pen, Polygon, Shape, Text
from trimops.paper.typefaces import BODY, BOLD, runs_of, width_of
from trimops.paper.wording import clean

_COLOURS = {tint: HexColor(code) for tint, code in HEX.items()}


class DrawingBlock(Flowable):
    """A drawing as a piece of a running text, at its own size."""

    def __init__(self, drawing: Drawing, align: Literal["LEFT", "CENTER", "RIGHT"] = "LEFT") -> None:
        super().__init__()
        self.drawing = drawing
        self.width = drawing.width * mm
        self.height = drawing.height * mm
        self.hAlign = align

    def wrap(self, _available_width: float, _available_height: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        draw_on(self.canv, self.drawing)


def draw_on(canvas: Canvas, drawing: Drawing) -> None:
    """Draw with the canvas's origin as the bottom left of the drawing; the canvas is left as it was."""
    canvas.saveState()
    canvas.translate(0, drawing.height * mm)
    canvas.scale(mm, -mm)
    canvas.setLineCap(1)
    canvas.setLineJoin(1)
    for is_text, shapes in groupby(drawing.shapes, key=_is_text):
        if is_text:
            for shape in shapes:
                _draw(shape, canvas)
        else:
            canvas._code.append(_code_of(tuple(shapes)))  # type: ignore[attr-defined]
    canvas.restoreState()


def _is_text(shape: Shape) -> bool:
    return isinstance(shape, Text)


@lru_cache(maxsize=2048)
def _code_of(shapes: tuple[Shape, ...]) -> str:
    """The drawing operators of shapes without words. They name all they need (colour, pen, dashes), so the same ones
    serve every canvas; words do not, since each file numbers its own letters."""
    canvas = Canvas(BytesIO(), pageCompression=0)
    begun = len(canvas._code)  # type: ignore[attr-defined]
    for shape in shapes:
        _draw(shape, canvas)
    return "\n".join(canvas._code[begun:])  # type: ignore[attr-defined]


@singledispatch
def _draw(shape: Shape, canvas: Canvas) -> None:
    raise TypeError(f"no way to draw {type(shape).__name__}")


@_draw.register
def _(shape: Line, canvas: Canvas) -> None:
    _trace(canvas, shape.points, None, shape.pen, closed=False)


@_draw.register
def _(shape: Polygon, canvas: Canvas) -> None:
    _trace(canvas, shape.points, shape.fill, shape.pen, closed=True)


@_draw.register
def _(shape: Circle, canvas: Canvas) -> None:
    stroke, fill = _take(canvas, shape.fill, shape.pen)
    canvas.circle(*shape.centre, shape.radius, stroke=stroke, fill=fill)


@_draw.register
def _(shape: Curve, canvas: Canvas) -> None:
    stroke, fill = _take(canvas, shape.fill, shape.pen)
    path = canvas.beginPath()
    path.moveTo(*shape.start)
    for first, second, end in shape.pieces:
        path.curveTo(*first, *second, *end)
    if shape.closed:
        path.close()
    canvas.drawPath(path, stroke=stroke, fill=fill)


@_draw.register
def _(shape: Text, canvas: Canvas) -> None:
    words, face = clean(shape.words).replace("\n", " "), BOLD if shape.bold else BODY
    shift = {"start": 0.0, "middle": 0.5, "end": 1.0}[shape.anchor] * width_of(words, face, shape.size)
    canvas.saveState()
    canvas.translate(shape.at[0] - shift, shape.at[1])
    canvas.scale(1, -1)
    canvas.setFillColor(_COLOURS[shape.tint])
    x = 0.0
    for name, run in runs_of(words, face):
        canvas.setFont(name, shape.size)
        canvas.drawString(x, 0, run)
        x += canvas.stringWidth(run, name, shape.size)
    canvas.restoreState()


def _trace(
    canvas: Canvas,
    points: tuple[tuple[float, float], ...],
    fill: Tint | None,
    pen: Pen | None,
    *,
    closed: bool,
) -> None:
    stroke, is_filled = _take(canvas, fill, pen)
    path = canvas.beginPath()
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    if closed:
        path.close()
    canvas.drawPath(path, stroke=stroke, fill=is_filled)


def _take(canvas: Canvas, fill: Tint | None, pen: Pen | None) -> tuple[int, int]:
    if fill:
        canvas.setFillColor(_COLOURS[fill])
    if pen:
        canvas.setStrokeColor(_COLOURS[pen.tint])
        canvas.setLineWidth(pen.width)
        canvas.setDash(list(pen.dashes))
    return int(pen is not None), int(fill is not None)
