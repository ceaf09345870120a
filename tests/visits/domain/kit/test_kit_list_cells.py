"""Single cells of a list of consumables."""

from datetime import date
from decimal import Decimal

import pytest

from visits.domain.kit import kit_list_cells as cells
from visits.domain.kit.stock_kinds import ConsumableKind, Unit


@pytest.mark.parametrize(
    ("read", "cell", "found"),
    [
        (cells.text(5), "a b", "a b"),
        (cells.figure("0", "10"), "2,5", Decimal("2.5")),
        (cells.figure("0", "20", 3), "1,050", Decimal("1.05")),
        (cells.whole(0, 9), "7.0", 7),
        (cells.kind, "Disinfectant", ConsumableKind.DISINFECTANT),
        (cells.kind, "bandage", ConsumableKind.WRAP),
        (cells.unit, "Pieces", Unit.EACH),
        (cells.unit, "ML", Unit.ML),
        (cells.address, "a@b.example", "a@b.example"),
        (cells.yes, "X", True),
        (cells.yes, "0", False),
        (cells.day, "2027-03-02", date(2027, 3, 2)),
        (cells.day, "02/03/2027", date(2027, 3, 2)),
        (cells.day, "2.3.2027", date(2027, 3, 2)),
    ],
)
def test_a_cell_is_read(read, cell, found):
    assert read(cell) == found


@pytest.mark.parametrize(
    ("read", "cell"),
    [
        (cells.text(2), "abc"),
        (cells.text(9), "a\nb"),
        (cells.figure("1", "2"), "0.99"),
        (cells.whole(0, 9), "10"),
        (cells.whole(0, 9), "1.5"),
        (cells.kind, "tin"),
        (cells.unit, "litre"),
        (cells.address, "a@b"),
        (cells.yes, "maybe"),
        (cells.day, "1890-01-01"),
        (cells.day, "next week"),
    ],
)
def test_a_faulty_cell_is_refused_in_words(read, cell):
    with pytest.raises(ValueError, match=r"\w+ \w+"):
        read(cell)
