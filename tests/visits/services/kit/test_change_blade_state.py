from datetime import timedelta

import pytest

from tests.factories import NOON, make_blade
from visits.domain.kit.blade_kinds import BladeFault, BladeKind, BladeState
from visits.domain.kit.put_right import PutRight
from visits.models import BladeEvent
from visits.services.kit.change_blade_state import BladeStateRefused, BladeStateWord, change_blade_state

OUT, IN_USE, RETIRED = BladeState.OUT_OF_USE, BladeState.IN_USE, BladeState.RETIRED


def change(blade, state, hour=1, **word):
    at = NOON + timedelta(hours=hour)
    return change_blade_state(blade=blade, word=BladeStateWord(state, **word), at=at, by=blade.van.trimmer)


def test_each_word_is_kept_with_who_when_and_why(house):
    blade = make_blade(house.van, "Blue")
    assert change(blade, OUT, fault=BladeFault.LOST, note="Fell into the slurry").fault == BladeFault.LOST
    event = BladeEvent.objects.within(house.scope).last()
    assert (event.state, event.fault, event.note) == (OUT, BladeFault.LOST, "Fell into the slurry")
    assert (event.by, event.at) == (house.trimmer, NOON + timedelta(hours=1))
    assert change(blade, RETIRED, 2).state == RETIRED
    assert change(blade, IN_USE, 3).state == IN_USE


def test_the_same_word_again_changes_nothing(house):
    blade = make_blade(house.van, "Blue")
    for hour in (1, 2):
        change(blade, BladeState.AT_GRINDING, hour)
    assert BladeEvent.objects.within(house.scope).filter(state=BladeState.AT_GRINDING).count() == 1


@pytest.mark.parametrize(
    ("kind", "fault", "put_right"),
    [
        (BladeKind.HOOF_KNIFE, BladeFault.CRACKED, PutRight.GROUND_OUT),
        (BladeKind.HOOF_KNIFE, BladeFault.CRACKED, PutRight.MENDED),
        (BladeKind.GRINDER_DISC, BladeFault.CHIPPED, PutRight.GROUND_OUT),
        (BladeKind.HOOF_KNIFE, BladeFault.CHIPPED, None),
    ],
)
def test_a_fault_comes_back_only_when_it_was_put_right_as_it_can_be(house, kind, fault, put_right):
    blade = make_blade(house.van, "Blue", kind=kind.value)
    change(blade, OUT, fault=fault)
    with pytest.raises(BladeStateRefused) as refused:
        change(blade, IN_USE, 2, put_right=put_right)
    assert refused.value.field == "put_right"
    row = change(blade, IN_USE, 3, put_right=PutRight.REPLACED)
    assert (row.state, row.fault) == (IN_USE, "")
    assert BladeEvent.objects.within(house.scope).last().note == PutRight.REPLACED.label


def test_a_worn_disc_is_replaced_while_in_use(house):
    blade = make_blade(house.van, "Blue", kind=BladeKind.GRINDER_DISC.value)
    change(blade, IN_USE)
    change(blade, IN_USE, 2, put_right=PutRight.REPLACED)
    assert BladeEvent.objects.within(house.scope).last().fault == BladeFault.WORN


def test_out_of_use_wants_a_reason_and_nothing_is_bought_twice(house):
    blade = make_blade(house.van, "Blue")
    with pytest.raises(BladeStateRefused, match="why"):
        change(blade, OUT)
    with pytest.raises(BladeStateRefused, match="bought once"):
        change(blade, BladeState.BOUGHT)
