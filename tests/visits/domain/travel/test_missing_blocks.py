from hypothesis import given
from hypothesis import strategies as st

from visits.domain.travel.missing_blocks import missing_blocks

KEYS = [f"p{n}" for n in range(7)]
ALL = {(a, b) for a in KEYS for b in KEYS if a != b}


def cells(blocks):
    return [(a, b) for block in blocks for a in block.sources for b in block.destinations]


def test_an_empty_table_is_one_block():
    assert len(list(missing_blocks(KEYS, set()))) == 1


def test_a_full_table_asks_for_nothing():
    assert list(missing_blocks(KEYS, ALL)) == []
    assert list(missing_blocks(KEYS[:1], set())) == []


def test_a_new_farm_among_known_ones_is_two_blocks_of_its_own_drives():
    known = {(a, b) for a, b in ALL if "p6" not in (a, b)}
    blocks = list(missing_blocks(KEYS, known))
    assert len(blocks) == 2
    assert {cell for cell in cells(blocks) if cell[0] != cell[1]} == ALL - known


def test_a_large_table_is_cut_into_pieces_that_a_server_takes():
    keys = [str(n) for n in range(120)]
    blocks = list(missing_blocks(keys, set()))
    assert max(len(block.sources) + len(block.destinations) for block in blocks) == 100
    assert len(blocks) == 9
    assert {(a, b) for a in keys for b in keys if a != b} <= set(cells(blocks))


@given(st.sets(st.sampled_from(sorted(ALL))), st.integers(1, 7))
def test_each_missing_drive_is_asked_for_once_and_no_known_one(known, side):
    asked = [cell for cell in cells(missing_blocks(KEYS, known, side)) if cell[0] != cell[1]]
    assert sorted(asked) == sorted(ALL - known)
