"""Contrast after WCAG 2.2; the two worked values are the definition's ends (black on white 21:1, same colour 1:1)."""

import pytest

from trimops.paper.colours import HEX, Meaning, Tint, contrast, tint_of


def test_contrast_has_the_ends_that_its_definition_gives():
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#777777") == pytest.approx(1)


@pytest.mark.parametrize("tint", [Tint.INK, Tint.QUIET, *[tint_of(meaning) for meaning in Meaning]])
@pytest.mark.parametrize("ground", [Tint.PAPER, Tint.GROUND])
def test_words_and_signs_can_be_read_on_every_ground(tint, ground):
    assert contrast(HEX[tint], HEX[ground]) >= 4.5


def test_every_meaning_has_a_colour_of_its_own():
    assert len({HEX[tint_of(meaning)] for meaning in Meaning}) == len(Meaning)
