"""Names of pieces of work."""

from uuid import UUID

from invoicing.domain.pricing import PriceItem
from invoicing.domain.visit_work import WorkPiece, foot_key, piece_words, trim_key, visit_key

ONE = UUID(int=1)


def test_keys_name_the_visit_the_cow_and_the_foot():
    assert visit_key(ONE, PriceItem.CALL_OUT) == f"visit/{ONE}/call_out"
    assert trim_key(ONE, PriceItem.CHECK) == f"trim/{ONE}/check"
    assert foot_key(ONE, "LH", PriceItem.BLOCK, "medial") == f"trim/{ONE}/LH/block/medial"


def test_a_key_fits_its_column():
    assert len(foot_key(ONE, "LH", PriceItem.OUT_OF_HOURS, "lateral/99")) <= 120


def test_the_office_reads_which_cow_and_what():
    block = WorkPiece("", PriceItem.BLOCK, 1, "cow 101", "LH", "inner claw")
    assert piece_words(block) == "cow 101: Block, left hind, inner claw"
    assert piece_words(WorkPiece("", PriceItem.CALL_OUT)) == "Call-out"
