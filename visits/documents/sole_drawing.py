"""Our drawing of the sole of a foot: claws, heels, cleft, numbered zones, what was found, and a block.

Seen from below with the toes up, as the lifted foot is looked at; so the outer claw of a right foot is on the left.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache

from trimops.paper.colours import Meaning, Tint
from trimops.paper.drawing import Circle, Curve, Drawing, Pen, Point, Polygon, Shape, Text
from trimops.paper.hatching import hatch
from trimops.paper.moving import Move, corners_of
from trimops.paper.signs import sign
from visits.documents import sole_shape
from visits.domain.feet import Claw, Foot


@dataclass(frozen=True)
class SoleMark:
    """Something found at a zone (0 to 12) of a claw; `for_vet` draws it as the urgent diamond, not a dot.

    `zone` None: the place was not noted; the mark stands in the middle of the claw.
    """

    claw: Claw
    zone: int | None = None
    for_vet: bool = False


@dataclass(frozen=True)
class SoleView:
    """One foot to draw. `block_on`: the claw that wears a block, if any. `for_vet`: the foot as a whole is the vet's;
    where no mark says so, a diamond stands beside it."""

    foot: Foot
    marks: tuple[SoleMark, ...] = ()
    block_on: Claw | None = None
    for_vet: bool = False


def sole_drawing(view: SoleView, width: float = 80.0) -> Drawing:
    """The large drawing, `width` mm across: zone numbers, names of the sides, toe and heel written."""
    scale = width / sole_shape.WIDTH
    head = 9.0
    move = Move(scale, scale, width / 2, head * scale)
    pen = sole_shape.outline_pen(width)
    shapes = [*_foot(view, pen, scale), *_marks(view, 5.0), *_zone_numbers(view), *_words(view)]
    height = (sole_shape.HEIGHT + head) * scale
    placed = tuple(move.shape(shape) for shape in shapes)
    return Drawing(width, height, placed, _title(view), _description(view))


@lru_cache(maxsize=1024)
def small_sole_drawing(view: SoleView, width: float = 12.0) -> Drawing:
    """The drawing for a row of a table, `width` mm across: outline, block, marks, and an O at the outer claw."""
    scale = width / sole_shape.WIDTH
    pen = sole_shape.outline_pen(width)
    shapes: list[Shape] = [*_both(view, (sole_shape.CLAW,), pen), *_block(view, pen, scale)]
    side = _side(view.foot, Claw.LATERAL)
    shapes.append(Text((side * 56, 20), "O", 22, bold=True, anchor="middle"))
    if _needs_diamond(view):
        shapes += sign(Meaning.URGENT, (-side * 54, 13), 20)
    shapes += _marks(view, 8.5)
    move = Move(scale, scale, width / 2, 0)
    placed = tuple(move.shape(shape) for shape in shapes)
    return Drawing(width, (sole_shape.CLAW_HEIGHT + 10) * scale, placed, _title(view), _description(view))


def _needs_diamond(view: SoleView) -> bool:
    return view.for_vet and not any(mark.for_vet for mark in view.marks)


def _side(foot: Foot, claw: Claw) -> int:
    """-1 when that claw is drawn on the left, 1 on the right, 0 for the skin."""
    is_right_foot = foot in (Foot.RIGHT_FORE, Foot.RIGHT_HIND)
    outer = -1 if is_right_foot else 1
    return {Claw.LATERAL: outer, Claw.MEDIAL: -outer, Claw.SKIN: 0}[claw]


def _both(_view: SoleView, curves: Iterable[Curve], pen: Pen) -> list[Shape]:
    drawn = [replace(curve, pen=pen) for curve in curves]
    return [Move(across=side).shape(curve) for side in (-1, 1) for curve in drawn]


def _foot(view: SoleView, pen: Pen, scale: float) -> list[Shape]:
    claw = (sole_shape.CLAW, *sole_shape.OUTSIDE_WALL, *sole_shape.INSIDE_WALL)
    heel: list[Shape] = [replace(curve, pen=pen) for curve in sole_shape.HEEL_SKIN]
    return [
        *heel,
        *_both(view, claw, pen),
        *_block(view, pen, scale),
        *_both(view, sole_shape.PARTS_OF_CLAW, pen),
    ]


def _block(view: SoleView, pen: Pen, scale: float) -> list[Shape]:
    if view.block_on is None or view.block_on is Claw.SKIN:
        return []
    corners = Move(across=_side(view.foot, view.block_on)).points(corners_of(sole_shape.BLOCK))
    return [Polygon(corners, Tint.GROUND, pen), *hatch(corners, 1.1 / scale, pen)]


def _place(view: SoleView, mark: SoleMark) -> Point:
    if mark.zone in sole_shape.SKIN_PLACES:
        return sole_shape.SKIN_PLACES[mark.zone]
    side = _side(view.foot, mark.claw)
    if side == 0:
        return sole_shape.SKIN_PLACES[9]
    x, y = sole_shape.ZONE_PLACES[5 if mark.zone is None else mark.zone]
    return x * side, y


def _marks(view: SoleView, radius: float) -> list[Shape]:
    shapes: list[Shape] = []
    for mark in view.marks:
        place = _place(view, mark)
        shapes.append(Circle(place, radius * 1.25, Tint.PAPER, None))
        if mark.for_vet:
            shapes += sign(Meaning.URGENT, place, radius * 2.3)
        else:
            shapes.append(Circle(place, radius, Tint.INK, None))
    return shapes


def _zone_numbers(view: SoleView) -> list[Shape]:
    """Every zone's number: ink on paper, or paper on the mark that covers it."""
    marked = {_place(view, mark) for mark in view.marks}
    block_side = _side(view.foot, view.block_on) if view.block_on else 0
    shapes: list[Shape] = []
    for zone, (x, y) in [*sole_shape.ZONE_PLACES.items(), *sole_shape.SKIN_PLACES.items()]:
        for side in (-1, 1) if x else (1,):
            is_marked = (x * side, y) in marked
            if zone in (4, 5) and side == block_side and not is_marked:
                shapes.append(Circle((x * side, y), 4.6, Tint.PAPER, None))
            tint = Tint.PAPER if is_marked else Tint.INK
            shapes.append(Text((x * side, y + 1.8), str(zone), 5.2, tint=tint, anchor="middle"))
    return shapes


def _words(view: SoleView) -> list[Shape]:
    outer, inner = _side(view.foot, Claw.LATERAL), _side(view.foot, Claw.MEDIAL)
    size = 5.6
    shapes: list[Shape] = [
        Text((0, -3), "toe", size, tint=Tint.QUIET, anchor="middle"),
        Text((0, 123.5), "heel", size, tint=Tint.QUIET, anchor="middle"),
    ]
    for side, word in ((outer, "outer"), (inner, "inner")):
        shapes.append(Text((side * 61, -3), word, size, bold=True, anchor="end" if side > 0 else "start"))
    if view.block_on in (Claw.LATERAL, Claw.MEDIAL):
        side = _side(view.foot, view.block_on)
        shapes.append(Text((side * 61, 119), "block", size, bold=True, anchor="end" if side > 0 else "start"))
    return shapes


def _title(view: SoleView) -> str:
    return f"Sole of the {view.foot.label} foot, seen from below, toes up"


def _description(view: SoleView) -> str:
    parts = [_mark_words(mark) for mark in view.marks]
    if _needs_diamond(view):
        parts.append("for the vet")
    if view.block_on is not None:
        parts.append(f"block on the {view.block_on.label}")
    return "; ".join(parts)


def _mark_words(mark: SoleMark) -> str:
    place = mark.claw.label if mark.zone is None else f"{mark.claw.label}, zone {mark.zone}"
    return f"{place} (for the vet)" if mark.for_vet else place
