"""Where on the feet the cases were: shades of one ink, the number written, left and right and both claws kept apart."""

from collections import Counter
from functools import partial

from trimops.paper.colours import Tint
from trimops.paper.drawing import Anchor, Drawing, Pen, Point, Polygon, Shape, Text, box
from trimops.paper.fitting import wrapped
from trimops.paper.moving import Move
from trimops.paper.typefaces import BOLD, width_of
from visits.documents.herd.key import LINE, KeyItem, key
from visits.documents.herd.marks import WORDS
from visits.documents.herd.shades import DARKEST, shade_of, shade_ranges, shaded
from visits.documents.herd.sole_cells import CLAW_EDGE, HEIGHT, LEFT, WIDTH, Cell, cells_of, side_of
from visits.documents.herd_story_content import SoleHeat
from visits.domain.feet import SKIN_ZONES, ZONE_NAMES, Claw, Foot, zone_name

_ROWS = ((Foot.LEFT_HIND, Foot.RIGHT_HIND), (Foot.LEFT_FORE, Foot.RIGHT_FORE))
_BETWEEN = 4.0
_HEAD = 6.0
_FOOT = 3.2
_EDGE = Pen(Tint.INK, 0.45)
_LINE = 5.0
_FACING = "Feet seen from below, toes up."
Places = Counter[tuple[Foot, Claw, int]]


def sole_heat(content: SoleHeat, width: float) -> Drawing:
    """The picture; a row of feet without a case is told in words. ValueError when no case has a place."""
    if content.is_empty:
        raise ValueError("no case to draw")
    placed = _placed(content)
    highest = max(placed.values())
    scale = (width - _BETWEEN) / 2 / WIDTH
    shapes: list[Shape] = []
    top = 0.0
    for row in _ROWS:
        if not any(place[0] in row for place in placed):
            continue
        for column, foot in enumerate(row):
            left = column * (width + _BETWEEN) / 2
            shapes += _foot(foot, placed, highest, Move(scale, scale, left - LEFT * scale, top + _HEAD))
        top += _HEAD + HEIGHT * scale + _FOOT
    below, end = _below(content, placed, top, width)
    return Drawing(width, end, (*shapes, *below), f"Where the {content.what} were", _told(content, placed))


def _placed(content: SoleHeat) -> Places:
    """Cases by place; the skin's zones belong to no claw, whatever claw was written."""
    placed: Places = Counter()
    for count in content.counts:
        if count.zone is not None and count.cases:
            claw = Claw.SKIN if count.zone in SKIN_ZONES else count.claw
            placed[count.foot, claw, count.zone] += count.cases
    return placed


def _foot(foot: Foot, placed: Places, highest: int, move: Move) -> list[Shape]:
    shapes: list[Shape] = []
    numbers: list[Shape] = []
    for cell in cells_of(foot):
        cases = placed[foot, cell.claw, cell.zone]
        shade = shade_of(cases, highest)
        shapes += shaded(move.points(cell.corners), shade)
        if cases:
            numbers += _number(cell, cases, shade, move)
    edges = (tuple((side * x, y) for x, y in CLAW_EDGE) for side in (-1, 1))
    shapes += [Polygon(move.points(edge), None, _EDGE) for edge in edges]
    return [*shapes, *numbers, *_side_words(foot, move)]


def _number(cell: Cell, cases: int, shade: int, move: Move) -> list[Shape]:
    """Ink on a chip of paper, or paper on the darkest shade; smaller from a hundred on."""
    words = str(cases)
    size = WORDS if cases < 100 else 3.3
    x, y = move.point(cell.middle)
    text = Text((x, y + size * 0.35), words, size, bold=True, anchor="middle")
    if shade == DARKEST:
        return [Text(text.at, words, size, bold=True, tint=Tint.PAPER, anchor="middle")]
    half = width_of(words, BOLD, size) / 2 + 0.35
    chip = box(x - half, y - size * 0.45, x + half, y + size * 0.45)
    return [Polygon(chip, Tint.PAPER, None), text]


def _side_words(foot: Foot, move: Move) -> list[Shape]:
    (x, y), reach = move.point((0, 0)), WIDTH / 2 * move.across
    base = y - 1.2
    shapes: list[Shape] = [Text((x, base), foot.label, WORDS, bold=True, anchor="middle")]
    for claw, word in ((Claw.LATERAL, "outer"), (Claw.MEDIAL, "inner")):
        side = side_of(foot, claw)
        anchor: Anchor = "end" if side > 0 else "start"
        shapes.append(Text((x + side * reach, base), word, WORDS, tint=Tint.QUIET, anchor=anchor))
    return shapes


def _below(content: SoleHeat, placed: Places, top: float, width: float) -> tuple[list[Shape], float]:
    """The key of shades, and what the drawing cannot show."""
    items = []
    for shade, least, most in shade_ranges(max(placed.values())):
        words = str(least) if least == most else f"{least} to {most}"
        items.append(KeyItem(partial(_swatch, shade), words))
    shapes, end = key(items, top, width)
    for sentence in [_FACING, *_left_out(content, placed)]:
        for line in wrapped(sentence, width, WORDS, lines=2):
            shapes.append(Text((0, end + LINE * 0.7), line, WORDS, tint=Tint.QUIET))
            end += _LINE
    return shapes, end + 0.6


def _swatch(shade: int, at: Point) -> list[Shape]:
    return shaded(box(at[0] - 1.5, at[1] - 1.5, at[0] + 1.5, at[1] + 1.5), shade)


def _left_out(content: SoleHeat, placed: Places) -> list[str]:
    said = []
    for row, name in zip(_ROWS, ("hind", "fore"), strict=True):
        if not any(place[0] in row for place in placed):
            said.append(f"No place marked on a {name} foot.")
    lost = sum(count.cases for count in content.counts if count.zone is None)
    if lost:
        said.append(f"Not drawn: {lost:,} {content.what} without a place.")
    return said


def _told(content: SoleHeat, placed: Places) -> str:
    parts = [
        f"{foot.label}, {claw.label}, {zone_name(zone)}: {placed[foot, claw, zone]}"
        for row in _ROWS
        for foot in row
        for claw in Claw
        for zone in ZONE_NAMES
        if placed[foot, claw, zone]
    ]
    return "; ".join([*parts, *_left_out(content, placed)])
