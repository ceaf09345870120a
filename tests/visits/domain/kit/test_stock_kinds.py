from enum import StrEnum

import pytest

from visits.domain.kit import stock_kinds
from visits.domain.kit.stock_kinds import Unit

KINDS = [each for each in vars(stock_kinds).values() if isinstance(each, type) and issubclass(each, StrEnum)]


@pytest.mark.parametrize(
    "kind", [kind for kind in KINDS if kind is not StrEnum], ids=lambda kind: kind.__name__
)
def test_every_kind_has_words_of_its_own(kind):
    words = [member.label for member in kind]
    assert all(words)
    assert len(set(words)) == len(words)


def test_pieces_are_carried_whole_and_what_is_poured_is_not():
    assert [unit.value for unit in Unit if unit.is_whole] == ["each", "pair"]
