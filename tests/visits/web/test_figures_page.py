"""Setting the marks for the claw on the figures page."""

import pytest
from django.test import Client
from django.urls import reverse

from tests.factories import make_house
from visits.selectors.business_figures import figures_of

MARKS = {
    "trim-shortest_wall_mm": "90",
    "trim-wall_measured_from": "the coronary band",
    "trim-feet_lifted": "2",
}


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def client(house):
    client = Client()
    client.force_login(house.trimmer)
    return client


def test_own_marks_are_kept_and_stand_in_the_form_again(house, client):
    assert client.post(reverse("figures"), MARKS).status_code == 302
    trim = figures_of(house.scope).trim
    assert (trim.shortest_wall_mm, trim.wall_measured_from, trim.feet_lifted) == (90, "the coronary band", 2)
    form = client.get(reverse("figures")).context["form"]
    assert form["trim-wall_measured_from"].value() == "the coronary band"
    assert form["trim-toe_angle_from"].value() is None


def test_what_makes_no_sense_is_said_and_nothing_kept(house, client):
    answer = client.post(reverse("figures"), {**MARKS, "trim-feet_lifted": "5"})
    assert answer.status_code == 400
    assert "feet_lifted" in str(answer.context["form"].non_field_errors())
    assert figures_of(house.scope).trim.shortest_wall_mm == 75


def test_the_sources_of_the_marks_are_named(client):
    page = client.get(reverse("figures")).content.decode()
    assert "Toussaint Raven" in page
    assert "Archer 2015" in page
