"""The bytes of a PDF, read back with pypdf and pypdfium2 (neither is ours)."""

from dataclasses import replace
from datetime import UTC, datetime
from io import BytesIO

import pypdfium2
import pytest
from pypdf import PdfReader
from reportlab.platypus import PageBreak

from trimops.paper.sheet import SheetInfo, build_sheet
from trimops.paper.styles import words

INFO = SheetInfo(
    title="Feet & <claws> Ŵyl",
    author="Skelderdale Foot Trimming",
    subject="A sheet for tests",
    made_at=datetime(2026, 12, 1, 10, 30, tzinfo=UTC),
    footer="Skelderdale · page foot",
)


def two_pages():
    return [words("First page"), PageBreak(), words("Second page, Gwern-y-Ŵyl, Ελλάδα")]


def fonts_of(pdf: bytes) -> dict[str, bool]:
    """Base font name -> whether its file is embedded, over all pages."""
    found = {}
    for page in PdfReader(BytesIO(pdf)).pages:
        for font in page["/Resources"]["/Font"].values():
            descriptor = font.get_object().get("/FontDescriptor")
            found[font.get_object()["/BaseFont"]] = bool(
                descriptor and "/FontFile2" in descriptor.get_object()
            )
    return found


def test_the_same_story_gives_the_same_bytes():
    assert build_sheet(two_pages(), INFO) == build_sheet(two_pages(), INFO)


def test_what_is_not_packed_says_the_same():
    packed, plain = build_sheet(two_pages(), INFO), build_sheet(two_pages(), INFO, packed=False)
    assert len(packed) < len(plain)
    assert (b"(First page)" in packed, b"(First page)" in plain) == (False, True)
    assert fonts_of(plain) == fonts_of(packed)


def test_every_page_says_which_of_how_many_it_is():
    pages = PdfReader(BytesIO(build_sheet(two_pages(), INFO))).pages
    assert ["page 1 of 2" in pages[0].extract_text(), "page 2 of 2" in pages[1].extract_text()] == [
        True,
        True,
    ]


def test_all_fonts_are_embedded_and_none_is_a_standard_one():
    fonts = fonts_of(build_sheet(two_pages(), INFO))
    assert fonts
    assert all(fonts.values()), fonts
    assert not any("Helvetica" in name or "Times" in name for name in fonts)


def test_no_standard_font_is_even_named():
    assert b"Helvetica" not in build_sheet(two_pages(), INFO)


def test_the_file_says_who_made_it_when_and_in_which_language():
    reader = PdfReader(BytesIO(build_sheet(two_pages(), INFO)))
    assert reader.metadata.title == INFO.title
    assert reader.metadata.author == INFO.author
    assert reader.metadata.subject == INFO.subject
    assert reader.metadata.creation_date == INFO.made_at
    assert reader.trailer["/Root"]["/Lang"] == "en-GB"


def test_letters_that_the_face_lacks_come_out_of_the_stand_in_face():
    text = PdfReader(BytesIO(build_sheet(two_pages(), INFO))).pages[1].extract_text()
    assert "Gwern-y-Ŵyl, Ελλάδα" in text


def test_a_story_with_nothing_in_it_still_is_a_page():
    assert len(PdfReader(BytesIO(build_sheet([words("")], INFO))).pages) == 1


def test_a_watermark_lies_on_every_page_under_the_words():
    pdf = build_sheet(two_pages(), replace(INFO, watermark="DRAFT"))
    texts = [page.extract_text() for page in PdfReader(BytesIO(pdf)).pages]
    assert all("DRAFT" in text for text in texts)


def test_the_page_is_a4_and_has_ink_on_it():
    page = pypdfium2.PdfDocument(build_sheet(two_pages(), INFO))[0]
    assert page.get_size() == pytest.approx((595.28, 841.89), abs=0.01)
    assert min(bytes(page.render(scale=2).buffer)) < 60


def test_a_time_without_a_zone_is_refused():
    naive = replace(INFO, made_at=datetime(2026, 12, 1))  # noqa: DTZ001
    with pytest.raises(ValueError, match="time zone"):
        build_sheet(two_pages(), naive)
