"""Contrast by WCAG 2.2's definition of relative luminance and contrast ratio (from memory of the formula;
black on white must give 21 and #767676 on white 4.54, both quoted in its own understanding documents)."""

import re
from itertools import product
from pathlib import Path

import pytest
from django.conf import settings

CSS = (Path(settings.BASE_DIR) / "trimops/web/static/trimops/trimops.css").read_text()
WORDS = ("ink", "quiet", "done", "due", "urgent", "planned")


def tokens(selector):
    block = re.search(re.escape(selector) + r" \{(.*?)\n\}", CSS, re.S).group(1)
    return dict(re.findall(r"--([a-z]+): (#[0-9a-f]+)", block))


def luminance(colour):
    digits = colour.lstrip("#")
    digits = "".join(c * 2 for c in digits) if len(digits) == 3 else digits
    parts = [int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_the_measure_itself_is_right():
    assert contrast("#000", "#fff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)


@pytest.mark.parametrize(("word", "ground"), list(product(WORDS, ("paper", "sheet"))))
def test_words_stand_out_by_4_5_in_the_light_theme(word, ground):
    light = tokens(":root")
    assert contrast(light[word], light[ground]) >= 4.5


@pytest.mark.parametrize(("word", "ground"), list(product(WORDS, ("paper", "sheet"))))
def test_words_stand_out_by_7_outdoors(word, ground):
    outdoor = tokens(':root[data-theme="outdoor"]')
    assert contrast(outdoor[word], outdoor[ground]) >= 7


def test_edges_of_fields_stand_out_by_3():
    light = tokens(":root")
    assert contrast(light["edge"], light["paper"]) >= 3
