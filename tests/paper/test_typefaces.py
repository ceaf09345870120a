import pytest

from trimops.paper.typefaces import BODY, BOLD, letters_of, runs_of, width_of


@pytest.mark.parametrize("face", [BODY, BOLD])
def test_all_digits_are_equally_wide_so_that_figures_stand_under_each_other(face):
    assert len({round(width_of(digit, face, 1000)) for digit in "0123456789"}) == 1


def test_the_face_has_the_letters_of_these_islands_and_of_trade():
    wanted = "ÂâÊêÎîÔôÛûŴŵŶŷÁáÉéÍíÓóÚú£€–—‘’“”…·×½°−"
    assert [letter for letter in wanted if ord(letter) not in letters_of(BODY)] == []


def test_a_letter_of_another_script_is_lent_by_the_stand_in_face():
    assert runs_of("Mary Ελ!", BODY) == [(BODY, "Mary "), ("StandIn", "Ελ"), (BODY, "!")]


def test_a_letter_that_nobody_has_is_kept_not_dropped():
    assert "".join(run for _, run in runs_of("牛 12", BOLD)) == "牛 12"


def test_width_grows_with_size_and_is_nought_for_nothing():
    assert width_of("cow", BODY, 20) == pytest.approx(2 * width_of("cow", BODY, 10))
    assert width_of("", BODY, 10) == 0
