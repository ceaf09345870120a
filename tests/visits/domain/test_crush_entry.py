import pytest

from visits.domain.actions import ActionKind, BlockKind, TrimKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FootEntry
from visits.domain.feet import Claw, Foot

BLOCK = ActionEntry(ActionKind.BLOCK, Claw.MEDIAL, BlockKind.WOOD)
FOOT = FootEntry(Foot.LEFT_HIND, actions=(ActionEntry(ActionKind.LENGTH, Claw.LATERAL), BLOCK))


def test_the_blocks_of_a_foot_are_those_put_on():
    off = ActionEntry(ActionKind.BLOCK_OFF, Claw.LATERAL)
    assert list(FootEntry(Foot.LEFT_HIND, actions=(off, BLOCK)).blocks()) == [BLOCK]


@pytest.mark.parametrize(
    ("kind", "claw", "done"),
    [
        (ActionKind.LENGTH, None, True),
        (ActionKind.LENGTH, Claw.LATERAL, True),
        (ActionKind.LENGTH, Claw.MEDIAL, False),
        (ActionKind.MODEL, None, False),
    ],
)
def test_what_was_done_is_asked_for_the_foot_or_for_one_claw(kind, claw, done):
    assert FOOT.did(kind, claw) is done


def test_the_kind_of_trim_counts_all_feet_of_the_cow():
    other = FootEntry(Foot.RIGHT_HIND, actions=(ActionEntry(ActionKind.LENGTH, Claw.LATERAL),))
    assert CowEntry().kind is TrimKind.CHECK
    assert CowEntry((other,)).kind is TrimKind.FUNCTIONAL
    assert CowEntry((other, FOOT)).kind is TrimKind.CORRECTIVE
