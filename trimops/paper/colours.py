"""Colours of paper and page: ink on paper, and four meanings that never stand on colour alone.

Each meaning has a hue, a shape and a word. The hues keep at least 4.5:1 on white (WCAG 2.2, 1.4.3) and differ in
lightness as well as hue.
"""

from enum import StrEnum
from typing import Final


class Meaning(StrEnum):
    """What a coloured mark says; the value is also the word of the CSS class."""

    DONE = "done"
    DUE = "due"
    URGENT = "urgent"
    PLANNED = "planned"


class Tint(StrEnum):
    """Every colour a drawing may name; the page's stylesheet may swap them by class (outdoor theme)."""

    INK = "ink"
    QUIET = "quiet"
    RULE = "rule"
    GROUND = "ground"
    PAPER = "paper"
    DONE = "done"
    DUE = "due"
    URGENT = "urgent"
    PLANNED = "planned"


HEX: Final[dict[Tint, str]] = {
    Tint.INK: "#1b1a17",
    Tint.QUIET: "#55524b",
    Tint.RULE: "#b9b5ab",
    Tint.GROUND: "#f1efe9",
    Tint.PAPER: "#ffffff",
    Tint.DONE: "#1f6f43",
    Tint.DUE: "#9a5b00",
    Tint.URGENT: "#a8201a",
    Tint.PLANNED: "#1d4f91",
}


def tint_of(meaning: Meaning) -> Tint:
    """The colour that goes with a meaning."""
    return Tint(meaning.value)


def contrast(first: str, second: str) -> float:
    """Contrast ratio of two #rrggbb colours, 1 to 21 (WCAG 2.2, definition "contrast ratio")."""
    dark, light = sorted((_luminance(first), _luminance(second)))
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: str) -> float:
    red, green, blue = (_linear(int(colour[i : i + 2], 16) / 255) for i in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else float(((channel + 0.055) / 1.055) ** 2.4)
