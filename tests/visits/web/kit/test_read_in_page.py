"""A list of consumables is looked at, mended where it stands, and read in."""

from uuid import uuid4

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from tests.factories import make_house
from visits.domain.kit.starter_list import STARTER_LIST
from visits.models import Consumable

LIST = "Name;Art;Kind;Unit;Pack;per cow\r\nGlue;x;glue;ml;2000;0,5\r\nWrap;x;wrapping;each;;\r\n"


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def office(client, house):
    client.force_login(house.office)
    return client


def send(client, **words):
    return client.post(reverse("kit_read_in"), {"uid": uuid4(), "act": "look", **words})


def names_of(house):
    return list(Consumable.objects.within(house.scope).values_list("name", flat=True))


def test_a_file_is_looked_at_mended_and_read_in(house, office):
    file = SimpleUploadedFile("kit.csv", LIST.encode("cp1252"))
    page = send(office, file=file)
    words = page.content.decode()
    assert "1 line to mend before the list is read in" in words
    assert "“wrapping” is no kind; write Blocks, Glue" in words
    assert "Passed over</strong>: Art" in words
    lines = page.context["form"]["lines"].value()
    assert send(office, lines=lines, act="read").status_code == 409
    assert names_of(house) == []
    mended = lines.replace("wrapping", "wrap")
    assert "The list would add 2 consumables" in send(office, lines=mended).content.decode()
    assert send(office, lines=mended, act="read").status_code == 302
    assert names_of(house) == ["Glue", "Wrap"]


def test_the_list_to_begin_with_is_added_once(house, office):
    page = office.get(reverse("kit_read_in") + "?start")
    lines = page.context["form"]["lines"].value()
    assert f"{len(STARTER_LIST)} consumables to begin with" in page.content.decode()
    assert send(office, lines=lines, act="read").status_code == 302
    assert len(names_of(house)) == len(STARTER_LIST)
    assert "Bring in a list of consumables" in office.get(reverse("kit_read_in") + "?start").content.decode()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ({"lines": ""}, "Choose a file, or paste its lines."),
        ({"lines": "name"}, "cannot be read as a list"),
        ({"file": SimpleUploadedFile("kit.xlsx", b"PK\x03\x04 no workbook")}, "cannot be read as a list"),
        ({"lines": "what is it,kind\nx,glue"}, "No column is headed “name”"),
    ],
)
def test_what_is_no_list_is_said(house, office, words, said):
    page = send(office, **words)
    assert page.status_code == 400
    assert said in page.content.decode()
