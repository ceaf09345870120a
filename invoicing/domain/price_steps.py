"""Prices that change with the number."""

from enum import StrEnum


class StepRule(StrEnum):
    """How a price with steps counts."""

    WHOLE = "whole"
    SLICES = "slices"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    StepRule.WHOLE: "All at the price of the step reached",
    StepRule.SLICES: "Each slice at its own price",
}
