from datetime import timedelta
from decimal import Decimal

import pytest

from tests.factories import NOON, make_blade
from visits.domain.kit.blade_kinds import BladeFault, BladeState, EdgeBefore, EdgeFelt, SharpenMethod
from visits.models import Blade, Sharpening
from visits.services.kit.change_blade_state import BladeStateWord, change_blade_state
from visits.services.kit.sharpen_blades import (
    SharpenedBlade,
    SharpeningRefused,
    SharpenWord,
    sharpen_blades,
)

LONG_AGO = NOON.date() - timedelta(days=9)
EVENING = NOON + timedelta(hours=7)


@pytest.fixture
def blade(house):
    return make_blade(house.van, "Blue", bought_on=LONG_AGO)


def sharpen(house, *blades, sharpened_at=EVENING, **word):
    told = SharpenWord(blades, sharpened_at, SharpenMethod.BELT, 240, done_by="Ann", **word)
    return sharpen_blades(word=told, at=EVENING + timedelta(hours=1), by=house.trimmer)


def out(house, blade, fault, at=NOON):
    word = BladeStateWord(BladeState.OUT_OF_USE, fault)
    return change_blade_state(blade=blade, word=word, at=at, by=house.trimmer)


def test_several_in_one_evening_are_noted_each_with_its_own_words(house, blade):
    other = make_blade(house.van, "Red", bought_on=LONG_AGO)
    dull = SharpenedBlade(blade, EdgeBefore.DULL, EdgeFelt.VERY_SHARP, Decimal(20), Decimal(6), 31)
    sharpen(house, dull, SharpenedBlade(other))
    first, second = Sharpening.objects.within(house.scope).order_by("blade_id")
    assert (first.before, first.felt, first.cows_since_last, first.minutes) == ("dull", "very_sharp", 31, 6)
    assert (second.before, second.felt, second.method, second.grit) == ("not_said", "", "belt", 240)
    assert {first.done_by, second.done_by} == {"Ann"}


def test_sent_twice_it_is_noted_once(house, blade):
    for _ in range(2):
        sharpen(house, SharpenedBlade(blade))
    assert Sharpening.objects.within(house.scope).count() == 1


def test_from_grinding_it_is_back_in_use(house, blade):
    word = BladeStateWord(BladeState.AT_GRINDING)
    change_blade_state(blade=blade, word=word, at=NOON, by=house.trimmer)
    sharpen(house, SharpenedBlade(blade))
    assert Blade.objects.within(house.scope).get().state == BladeState.IN_USE


def test_a_chipped_knife_comes_back_only_when_the_chip_is_out(house, blade):
    out(house, blade, BladeFault.CHIPPED)
    sharpen(house, SharpenedBlade(blade), sharpened_at=EVENING - timedelta(hours=1))
    assert Blade.objects.within(house.scope).get().state == BladeState.OUT_OF_USE
    sharpen(house, SharpenedBlade(blade, chip_is_out=True))
    assert Blade.objects.within(house.scope).get().state == BladeState.IN_USE


@pytest.mark.parametrize("fault", [BladeFault.CRACKED, BladeFault.HANDLE])
def test_what_grinding_does_not_mend_is_not_ground(house, blade, fault):
    out(house, blade, fault)
    with pytest.raises(SharpeningRefused, match="does not mend"):
        sharpen(house, SharpenedBlade(blade))


def test_all_or_none_is_noted(house, blade):
    other = make_blade(house.van, "Red", bought_on=LONG_AGO)
    change_blade_state(blade=other, word=BladeStateWord(BladeState.RETIRED), at=NOON, by=house.trimmer)
    with pytest.raises(SharpeningRefused, match="Red is retired"):
        sharpen(house, SharpenedBlade(blade), SharpenedBlade(other))
    assert not Sharpening.objects.within(house.scope).exists()


def test_what_cannot_be_is_refused(house, blade):
    with pytest.raises(SharpeningRefused, match="No blade"):
        sharpen(house)
    with pytest.raises(SharpeningRefused, match="still to come"):
        sharpen(house, SharpenedBlade(blade), sharpened_at=EVENING + timedelta(hours=2))
    with pytest.raises(SharpeningRefused, match="bought after"):
        sharpen(house, SharpenedBlade(blade), sharpened_at=EVENING - timedelta(days=30))
    with pytest.raises(SharpeningRefused, match="not noted as chipped"):
        sharpen(house, SharpenedBlade(blade, chip_is_out=True))
    out(house, blade, BladeFault.CHIPPED, at=EVENING)
    with pytest.raises(SharpeningRefused, match="chipped after"):
        sharpen(house, SharpenedBlade(blade, chip_is_out=True), sharpened_at=EVENING - timedelta(minutes=1))
