"""What a consumable's recipe and published figures say before any visit has been seen.

It fades: it counts as much as `WORTH_COWS` cows and `WORTH_VISITS` visits of the business's own, no more.

Source: blocks on 2.2 % of the cows trimmed in free stalls (Cramer et al. 2008, J Dairy Sci 91:3888). On lame cows the
same paper has ulcers on 9.2 % of all cows, so about one block to four ulcers; other chances, and that a block of one
kind is one of two, are common practice, no source. When it must not be shown: as the business's own use.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from visits.domain.kit.stock_kinds import UsePer
from visits.domain.kit.use_rules import Recipe

WORTH_COWS = 40.0
WORTH_VISITS = 4.0
OF_ONE_KIND = 0.5
FEET = ((2, 0.6), (4, 0.4))
"""Hind feet only, or all four (common practice, no source)."""


@dataclass(frozen=True)
class CowChances:
    """The chance that a cow uses any: one that comes for her routine trim, one re-checked or lame, one urgent."""

    routine: float
    corrective: float
    urgent: float


@dataclass(frozen=True)
class FirstGuess:
    """`sizes` are amounts per using cow with their weights, `per_visit` what every visit uses as a whole."""

    chances: CowChances
    sizes: tuple[tuple[Decimal, float], ...]
    per_visit: Decimal = Decimal(0)
    worth: float = WORTH_COWS


NO_GUESS = FirstGuess(CowChances(0.02, 0.05, 0.05), (), worth=1.0)
"""Where there is no recipe."""

_CHANCES = {
    UsePer.BLOCK: CowChances(0.022, 0.1, 0.24),
    UsePer.WRAP: CowChances(0.03, 0.1, 0.2),
    UsePer.DRESSING: CowChances(0.08, 0.2, 0.2),
    UsePer.FOOT: CowChances(1, 1, 1),
    UsePer.COW: CowChances(1, 1, 1),
}


def first_guess(recipe: Sequence[Recipe]) -> FirstGuess:
    """Of a consumable with that recipe; `NO_GUESS` where its lines name nothing that cows use."""
    per_visit = sum((line.quantity for line in recipe if line.per is UsePer.VISIT), Decimal(0))
    lines = [line for line in recipe if line.per is not UsePer.VISIT]
    if not lines:
        return FirstGuess(NO_GUESS.chances, (), per_visit, NO_GUESS.worth)
    chances = [_chances(line) for line in lines]
    any_of = CowChances(*(_any([getattr(each, name) for each in chances]) for name in _NAMES))
    sizes = tuple(size for line, each in zip(lines, chances, strict=True) for size in _sizes(line, each))
    return FirstGuess(any_of, sizes, per_visit)


_NAMES = ("routine", "corrective", "urgent")


def _chances(line: Recipe) -> CowChances:
    usual = _CHANCES[line.per]
    if line.block_kind is None:
        return usual
    return CowChances(*(getattr(usual, name) * OF_ONE_KIND for name in _NAMES))


def _any(chances: Sequence[float]) -> float:
    none = 1.0
    for chance in chances:
        none *= 1 - chance
    return 1 - none


def _sizes(line: Recipe, chances: CowChances) -> list[tuple[Decimal, float]]:
    if line.per is UsePer.FOOT:
        return [(line.quantity * feet, chances.routine * share) for feet, share in FEET]
    return [(line.quantity, chances.routine)]
