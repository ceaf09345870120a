import pytest

from visits.domain.kit.blade_kinds import (
    BladeFault,
    BladeKind,
    BladeState,
    EdgeBefore,
    EdgeFelt,
    Hand,
    SharpenMethod,
    TurnPart,
)

ALL = (BladeKind, Hand, BladeState, BladeFault, TurnPart, EdgeBefore, SharpenMethod, EdgeFelt)


@pytest.mark.parametrize("kind", ALL)
def test_each_member_has_a_word_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)


def test_only_what_is_whole_and_here_may_cut():
    assert [state for state in BladeState if state.may_cut] == [BladeState.BOUGHT, BladeState.IN_USE]


def test_what_may_hurt_somebody_is_a_danger_and_what_is_gone_is_none():
    harmless = [fault for fault in BladeFault if not fault.is_danger]
    assert harmless == [BladeFault.WORN, BladeFault.LOST]
    assert [part for part in TurnPart if part.is_out] == [TurnPart.CRACKED, TurnPart.CHIPPED]


def test_a_grinder_turns_discs_only():
    assert [kind for kind in BladeKind if kind.is_turned] == [BladeKind.GRINDER_DISC]
