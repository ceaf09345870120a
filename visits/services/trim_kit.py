"""What cows used up by the recipes, as lines of the stock ledger."""

from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal

from visits.domain.kit.booked_recipe import read_recipe, recipe_words
from visits.domain.kit.stock_kinds import UseOf
from visits.domain.kit.use_rules import Recipe, used_by_cow
from visits.models import Visit
from visits.selectors.kit.recipes import recipes_of
from visits.services.kit.book_uses import Booked, Booking, UseAt, book_uses, booked_uses
from visits.services.kit.stock_place import stock_place_of
from visits.services.stored_cow import StoredCow


def use_kit(*, visit: Visit, cows: Sequence[StoredCow], noted_at: datetime) -> None:
    """Write what was used since each trim's earlier version; a cow that is taken back gives all of it back.

    A cow keeps, for each consumable that was booked for her, the recipe by which it was booked first: yesterday's
    glue was used as it was used, though the recipe was changed this morning and her note is mended now. What is booked
    for her for the first time goes by the recipe of now. The recipe stands on the lines themselves (`booked_recipe`).
    """
    recipes = recipes_of(visit.scope)
    booked = booked_uses(visit, UseOf.COW, trims=[cow.trim.pk for cow in cows])
    place = stock_place_of(visit).pk
    wanted: dict[UseAt, Decimal] = {}
    words: dict[tuple[int | None, int], str] = {}
    for cow in cows:
        hers = {**recipes, **_booked_recipes(booked, cow.trim.pk)}
        words |= {(cow.trim.pk, item): recipe_words(lines) for item, lines in hers.items()}
        if cow.trim.taken_back_at is None:
            for item, quantity in used_by_cow(hers, cow.entry).items():
                wanted[UseAt(item, place, cow.trim.recorded_at, cow.trim.pk)] = quantity
    book_uses(booking=Booking(visit, UseOf.COW, wanted, noted_at, words), booked=booked)


def _booked_recipes(booked: Booked, trim: int) -> dict[int, Sequence[Recipe]]:
    found = {item: read_recipe(words) for (of, item), words in booked.words.items() if of == trim}
    return {item: lines for item, lines in found.items() if lines}
