"""A round of scores, typed or as a file: wrong lines are named, and nothing that was given is lost."""

import io

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse
from openpyxl import Workbook

from farms.domain.identity_kind import IdentityKind
from tests.factories import make_cow, make_house
from visits.models import MobilityScore, MobilityScoring

TAG = "UK123450600001"


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def desk(house):
    client = Client()
    client.force_login(house.office)
    return client


def send(desk, house, **said):
    given = {"scored_on": "2026-03-02", "scale": "UK0-3", **said}
    return desk.post(reverse("mobility", args=[house.farm.pk]), given)


def noted(house):
    rows = MobilityScore.objects.within(house.scope).order_by("cow__number")
    return list(rows.values_list("cow__number", "score"))


def test_typed_lines_are_noted_and_the_round_stands_on_the_page(house, desk):
    make_cow(house.farm, "7", {IdentityKind.OFFICIAL_TAG: TAG})
    assert send(desk, house, lines=f"101 2\n{TAG} 0", whole_herd="on").status_code == 302
    assert noted(house) == [("101", 2), ("7", 0)]
    page = desk.get(reverse("mobility", args=[house.farm.pk])).content.decode()
    assert "1 lame of 2 cows scored, the whole herd" in page
    assert "Lame: 101" in page


def test_wrong_lines_are_named_one_by_one_and_stay_in_the_form(house, desk):
    lines = "101 2\n999 1\n101 9"
    answer = send(desk, house, lines=lines)
    page = answer.content.decode()
    assert answer.status_code == 400
    assert "Line 2, “999 1”: no cow here goes by 999" in page
    assert "Line 3, “101 9”: UK 0 to 3 runs from 0 to 3, not 9" in page
    assert answer.context["form"]["lines"].value() == lines
    assert not MobilityScoring.objects.within(house.scope).exists()

    assert send(desk, house, lines=lines, leave_out="on").status_code == 302
    assert noted(house) == [("101", 2)]


def test_a_file_is_read_by_its_headings_and_its_lines_are_there_to_be_mended(house, desk):
    book = Workbook()
    for row in (["Pen", "Cow", "Score"], ["A", 101, 2], ["A", 999, 3]):
        book.active.append(row)
    content = io.BytesIO()
    book.save(content)
    answer = send(desk, house, file=SimpleUploadedFile("scores.xlsx", content.getvalue()))
    assert answer.status_code == 400
    assert answer.context["form"]["lines"].value() == "101 2\n999 3"
    assert send(desk, house, lines="101 2\n").status_code == 302
    assert noted(house) == [("101", 2)]


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ({}, "Give a cow and her score a line"),
        ({"lines": "999 1"}, "None of these lines can be kept"),
        ({"lines": "101 2", "scored_on": "2999-01-01"}, "The day of the round is still to come"),
        ({"lines": "101 2", "scale": "moon"}, "moon"),
        ({"file": SimpleUploadedFile("scores.xlsx", b"PK\x03\x04 nonsense")}, "cannot be read"),
        (
            {"file": SimpleUploadedFile("scores.csv", b"cow,score\n")},
            "a row of headings and at least one cow",
        ),
    ],
)
def test_what_cannot_be_noted_is_said(house, desk, said, words):
    answer = send(desk, house, **said)
    assert answer.status_code in (400, 409)
    assert words in answer.content.decode()
    assert not MobilityScoring.objects.within(house.scope).exists()
