"""Knives and discs on the page: who may write, what is said, and that a slip loses nothing."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from tests.factories import make_blade, make_house, planned
from tests.visits.worked_blades import long_used
from visits.domain.kit.blade_kinds import BladeFault, BladeKind, BladeState
from visits.models import Blade, Sharpening
from visits.services.kit.change_blade_state import BladeStateWord, change_blade_state


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def crush(house):
    client = Client()
    client.force_login(house.trimmer)
    return client


def text_of(answer):
    return answer.content.decode()


def broken(house, fault, kind=BladeKind.HOOF_KNIFE):
    blade = make_blade(house.van, "Blue handle", kind=kind.value)
    word = BladeStateWord(BladeState.OUT_OF_USE, fault)
    return change_blade_state(blade=blade, word=word, at=timezone.now(), by=house.trimmer)


def test_the_title_says_what_to_grind_and_the_page_what_is_left(house, crush):
    long_used(house)
    tomorrow = timezone.now().replace(hour=9) + timedelta(days=1)
    planned(house.farm, house.van, tomorrow, head_count=60)
    page = text_of(crush.get(reverse("blades")))
    assert "60 cows tomorrow are more than 1 sharp knife last" in page
    assert "no cow yet, counted on for" in page
    assert "The wheel turns away from you" in page
    assert page.count("<svg") == 1


def test_the_list_asks_the_database_as_often_for_ten_as_for_two(house, crush):
    def queries():
        with CaptureQueriesContext(connection) as found:
            crush.get(reverse("blades"))
        return len(found)

    long_used(house, lasted=(20,))
    make_blade(house.van, "Disc", kind=BladeKind.GRINDER_DISC.value)
    queries()
    few = queries()
    for n in range(8):
        long_used(house, f"Knife {n}", lasted=(20, 22))
    assert queries() == few


def test_the_bevel_is_reckoned_on_the_same_page(house, crush):
    page = text_of(crush.get(reverse("blades"), {"thickness": "2", "angle": "30"}))
    assert "<strong>4.0 mm</strong> wide, for steel of 2 mm and an edge of 30°" in page
    assert "from 5" not in page
    assert "Write 5 or more" in text_of(crush.get(reverse("blades"), {"thickness": "2", "angle": "1"}))


def test_a_blade_tells_its_edges_its_curve_and_its_finding(house, crush):
    blade = long_used(house)
    page = text_of(crush.get(reverse("blade", args=[blade.pk])))
    assert (
        "Too few to tell"
        not in page.split("this blade")[0].split("How long such edges last")[1].split("<p>")[1]
    )
    assert "33 cows</strong> counted by hand: went dull" in page
    assert "half by" in page


def test_a_broken_blade_carries_its_caution_and_is_not_offered_a_sharpening(house, crush):
    blade = broken(house, BladeFault.CRACKED)
    page = text_of(crush.get(reverse("blade", args=[blade.pk])))
    assert "A crack is never mended" in page
    assert "Note a sharpening" not in page
    assert "Blue handle" not in text_of(crush.get(reverse("blade_sharpened")))


def test_a_new_blade_is_kept_and_a_day_to_come_is_said_on_its_field(house, crush):
    given = {
        "name": "Ash",
        "van": house.van.pk,
        "kind": "hoof_knife",
        "hand": "left",
        "bought_on": "2026-03-01",
    }
    assert crush.post(reverse("blade_new"), {**given, "bought_on": "2999-01-01"}).status_code == 409
    answer = crush.post(reverse("blade_new"), given)
    blade = Blade.objects.within(house.scope).get()
    assert answer.headers["Location"] == reverse("blade", args=[blade.pk])
    assert (blade.name, blade.state) == ("Ash", BladeState.BOUGHT)
    crush.post(reverse("blade_edit", args=[blade.pk]), {**given, "name": "Ash, long"})
    assert Blade.objects.within(house.scope).get().name == "Ash, long"


def test_a_chipped_disc_comes_back_only_as_a_new_one(house, crush):
    disc = broken(house, BladeFault.CHIPPED, BladeKind.GRINDER_DISC)
    address = reverse("blade_state", args=[disc.pk])
    page = text_of(crush.get(address))
    assert "pull the plug" in page
    assert "The chip is ground out" not in page
    answer = crush.post(address, {"state": "in_use"})
    assert answer.status_code == 409
    assert "only then is it taken in hand again" in text_of(answer)
    assert crush.post(address, {"state": "in_use", "put_right": "replaced"}).status_code == 302
    assert Blade.objects.within(house.scope).get().state == BladeState.IN_USE


def test_an_evenings_sharpening_is_noted_in_one_go(house, crush):
    red, blue = long_used(house), long_used(house, "Blue handle", ())
    address = reverse("blade_sharpened")
    assert crush.get(address).status_code == 200
    said = {"at": "2026-03-20T19:00", "method": "belt", "grit": "240", "done_by": "Ann"}
    assert "Tick the blades" in text_of(crush.post(address, said))
    said |= {f"blade_{red.pk}": "on", f"before_{red.pk}": "dull", f"felt_{red.pk}": "sharp"}
    said |= {f"blade_{blue.pk}": "on", f"before_{blue.pk}": "still_cut", f"cows_{blue.pk}": "11"}
    for _ in range(2):
        assert crush.post(address, said).status_code == 302
    rows = Sharpening.objects.within(house.scope).filter(done_by="Ann").order_by("blade_id")
    assert [(row.before, row.felt, row.cows_since_last) for row in rows] == [
        ("dull", "sharp", None),
        ("still_cut", "", 11),
    ]
    assert crush.post(address, {**said, "at": "2999-01-01T10:00"}).status_code == 409


def test_the_office_reads_and_does_not_write(house):
    blade = long_used(house, lasted=(20,))
    client = Client()
    client.force_login(house.office)
    for name, args in (("blades", []), ("blade", [blade.pk])):
        page = client.get(reverse(name, args=args))
        assert page.status_code == 200
        assert reverse("blade_sharpened") not in text_of(page)
    assert client.get(reverse("blade_sharpened")).status_code == 403
