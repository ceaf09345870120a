"""A drawing as SVG for a page: presentation attributes and classes only, so a strict page policy holds.

Every colour is both an attribute (our default) and a class (`paint-due`, `pen-due`), so that a stylesheet can swap
it for the outdoor theme without touching the drawing.
"""

from functools import singledispatch
from xml.sax.saxutils import escape, quoteattr

from trimops.paper.colours import HEX, Tint
from trimops.paper.drawing import Circle, Curve, Drawing, Line, Pen, Point, Polygon, Shape, Text
from trimops.paper.wording import clean

_FACE = "Atkinson, 'Atkinson Hyperlegible Next', sans-serif"


def to_svg(drawing: Drawing, css_class: str = "drawing") -> str:
    """The `<svg>` element, with role img and its title; its own size is in mm, and it scales by its viewBox."""
    width, height = number(drawing.width), number(drawing.height)
    words = f"<title>{_words(drawing.title)}</title>"
    if drawing.description:
        words += f"<desc>{_words(drawing.description)}</desc>"
    shapes = "".join(_element(shape) for shape in drawing.shapes)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class={quoteattr(css_class)} role="img"'
        f" aria-label={quoteattr(clean(drawing.title))}"
        f' width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}"'
        f' font-family="{_FACE}">{words}{shapes}</svg>'
    )


def number(value: float) -> str:
    """A coordinate to a hundredth of a millimetre, without idle zeros."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


@singledispatch
def _element(shape: Shape) -> str:
    raise TypeError(f"no way to draw {type(shape).__name__}")


@_element.register
def _(shape: Line) -> str:
    return f'<polyline points="{_points(shape.points)}" {_paint(None, shape.pen)}/>'


@_element.register
def _(shape: Polygon) -> str:
    return f'<polygon points="{_points(shape.points)}" {_paint(shape.fill, shape.pen)}/>'


@_element.register
def _(shape: Circle) -> str:
    x, y = shape.centre
    place = f'cx="{number(x)}" cy="{number(y)}" r="{number(shape.radius)}"'
    return f"<circle {place} {_paint(shape.fill, shape.pen)}/>"


@_element.register
def _(shape: Curve) -> str:
    path = f"M{_points((shape.start,))}" + "".join(f"C{_points(piece)}" for piece in shape.pieces)
    return f'<path d="{path}{"Z" if shape.closed else ""}" {_paint(shape.fill, shape.pen)}/>'


@_element.register
def _(shape: Text) -> str:
    x, y = shape.at
    weight = ' font-weight="700"' if shape.bold else ""
    anchor = "" if shape.anchor == "start" else f' text-anchor="{shape.anchor}"'
    return (
        f'<text x="{number(x)}" y="{number(y)}" font-size="{number(shape.size)}"{weight}{anchor}'
        f' class="paint-{shape.tint}" fill="{HEX[shape.tint]}">{_words(shape.words)}</text>'
    )


def _points(points: tuple[Point, ...]) -> str:
    return " ".join(f"{number(x)},{number(y)}" for x, y in points)


def _paint(fill: Tint | None, pen: Pen | None) -> str:
    classes = ([f"paint-{fill}"] if fill else []) + ([f"pen-{pen.tint}"] if pen else [])
    parts = [f'class="{" ".join(classes)}"', f'fill="{HEX[fill] if fill else "none"}"']
    if pen:
        parts.append(f'stroke="{HEX[pen.tint]}" stroke-width="{number(pen.width)}"')
        parts.append('stroke-linejoin="round" stroke-linecap="round"' if not pen.dashes else _dashes(pen))
    return " ".join(parts)


def _dashes(pen: Pen) -> str:
    return f'stroke-dasharray="{" ".join(number(dash) for dash in pen.dashes)}"'


def _words(text: str) -> str:
    return escape(clean(text).replace("\n", " "))
