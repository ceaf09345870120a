from trimops.paper.fitting import fits, fitting, room_for, wrapped

NAME = "Gwern-y-Ŵyl and Sons Dairy Farm"


def test_what_fits_is_left_alone():
    assert fitting(NAME, 500, 4) == NAME


def test_what_does_not_fit_is_cut_with_an_ellipsis_and_then_fits():
    cut = fitting(NAME, 30, 4, bold=True)
    assert cut.endswith("…")
    assert NAME.startswith(cut[:-1])
    assert fits(cut, 30, 4, bold=True)


def test_no_room_at_all_leaves_the_ellipsis():
    assert fitting(NAME, 0, 4) == "…"


def test_a_long_name_is_broken_at_its_spaces():
    lines = wrapped(NAME, 40, 4, lines=2)
    assert len(lines) == 2
    assert all(fits(line, 40, 4) for line in lines)
    assert wrapped(NAME, 500, 4, lines=2) == (NAME,)


def test_a_single_long_word_is_cut():
    assert wrapped("Gwernyŵyladdaughters", 10, 4, lines=2)[0].endswith("…")


def test_the_widest_of_several_needs_its_room_and_no_less_than_is_given():
    wide = room_for(["a", NAME], 5, 4, around=1)
    assert fits(NAME, wide - 1, 4)
    assert not fits(NAME, wide - 1.1, 4)
    assert room_for(["a", NAME], 500, 4) == 500
    assert room_for([], 5, 4) == 5
