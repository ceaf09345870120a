"""The SVG, read back with the standard library's parser."""

from xml.etree import ElementTree

import pytest

from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Curve, Drawing, Line, Pen, Polygon, Text, box
from trimops.paper.to_svg import number, to_svg

ALL = Drawing(
    50,
    20,
    (
        Line(((0, 0), (10, 5)), Pen(Tint.DUE, 0.5, (1, 2))),
        Polygon(box(1, 2, 3, 4), Tint.GROUND, None),
        Circle((5, 5), 2.345, None, Pen(Tint.INK)),
        Curve((0, 0), (((1, 1), (2, 2), (3, 3)),), closed=True),
        Text((1, 1), 'Hill & <Dale> "x"', 3, bold=True, anchor="end"),
    ),
    title='Hill & <Dale> "x"',
    description="all shapes",
)
SVG = "{http://www.w3.org/2000/svg}"


def test_it_is_well_formed_and_shows_what_was_drawn():
    root = ElementTree.fromstring(to_svg(ALL))
    assert [child.tag.removeprefix(SVG) for child in root] == [
        "title", "desc", "polyline", "polygon", "circle", "path", "text",
    ]  # fmt: skip
    assert root.find(f"{SVG}text").text == 'Hill & <Dale> "x"'
    assert root.find(f"{SVG}circle").get("r") in ("2.35", "2.34")
    assert root.find(f"{SVG}path").get("d") == "M0,0C1,1 2,2 3,3Z"


def test_it_tells_a_screen_reader_what_it_is():
    root = ElementTree.fromstring(to_svg(ALL))
    assert (root.get("role"), root.get("aria-label")) == ("img", ALL.title)
    assert (root.find(f"{SVG}title").text, root.find(f"{SVG}desc").text) == (ALL.title, "all shapes")


def test_it_holds_under_a_strict_page_policy():
    text = to_svg(ALL)
    assert "style=" not in text
    assert "<script" not in text
    assert "<style" not in text
    assert "href" not in text


def test_every_colour_is_also_a_class_for_the_stylesheet():
    root = ElementTree.fromstring(to_svg(ALL))
    assert root.find(f"{SVG}polyline").get("class") == "pen-due"
    assert root.find(f"{SVG}polygon").get("class") == "paint-ground"
    assert root.find(f"{SVG}text").get("class") == "paint-ink"


def test_its_own_size_is_in_millimetres_and_it_scales_by_its_viewbox():
    root = ElementTree.fromstring(to_svg(ALL, "wide"))
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("50mm", "20mm", "0 0 50 20")
    assert root.get("class") == "wide"


@pytest.mark.parametrize(
    ("value", "text"), [(0, "0"), (-0.001, "0"), (1.5, "1.5"), (2.0, "2"), (10, "10"), (1 / 3, "0.33")]
)
def test_coordinates_are_short(value, text):
    assert number(value) == text
