"""The page about washing down: the tub, the next farm, the log."""

from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

import pytest
from django.test import Client
from django.urls import reverse

from farms.domain.hygiene import HygieneLevel
from tests.factories import (
    finish,
    make_consumable,
    make_farm,
    make_house,
    planned,
    stock_up,
    under_way,
)
from visits.domain.kit.stock_kinds import ConsumableKind
from visits.models import WashDown
from visits.selectors.kit.next_farm_wash import next_farm_wash

pytestmark = pytest.mark.django_db


def signed_in(user):
    client = Client()
    client.force_login(user)
    return client


@pytest.fixture
def powder(house):
    words = {
        "active_substance": "Peroxygen",
        "dilution": "2 % w/v",
        "contact_minutes": Decimal(10),
        "unit": "g",
    }
    return make_consumable(house.business, "Powder", ConsumableKind.DISINFECTANT, **words)


@pytest.fixture
def house():
    return make_house()


def page(house, query=""):
    return signed_in(house.trimmer).get(reverse("kit_wash") + query)


def wash(visit, **words):
    told = {
        "substance": "peroxygen",
        "dilution": "1 % w/v",
        "contact_minutes": 4,
        "washed_at": visit.finished_at,
    }
    return WashDown.objects.create(
        business=visit.business, visit=visit, record=uuid4(), by=visit.van.trimmer, **{**told, **words}
    )


def test_the_label_says_how_much_goes_into_the_tub(house, powder):
    stock_up(powder, 500, at=powder_day(house), van=house.van)
    said = page(house, f"?product={powder.pk}&litres=10").content.decode()
    assert "200 g in 10 litres" in said
    assert "enough for 25 litres" in said
    assert "Never mix two products" in said


def powder_day(house):
    return under_way(house.farm, house.van).started_at - timedelta(days=1)


@pytest.mark.parametrize(
    ("query", "mend"),
    [
        ("?product=&dilution=a+slosh&litres=10", "cannot be read"),
        ("?product=&dilution=&litres=10", "Say how strong"),
        ("?product=&dilution=1:100&litres=-3", "0.1"),
        ("?product=&dilution=1:100&litres=ten", "number"),
    ],
)
def test_what_cannot_be_worked_out_says_what_to_mend(house, query, mend):
    answer = page(house, query)
    assert answer.status_code == 400
    assert mend in answer.content.decode()


def test_a_wash_down_that_falls_short_of_the_label_is_told(house, powder):
    wash(finish(under_way(house.farm, house.van), house.trimmer))
    said = page(house).content.decode()
    assert "4 min on, the label says 10" in said
    assert "mixed 1 % w/v, the label says 2 % w/v" in said


def test_the_log_is_of_one_van_if_asked_and_never_of_a_foreign_one(house):
    other = make_house("Next Door Trimming")
    assert page(house, f"?van={house.van.pk}").status_code == 200
    assert page(house, f"?van={other.van.pk}").status_code == 404


def test_the_van_goes_on_clean_or_is_told_to_wash(house):
    house.farm.hygiene_level = HygieneLevel.DERMATITIS
    house.farm.save()
    been = finish(under_way(house.farm, house.van), house.trimmer)
    clean = make_farm(house.business, "Clean Croft", by=house.owner, wash_rule="Boots in the tub at the gate")
    visit = planned(clean, house.van, been.finished_at + timedelta(days=1))
    (yard,) = next_farm_wash(house.scope, been.finished_at + timedelta(hours=1))
    assert (yard.next, yard.before, yard.wash.stand) == (
        visit,
        been,
        "done" if been.washed_down else "urgent",
    )
    type(been).objects.within(house.scope).filter(pk=been.pk).update(washed_down=False)
    (yard,) = next_farm_wash(house.scope, been.finished_at + timedelta(hours=1))
    assert yard.wash.stand == "urgent"
    wash(been)
    (yard,) = next_farm_wash(house.scope, been.finished_at + timedelta(hours=1))
    assert yard.wash.stand == "done"


def test_the_farm_client_sees_nothing_of_it(house):
    assert signed_in(house.client).get(reverse("kit_wash")).status_code == 403
