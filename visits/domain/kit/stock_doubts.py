"""What nobody can have meant when stock was bought, moved, counted or thrown away."""

from datetime import date, datetime, timedelta
from decimal import Decimal

from visits.domain.kit.hundredths import CENT
from visits.domain.kit.read_quantity import quantity_words
from visits.domain.kit.stock_kinds import Unit

MOST_OF = {Unit.EACH: 100_000, Unit.PAIR: 100_000, Unit.ML: 5_000_000, Unit.GRAM: 5_000_000}
"""More of one thing lies with no foot trimmer (5,000 l, 5 t); common sense, no source."""
MOST_PACKS = 1000
MOST_MONEY = Decimal(1_000_000)
OLDEST = timedelta(days=3660)
LONGEST_SHELF = timedelta(days=11_000)
CLOCKS_DIFFER = timedelta(minutes=5)
"""A form that was filled in on another machine may be ahead by so much."""


def quantity_doubt(name: str, quantity: Decimal, unit: Unit) -> str | None:
    """Why so much of it cannot have been moved, counted or thrown away; None where it can. Nought is for the caller."""
    if not quantity.is_finite() or quantity < 0:
        return f"{name}: an amount is nought or more."
    if quantity % CENT:
        return f"{name}: write the amount with two decimals at most."
    if quantity > MOST_OF[unit]:
        return f"{name}: {quantity_words(quantity, unit)} cannot be meant. Look at the figure and its unit."
    return None


def purchase_doubt(
    name: str, quantity: Decimal, unit: Unit, pack: Decimal, price: Decimal | None
) -> str | None:
    """Why so much of it cannot have been bought at that price of the whole; None where it can."""
    if doubt := quantity_doubt(name, quantity, unit):
        return doubt
    if not quantity:
        return f"{name}: say how much was bought."
    if unit.is_whole and quantity % 1:
        return f"{name} is bought in whole pieces, not {quantity_words(quantity, unit)}."
    if quantity > pack * MOST_PACKS:
        packs = quantity / pack
        return (
            f"{name}: that would be {packs:,.0f} packs of {quantity_words(pack, unit)}. Look at the figure."
        )
    if price is None:
        return None
    if not price.is_finite() or price < 0 or price % CENT:
        return f"{name}: the price is nought or more, with two decimals at most."
    if price > MOST_MONEY:
        return f"{name}: a price of {price:,.2f} cannot be meant."
    return None


def expiry_doubt(name: str, expires_on: date, bought_on: date) -> str | None:
    """Why that date cannot stand on what was bought on that day; None where it can."""
    if expires_on < bought_on:
        return f"{name}: by that date it was past it when it was bought. Look at the year."
    if expires_on - bought_on > LONGEST_SHELF:
        return f"{name}: that date is more than {LONGEST_SHELF.days // 366} years ahead. Look at the year."
    return None


def moment_doubt(at: datetime, noted_at: datetime) -> str | None:
    """Why that moment cannot be when it happened, told at `noted_at`; None where it can."""
    if at > noted_at + CLOCKS_DIFFER:
        return "The moment lies ahead. Look at the day and the hour."
    if at < noted_at - OLDEST:
        return f"That is more than ten years ago. Look at the year {at.year}."
    return None
