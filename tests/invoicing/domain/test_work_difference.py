"""Claims against the work as it is now."""

from uuid import uuid4

from invoicing.domain.pricing import PriceItem
from invoicing.domain.visit_work import WorkPiece, foot_key, trim_key
from invoicing.domain.work_difference import Claim, taken_keys, work_difference

COW, OTHER = uuid4(), uuid4()


def piece(client_id=COW, item=PriceItem.FUNCTIONAL, trim_id=7):
    return WorkPiece(trim_key(client_id, item), item, trim_id)


def claim(one, number=1):
    return Claim(number, one.key, one.trim_id, 5)


def test_work_that_is_billed_makes_no_difference():
    assert not work_difference([piece()], [claim(piece())])


def test_more_work_is_added_and_work_taken_back_is_gone():
    found = work_difference([piece(), piece(OTHER, trim_id=8)], [claim(piece())])
    assert found.added == (piece(OTHER, trim_id=8),)
    assert found.gone == ()
    assert work_difference([], [claim(piece())]).gone == (claim(piece()),)


def test_another_kind_of_trim_is_one_gone_and_one_added():
    found = work_difference([piece(item=PriceItem.CORRECTIVE)], [claim(piece())])
    assert [one.item for one in found.added] == [PriceItem.CORRECTIVE]
    assert found.gone == (claim(piece()),)


def test_a_cow_whose_id_changed_between_two_phones_is_the_same_work():
    block = foot_key(COW, "LH", PriceItem.BLOCK, "medial")
    later = WorkPiece(foot_key(OTHER, "LH", PriceItem.BLOCK, "medial"), PriceItem.BLOCK, 7)
    assert not work_difference([later], [Claim(1, block, 7, 5)])
    assert taken_keys([later], [Claim(1, block, 7, 5)]) == {later.key}
    elsewhere = WorkPiece(later.key, PriceItem.BLOCK, 8)
    assert work_difference([elsewhere], [Claim(1, block, 7, 5)]).added == (elsewhere,)
