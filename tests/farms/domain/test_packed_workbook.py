"""A spreadsheet that would do harm is refused before it is opened."""

import io
import zipfile

import pytest
from openpyxl import Workbook
from openpyxl.styles import Font

from farms.domain.packed_workbook import MOST_PARTS, MOST_TAGS, MOST_TAGS_IN_ONE, NotOpened, refuse_bombs

SHEET = "xl/worksheets/sheet1.xml"
HEAD = b'<?xml version="1.0"?><worksheet><sheetData><row r="1">'
FOOT = b"</row></sheetData></worksheet>"


def workbook(rows=3, looks=1):
    book = Workbook()
    for number in range(rows):
        book.active.append([number, f"cow {number}", "dry"])
        book.active.cell(number + 1, 1).font = Font(size=8 + number % looks)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def with_part(name, body):
    """A workbook with that part put in, or in the place of its own."""
    source = zipfile.ZipFile(io.BytesIO(workbook()))
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as packed:
        for part in source.namelist():
            if part != name:
                packed.writestr(part, source.read(part))
        packed.writestr(name, body)
    return out.getvalue()


def test_a_workbook_as_programs_write_it_is_opened():
    refuse_bombs(workbook(rows=5_000, looks=60))


def test_a_picture_in_it_harms_nobody():
    refuse_bombs(with_part("xl/media/image1.png", b"\x89PNG\r\n\x1a\n" + bytes(100_000)))


def entities():
    body = b'<!DOCTYPE a [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">]><worksheet>&b;</worksheet>'
    return [body, body.decode().encode("utf-16"), b'<?xml version="1.0"?>' + body, b"\xef\xbb\xbf" + body]


BOMBS = {
    "unpacks to much": (SHEET, b" " * (41 * 1024 * 1024)),
    "a row of a million cells": (SHEET, HEAD + b"<c/>" * (MOST_TAGS_IN_ONE + 9) + FOOT),
    "the same under another name": ("xl/media/image1.png", HEAD + b"<c/>" * (MOST_TAGS_IN_ONE + 9) + FOOT),
    "rows without end": (SHEET, b"<worksheet>" + b"<row/>" * (MOST_TAGS + 1) + b"</worksheet>"),
    "tags within tags": (SHEET, b"<c>" * 40_000 + b"</c>" * 40_000),
    "broken XML": (SHEET, HEAD),
    "a huge part that is no XML": ("xl/media/film.mp4", b"film" * 1_100_000),
    **{f"words that multiply, {number}": (SHEET, body) for number, body in enumerate(entities())},
}


@pytest.mark.parametrize("name", BOMBS)
def test_what_would_do_harm_is_not_opened(name):
    with pytest.raises(NotOpened):
        refuse_bombs(with_part(*BOMBS[name]))


def test_more_parts_than_a_spreadsheet_has_are_not_opened():
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as packed:
        for number in range(MOST_PARTS + 1):
            packed.writestr(f"{number}.xml", "<a/>")
    with pytest.raises(NotOpened, match="parts"):
        refuse_bombs(out.getvalue())


def test_a_zip_in_a_zip_stays_closed():
    """Only what unpacks at once counts, for nobody unpacks what is inside."""
    inner = workbook(rows=50)
    refuse_bombs(with_part("xl/embeddings/other.xlsx", inner))


def test_what_is_no_zip_is_told_by_the_reader_of_zips():
    with pytest.raises(zipfile.BadZipFile):
        refuse_bombs(b"PK\x03\x04 and then rubbish")
