"""The shape of a foot seen from below, toes up, in a field of units (x from -62 to 62, y from 0 to 126).

Drawn for this project. One claw is drawn, with the cleft on its left; the other is its mirror image. The walls,
which do not show from below, are drawn folded out: the outside wall as a band outside the claw, the inside wall as a
band along the cleft. Places of the zone numbers follow the ILC map (Kuopio 2008): 0 to 6, 9 and 10 as read in print,
the split of 7/8 and of 11/12 from memory.
"""

from typing import Final

from trimops.paper.drawing import Curve, Pen, Point

WIDTH: Final = 124.0
HEIGHT: Final = 126.0
CLAW_HEIGHT: Final = 104.0

CLAW: Final = Curve(
    (14, 18),
    (
        ((14, 10), (17, 6), (22, 6)),
        ((35, 6), (53, 36), (53, 64)),
        ((53, 86), (45, 101), (31, 101)),
        ((19, 101), (12, 93), (12, 81)),
        ((12, 62), (16, 46), (14, 18)),
    ),
    closed=True,
)
WHITE_LINE: Final = Curve(
    (14.7, 29),
    (
        ((16, 18), (18, 14), (22, 14)),
        ((31, 15), (44, 40), (45, 64)),
        ((45.5, 70), (48, 74), (52, 75)),
    ),
)
PARTS_OF_CLAW: Final = (
    WHITE_LINE,
    Curve((28.5, 19.5), (((30, 17), (32, 15), (33.5, 13)),)),
    Curve((44.3, 57), (((47, 56.5), (50, 56), (52.5, 55.5)),)),
    Curve((14.6, 48), (((22, 52), (34, 52), (43, 47)),)),
    Curve((12.3, 74), (((22, 84), (38, 84), (52, 75)),)),
)
OUTSIDE_WALL: Final = (
    Curve(
        (17.5, 7.5),
        (((20, -3), (32, -2), (42, 12)), ((55, 30), (63, 50), (60, 78)), ((57, 79), (54, 78), (52, 75))),
    ),
    Curve((40.5, 20), (((43, 18.5), (44.5, 18.2), (45.6, 17.8)),)),
)
INSIDE_WALL: Final = (
    Curve((13.8, 15), (((6, 20), (7, 46), (3.5, 62)), ((2.5, 74), (6, 82), (12, 81)))),
    Curve((5.6, 50), (((10, 50.5), (12, 50.5), (14.4, 50)),)),
)
HEEL_SKIN: Final = (
    Curve((-52.5, 75), (((-60, 132), (60, 132), (52.5, 75)),)),
    Curve((-13.5, 88), (((-8, 84), (8, 84), (13.5, 88)),)),
    Curve((-22, 99), (((-12, 103), (12, 103), (22, 99)),)),
)

ZONE_PLACES: Final[dict[int, Point]] = {
    1: (23, 10),
    2: (43, 33),
    3: (49, 65),
    4: (28, 66),
    5: (27, 36),
    6: (32, 91),
    7: (56, 47),
    8: (36.3, 11.5),
    11: (10.3, 36),
    12: (7.9, 66),
}
"""Middle of each zone of the drawn claw."""

SKIN_PLACES: Final[dict[int, Point]] = {0: (0, 56), 9: (0, 110), 10: (0, 93)}
"""Middle of the zones of skin, which belong to no claw."""

BLOCK: Final = Curve(
    (17.5, 24),
    (
        ((18, 15), (20, 12), (23, 12)),
        ((33, 12), (46, 38), (46, 62)),
        ((46, 74), (42, 80), (31, 80)),
        ((21, 80), (16.5, 78), (16.5, 70)),
        ((17, 56), (19, 44), (17.5, 24)),
    ),
    closed=True,
)
"""The outline of a block as it lies under the drawn claw."""


def outline_pen(width: float) -> Pen:
    """The one line weight of a sole drawing, by the drawing's width in mm."""
    return Pen(width=0.18 if width < 25 else 0.3)
