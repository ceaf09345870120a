"""Steps of a price and bands of travel, as they are typed in a box and shown in it again."""

import re
from collections.abc import Iterator, Sequence
from decimal import Decimal

from invoicing.domain.price_steps import PriceStep
from invoicing.domain.read_amount import read_amount
from invoicing.domain.travel_charge import Band

BEYOND = "beyond"


def read_steps(text: str) -> tuple[PriceStep, ...]:
    """`"21: 12.00; 41: 10,50"`, from 21 on and from 41 on. ValueError says what is wrong. Empty: none."""
    steps = tuple(PriceStep(_whole(start), _price(price)) for start, price in _pairs(text))
    starts = [step.from_quantity for step in steps]
    if starts != sorted(set(starts)):
        raise ValueError("Each step begins at a higher number than the one before it.")
    return steps


def read_bands(text: str) -> tuple[Band, ...]:
    """A line each, the nearest first: `"10: 8.00"`, and last, if there is one, `"beyond: 40.00"`. ValueError."""
    bands = tuple(
        Band(None if until.lower() == BEYOND else _distance(until), _price(price))
        for until, price in _pairs(text)
    )
    edges = [band.up_to for band in bands]
    if None in edges[:-1]:
        raise ValueError(f"“{BEYOND}” comes last: it is for all that is farther.")
    closed = [edge for edge in edges if edge is not None]
    if closed != sorted(set(closed)):
        raise ValueError("Each band reaches farther than the one before it.")
    return bands


def steps_text(steps: Sequence[PriceStep]) -> str:
    """What `read_steps` reads."""
    return "; ".join(f"{step.from_quantity}: {plain_amount(step.unit_price)}" for step in steps)


def bands_text(bands: Sequence[Band]) -> str:
    """What `read_bands` reads."""
    return "\n".join(
        f"{BEYOND if band.up_to is None else plain_amount(band.up_to, 0)}: {plain_amount(band.price)}"
        for band in bands
    )


def plain_amount(amount: Decimal, digits: int = 2) -> str:
    """At least `digits` decimals, more where there are more: 12.5000 is "12.50", 0.4550 is "0.455"."""
    short = amount.normalize()
    exponent = short.as_tuple().exponent
    decimals = max(digits, -exponent if isinstance(exponent, int) else 0)
    return f"{short:.{decimals}f}"


def _pairs(text: str) -> Iterator[tuple[str, str]]:
    for part in re.split(r"[;\n]", text):
        if part.strip():
            left, colon, right = part.partition(":")
            if not colon or not right.strip():
                raise ValueError(f"“{part.strip()}”: write a number, a colon and a price.")
            yield left.strip(), right.strip()


def _whole(text: str) -> int:
    if not re.fullmatch(r"[0-9]{1,6}", text, re.ASCII) or int(text) < 2:
        raise ValueError(f"“{text}”: a step begins at a whole number from 2 on.")
    return int(text)


def _distance(text: str) -> Decimal:
    distance = read_amount(text)
    if not 0 < distance < 10_000 or distance != round(distance, 1):
        raise ValueError(f"“{text}”: a distance above nought, to a tenth at most, or “{BEYOND}”.")
    return distance


def _price(text: str) -> Decimal:
    price = read_amount(text)
    if not 0 <= price < 1_000_000 or price != round(price, 4):
        raise ValueError(f"“{text}”: a price from nought on, with four decimals at most.")
    return price
