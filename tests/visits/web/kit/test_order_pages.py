"""The order list's page: ordered, its text anew, arrived, called off, and what is refused."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import make_house, make_kit, stock_up
from visits.models import StockMovement, SupplyLine, SupplyOrder


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def kit(house):
    kit = make_kit(house.business)
    for item in kit.values():
        item.supplier, item.supplier_email, item.price = "Low Moor", "moor@example.invalid", 12
        item.save()
        stock_up(item, 400, at=timezone.now() - timedelta(days=1))
    return kit


@pytest.fixture
def desk(house):
    client = Client()
    client.force_login(house.office)
    return client


def fields(desk):
    """What the form of the one supplier holds."""
    page = desk.get(reverse("kit_orders"))
    (draft,) = page.context["others"]
    form = draft.form
    return {name: form[name].value() or "" for name in ("uid", "supplier", "seen")}


def place(desk, told, **packs):
    return desk.post(reverse("kit_order_place"), {**told, "by_mail": "on", **packs})


def ordered(house, desk, kit, packs=3):
    place(desk, fields(desk), **{f"packs_{kit['wood'].pk}": packs, "act": "ordered"})
    return SupplyOrder.objects.within(house.scope).get()


def test_ordered_it_is_noted_and_stands_on_the_list(house, desk, kit):
    order = ordered(house, desk, kit)
    assert (order.supplier, order.mailed_to) == ("Low Moor", "moor@example.invalid")
    page = desk.get(reverse("kit_orders")).content.decode()
    assert reverse("kit_order", args=[order.pk]) in page


def test_the_text_and_the_mail_follow_the_packs(house, desk, kit):
    answer = place(desk, fields(desk), **{f"packs_{kit['wood'].pk}": 4, "act": "text"})
    page = answer.content.decode()
    assert "- 4 of Wooden block" in page
    assert "mailto:moor@example.invalid?subject=Order%20of%20" in page
    assert not SupplyOrder.objects.within(house.scope).exists()


@pytest.mark.parametrize(("packs", "status"), [("", 409), ("-1", 400), ("many", 400), ("1001", 400)])
def test_nonsense_stays_on_the_page_with_words(house, desk, kit, packs, status):
    answer = place(desk, fields(desk), **{f"packs_{kit['wood'].pk}": packs, "act": "ordered"})
    assert answer.status_code == status
    assert "Not done yet" in answer.content.decode()
    assert not SupplyOrder.objects.within(house.scope).exists()


def test_what_somebody_ordered_meanwhile_is_not_ordered_again(house, desk, kit):
    told = fields(desk)
    ordered(house, desk, kit)
    answer = place(
        desk, told | {"uid": "0b0f5d5e-3d5b-4c43-9d43-2f7f6d4d7a11"}, **{f"packs_{kit['wood'].pk}": 1}
    )
    assert answer.status_code == 409
    assert "has ordered 3 of Wooden block meanwhile" in answer.content.decode()


def arrive(house, desk, order, **changes):
    page = desk.get(reverse("kit_order", args=[order.pk]))
    form = page.context["form"]
    told = {field.name: field.value() or "" for field in form}
    line = SupplyLine.objects.within(house.scope).get()
    told["place"] = form.fields["place"].queryset.first().pk
    told["arrived_on"] = timezone.localdate().isoformat()
    told |= {f"{name}_{line.pk}": value for name, value in changes.items()}
    told = {name: value for name, value in told.items() if value is not False}
    return desk.post(reverse("kit_order_arrived", args=[order.pk]), told)


def test_a_part_arrives_with_lot_and_cost(house, desk, kit):
    order = ordered(house, desk, kit)
    assert arrive(house, desk, order, quantity="2", lot="A7", cost="23,50").status_code == 302
    row = StockMovement.objects.within(house.scope).order_by("pk").last()
    assert (row.quantity, str(row.cost), row.lot.code) == (2, "23.50", "A7")
    page = desk.get(reverse("kit_order", args=[order.pk])).content.decode()
    assert "Wooden block: 1 to come" in page


def test_filled_in_as_ordered_and_then_closed(house, desk, kit):
    order = ordered(house, desk, kit)
    assert arrive(house, desk, order).status_code == 302
    page = desk.get(reverse("kit_order", args=[order.pk])).content.decode()
    assert "has come" in page
    assert StockMovement.objects.within(house.scope).order_by("pk").last().cost == 36


def test_called_off_with_a_word_why(house, desk, kit):
    order = ordered(house, desk, kit)
    address = reverse("kit_order_off", args=[order.pk])
    assert desk.post(address, {"because": "They closed."}).status_code == 302
    page = desk.get(reverse("kit_order", args=[order.pk])).content.decode()
    assert "Called off: They closed." in page
    order.refresh_from_db()
    assert order.called_off_at is not None
