from io import BytesIO

import pytest
from pypdf import PdfReader
from reportlab.platypus import Spacer

from tests.visits.documents.letters import AT, jpeg
from trimops.paper.photos import Photo, PhotoRow
from trimops.paper.sheet import TEXT_HEIGHT, SheetInfo, build_sheet


def drawn(row, above=0.0):
    info = SheetInfo("t", "a", "s", AT, "f")
    return PdfReader(BytesIO(build_sheet([Spacer(0, above), row], info))).pages


def test_photos_take_the_room_that_is_left_and_no_more_than_their_most():
    row = PhotoRow([Photo(jpeg(), "one"), Photo(jpeg(48, 64), "two")], least=60, most=200)
    assert row.wrap(500, 800)[1] == pytest.approx(200 + row.foot)
    assert row.wrap(500, 150)[1] == pytest.approx(150)
    assert row.wrap(500, 30)[1] > 30, "too little room: the row goes to the next page"


def test_a_wide_photo_is_no_taller_than_its_proportions():
    row = PhotoRow([Photo(jpeg(100, 10), "wide")], least=60, most=200)
    assert row.wrap(300, 800)[1] == pytest.approx(30 + row.foot)


def test_a_row_stands_on_the_rest_of_the_page_or_on_the_next():
    photos = [Photo(jpeg(), "one"), Photo(jpeg(640, 480), "two")]
    assert len(drawn(PhotoRow(photos, least=60, most=200), above=TEXT_HEIGHT - 150)) == 1
    pages = drawn(PhotoRow(photos, least=60, most=200), above=TEXT_HEIGHT - 50)
    assert [len(page.images) for page in pages] == [0, 2]


def test_bytes_that_are_no_picture_are_said_to_be_none():
    (page,) = drawn(PhotoRow([Photo(b"no picture", "left hind")], least=60, most=200))
    assert "left hind. This photo cannot be drawn." in page.extract_text()
