from trimops.paper.to_pdf import DrawingBlock
from visits.documents.draft_list_content import DraftCow, DraftGroup
from visits.documents.draft_list_rows import draft_table


def cells_of(*groups):
    return draft_table(groups)._cellvalues


def test_every_cow_has_a_box_to_tick():
    rows = cells_of(DraftGroup("Lame now", (DraftCow("1", "lame"), DraftCow("2", "lame"))))
    boxes = [row[0] for row in rows if isinstance(row[0], DrawingBlock)]
    assert [box.drawing.title for box in boxes] == ["box to tick"] * 2


def test_only_a_cow_with_a_warning_wears_the_sign():
    rows = cells_of(DraftGroup("Due", (DraftCow("1", "due"), DraftCow("2", "due", "calves in 20 days"))))
    assert [isinstance(row[2], DrawingBlock) for row in rows[2:]] == [False, True]


def test_a_need_without_cows_is_not_named():
    assert len(cells_of(DraftGroup("Lame now", ()), DraftGroup("Due", (DraftCow("1", "due"),)))) == 3


def test_a_whole_ear_tag_is_set_smaller_than_a_herd_number():
    rows = cells_of(DraftGroup("Due", (DraftCow("87", "due"), DraftCow("UK284205700016", "due"))))
    assert [row[1].style.fontSize for row in rows[2:]] == [20, 12]
