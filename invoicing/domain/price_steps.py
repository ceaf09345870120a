"""Prices that change with the number."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from itertools import pairwise


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


@dataclass(frozen=True)
class PriceStep:
    """From that many on (the first step: 1), each costs `unit_price` without tax."""

    from_quantity: int
    unit_price: Decimal


@dataclass(frozen=True)
class StepPart:
    """So many at one price; `words` say which step it is, "" where there is only one."""

    quantity: Decimal
    unit_price: Decimal
    words: str = ""


def step_parts(quantity: Decimal, steps: Sequence[PriceStep], rule: StepRule) -> list[StepPart]:
    """What `quantity` (above 0) costs: one part, or with slices one for each slice reached.

    A step "from 11" begins above 10, so that it is clear for 10.4 km too. The first step holds from the first unit on,
    whatever it says. ValueError without steps.
    """
    if not steps:
        raise ValueError("a price has at least one step")
    ordered = sorted(steps, key=lambda step: step.from_quantity)
    reached = [ordered[0], *(step for step in ordered[1:] if step.from_quantity - 1 < quantity)]
    if len(ordered) == 1:
        return [StepPart(quantity, reached[0].unit_price)]
    if rule is StepRule.WHOLE:
        last = reached[-1]
        return [StepPart(quantity, last.unit_price, _from_words(last.from_quantity))]
    return _slices(quantity, reached)


def _slices(quantity: Decimal, reached: Sequence[PriceStep]) -> list[StepPart]:
    edges = [Decimal(0), *(Decimal(step.from_quantity - 1) for step in reached[1:]), quantity]
    return [
        StepPart(until - start, step.unit_price, _slice_words(step.from_quantity, start, until))
        for step, (start, until) in zip(reached, pairwise(edges), strict=True)
    ]


def _from_words(first: int) -> str:
    return f"price from {first} on" if first > 1 else "first price"


def _slice_words(first: int, start: Decimal, until: Decimal) -> str:
    return f"{first if start else 1} to {until.normalize():f}"
