import pytest

from visits.domain.kit.blade_kinds import BladeFault, BladeKind
from visits.domain.kit.put_right import PutRight, ways_to_put_right


@pytest.mark.parametrize("kind", BladeKind)
def test_a_cracked_blade_is_only_ever_replaced(kind):
    assert ways_to_put_right(kind, BladeFault.CRACKED) == (PutRight.REPLACED,)


def test_a_chip_is_ground_out_of_a_knife_and_never_of_a_disc():
    assert PutRight.GROUND_OUT in ways_to_put_right(BladeKind.HOOF_KNIFE, BladeFault.CHIPPED)
    assert ways_to_put_right(BladeKind.GRINDER_DISC, BladeFault.CHIPPED) == (PutRight.REPLACED,)


def test_a_loose_handle_is_set_right_not_ground():
    assert ways_to_put_right(BladeKind.HOOF_KNIFE, BladeFault.HANDLE) == (PutRight.MENDED, PutRight.REPLACED)
