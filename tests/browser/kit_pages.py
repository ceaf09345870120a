"""The pages of the kit, a function for each part."""

from collections.abc import Iterator
from uuid import uuid4

from django.urls import reverse

from tests.browser.small_round import Round
from tests.factories import NOON, make_blade
from tests.visits.worked_blades import long_used
from visits.domain.kit.blade_kinds import BladeFault, BladeState
from visits.models import Consumable
from visits.services.kit.change_blade_state import BladeStateWord, change_blade_state
from visits.services.kit.place_order import OrderWord, WantedLine, place_order
from visits.services.kit.stock_place import place_of_van


def kit_pages(r: Round) -> Iterator[str]:
    """What the owner sees of the kit."""
    yield from _stock(r)
    yield from _supply(r)
    yield from _blades(r)
    yield from _evening(r)


def _stock(r: Round) -> Iterator[str]:
    item = Consumable.objects.within(r.house.scope).get(name="Glue").pk
    yield from (reverse("kit"), reverse("kit_item", args=[item]), reverse("kit_item_edit", args=[item]))
    yield from (reverse("kit_item_new"), reverse("kit_bought") + f"?item={item}")
    yield from (reverse("kit_moved"), reverse("kit_written_off") + f"?item={item}")
    yield reverse("kit_count", args=[place_of_van(r.house.van).pk])
    yield from (reverse("kit_read_in"), reverse("kit_read_in") + "?start")


def _supply(r: Round) -> Iterator[str]:
    item = Consumable.objects.within(r.house.scope).get(name="Glue")
    word = OrderWord("Moor Supplies", [WantedLine(item.pk, 2)], uuid4())
    order = place_order(business=r.house.business, word=word, at=NOON, by=r.house.owner)
    yield from (reverse("kit_orders"), reverse("kit_order", args=[order.pk]))
    yield reverse("kit_van_check", args=[r.house.van.pk])


def _blades(r: Round) -> Iterator[str]:
    red = long_used(r.house).pk
    chipped = make_blade(r.house.van, "Left handle", hand="left")
    word = BladeStateWord(BladeState.OUT_OF_USE, BladeFault.CHIPPED)
    change_blade_state(blade=chipped, word=word, at=NOON, by=r.house.trimmer)
    blades = reverse("blades")
    yield from (blades, f"{blades}?thickness=2.2&angle=70", reverse("blade", args=[red]))
    yield from (reverse("blade_new"), reverse("blade_edit", args=[red]), reverse("blade_sharpened"))
    yield from (reverse("blade", args=[chipped.pk]), reverse("blade_state", args=[chipped.pk]))


def _evening(r: Round) -> Iterator[str]:
    wash = reverse("kit_wash")
    yield from (reverse("kit_tonight"), wash)
    yield f"{wash}?product=&dilution=1%3A100&litres=10"
