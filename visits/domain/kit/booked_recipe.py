"""The recipe by which a use was booked, in words that stand on its line of the ledger and can be read again.

"25 per block, 1 per wood block, 0.5 per foot". Whoever asks why a cow used so much sees it; and when the cow's words
are changed later she is counted by the recipe of her day, though the business works by another one since.
"""

import re
from collections.abc import Sequence
from decimal import Decimal

from visits.domain.actions import BlockKind
from visits.domain.kit.stock_kinds import UsePer
from visits.domain.kit.use_rules import Recipe

LONGEST_WORDS = 200
"""Characters that a line of the ledger has room for."""

_LINE = re.compile(r"([0-9]+(?:\.[0-9]+)?) per (?:([a-z]+) )?([a-z]+)")


def recipe_words(lines: Sequence[Recipe]) -> str:
    """The lines of a cow's recipe, those per visit left out; "" where none is left or they are too long to keep."""
    words = ", ".join(_line(line) for line in lines if line.per is not UsePer.VISIT)
    return words if len(words) <= LONGEST_WORDS else ""


def read_recipe(words: str) -> list[Recipe] | None:
    """The lines that `recipe_words` wrote; None for any other words."""
    lines = [_read_line(line) for line in words.split(", ")]
    whole = [line for line in lines if line]
    return whole if len(whole) == len(lines) else None


def _line(line: Recipe) -> str:
    kind = f"{line.block_kind.value} " if line.block_kind else ""
    return f"{line.quantity.normalize():f} per {kind}{line.per.value}"


def _read_line(words: str) -> Recipe | None:
    found = _LINE.fullmatch(words)
    if not found:
        return None
    try:
        kind = BlockKind(found[2]) if found[2] else None
        return Recipe(UsePer(found[3]), Decimal(found[1]), kind)
    except ValueError:
        return None
