"""The report as a farm gets it: read back with pypdf, drawn with pypdfium2."""

import re
from dataclasses import replace
from datetime import datetime
from io import BytesIO

import pypdfium2
import pytest
from pypdf import PdfReader

from trimops.paper.letterhead import Letterhead
from visits.documents.visit_report import visit_report
from visits.documents.visit_report_content import CowLine, FarmTask, VetReferral
from visits.documents.visit_report_sizes import LARGE, LESS
from visits.domain.feet import Foot


def pages_of(pdf: bytes) -> int:
    return len(PdfReader(BytesIO(pdf)).pages)


@pytest.mark.parametrize(("cows", "pages"), [(0, 1), (1, 1), (30, 2)])
def test_thirty_cows_take_two_pages_and_one_takes_one(make_report, cows, pages):
    assert pages_of(visit_report(make_report(cows))) == pages


def test_four_hundred_cows_are_all_there(make_report, text_of):
    pdf = visit_report(make_report(400))
    text = text_of(pdf)
    assert pages_of(pdf) < 20
    assert all(str(400 + number) in text for number in range(400))


def test_the_same_report_gives_the_same_bytes(make_report):
    assert visit_report(make_report(30)) == visit_report(make_report(30))


def test_the_file_names_itself_the_business_and_the_visit(make_report):
    reader = PdfReader(BytesIO(visit_report(make_report(30))))
    assert reader.metadata.title == "High Thornbeck: 30 cows seen, 1 for the vet, 3 blocks on"
    assert reader.metadata.author == "Skelderdale Foot Trimming"
    assert "1 Dec 2026" in reader.metadata.subject
    assert reader.metadata.creation_date == make_report(30).made_at
    assert reader.trailer["/Root"]["/Lang"] == "en-GB"


def test_all_fonts_are_inside(make_report):
    for page in PdfReader(BytesIO(visit_report(make_report(30)))).pages:
        for font in page["/Resources"]["/Font"].values():
            assert "/FontFile2" in font.get_object()["/FontDescriptor"].get_object()


def test_drawings_are_vectors_not_pictures(make_report):
    for page in PdfReader(BytesIO(visit_report(make_report(30)))).pages:
        assert list(page.images) == []
        assert b" c\n" in page.get_contents().get_data() or b" c" in page.get_contents().get_data()


@pytest.mark.parametrize(
    "name",
    [
        "Marsden & Daughters <b>Farm</b>",
        "Gwern-y-Ŵyl, Łąka & Žižkov Ελλάδα",
        "Llan" + "fair" * 30,
        "The Right Worshipful Company of High and Low Thornbeck, Over Skelder and Far Moss Dairy Partners "
        * 2,
        "x" * 300,
    ],
)
def test_any_name_comes_out_as_it_was_written(make_report, text_of, name):
    report = replace(make_report(3), farm_name=name, letterhead=Letterhead(name, (name,)), trimmers=(name,))
    cows = (CowLine(name[:60], "looked at", note=name), *report.cows)
    text = text_of(visit_report(replace(report, cows=cows)))
    assert name.replace(" ", "")[:40] in text.replace(" ", "")


def test_many_referrals_run_on_instead_of_failing(make_report, text_of):
    vet = tuple(
        VetReferral(str(number), Foot.LEFT_HIND, "swelling above the dew claw", "Told 10:20.")
        for number in range(60)
    )
    tasks = tuple(FarmTask(f"task number {number}, with words enough for a line") for number in range(50))
    text = text_of(visit_report(make_report(30, vet=vet, to_do=tasks)))
    assert text.count("Vet advised. Told") == 60
    assert "task number 49" in text


@pytest.mark.parametrize("referrals", range(24, 36))
def test_no_heading_stands_alone_at_the_foot_of_a_page(make_report, referrals):
    vet = tuple(VetReferral(str(number), None, "swelling") for number in range(referrals))
    pdf = visit_report(make_report(1, vet=vet, to_do=(FarmTask("Foot bath twice this week"),)))
    heads = r"(For the vet|Blocks to come off|For you to do|By Tue 29 Dec, 1 wooden block)\s*page \d"
    assert [page for page in PdfReader(BytesIO(pdf)).pages if re.search(heads, page.extract_text())] == []


def test_long_names_leave_the_day_and_the_version_at_the_foot_of_every_page(make_report):
    name = "Over Skelder and Far Moss Dairy Partners " * 4
    report = make_report(30, farm_name=name, letterhead=Letterhead(name, ()), version=2, change_note="none")
    pages = PdfReader(BytesIO(visit_report(report))).pages
    assert all("… · visit of 1 Dec 2026, version 2" in page.extract_text() for page in pages)


def test_it_is_set_large_and_smaller_only_where_that_saves_pages_beyond_two(make_report):
    def has_type_of(pdf, size):
        return any(
            f" {size} Tf".encode() in page.get_contents().get_data() for page in PdfReader(BytesIO(pdf)).pages
        )

    two, many = visit_report(make_report(30)), visit_report(make_report(150))
    assert (has_type_of(two, LARGE.read), has_type_of(two, LESS.heads)) == (True, False)
    assert (has_type_of(many, LARGE.read), has_type_of(many, LESS.heads)) == (False, True)


def test_it_observes_and_advises_and_never_diagnoses_or_prescribes(make_report, text_of):
    text = text_of(visit_report(make_report(30, cautions=()))).lower()
    assert "lesion seen" in text
    assert not [word for word in ("diagnos", "prescri", "treatment", "dose") if word in text]


def test_both_pages_have_ink_within_the_margins_only(make_report):
    for page in pypdfium2.PdfDocument(visit_report(make_report(30))):
        picture = page.render(scale=1)
        data, stride, channels = bytes(picture.buffer), picture.stride, picture.n_channels
        edge = [
            data[row * stride + column * channels]
            for row in range(picture.height)
            for column in (5, picture.width - 6)
        ]
        assert min(edge) == 255
        assert min(data) < 120


def test_a_time_without_a_zone_is_refused(make_report):
    with pytest.raises(ValueError, match="time zone"):
        visit_report(make_report(1, made_at=datetime(2026, 12, 1)))  # noqa: DTZ001
