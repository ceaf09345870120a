"""Quantities of the kit in words: `{{ 1600|of_unit:"ml" }}` is 1,600 ml."""

from decimal import Decimal

from django import template

from visits.domain.kit.item_outlook import most_of
from visits.domain.kit.kit_sheet import full_name
from visits.domain.kit.read_quantity import quantity_words, seen_words
from visits.domain.kit.stock_kinds import Unit
from visits.models import Consumable

register = template.Library()


@register.filter
def sized(item: Consumable) -> str:
    """Its name with its size: what a person takes off the shelf."""
    return full_name(item.name, item.size)


@register.filter
def of_unit(amount: Decimal | None, unit: str) -> str:
    """The quantity with its unit; nothing known is a dash."""
    return "–" if amount is None else quantity_words(Decimal(amount), Unit(unit))


@register.filter
def about(amount: Decimal, unit: str) -> str:
    """What lies there, as one would see it: no hundredths of a glove."""
    return seen_words(amount, Unit(unit))


@register.filter
def wholly(amount: Decimal, unit: str) -> str:
    """What is wanted or missing: whole pieces."""
    return of_unit(most_of(Unit(unit), amount), unit)


@register.filter
def signed(amount: Decimal, unit: str) -> str:
    """The same with a plus where it came."""
    return f"+{of_unit(amount, unit)}" if amount > 0 else of_unit(amount, unit)
