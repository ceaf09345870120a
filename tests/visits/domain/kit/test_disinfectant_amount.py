"""How much goes into the tub. The two sums are trade-facts 5.1; the other rows follow from them by hand."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.kit.disinfectant_amount import disinfectant_amount, read_dilution
from visits.domain.kit.stock_kinds import Unit

D = Decimal


@pytest.mark.parametrize(
    ("dilution", "litres", "counted_in", "amount"),
    [
        ("1:100", "10", None, (D("100.00"), "ml")),
        ("2 % w/v", "10", None, (D("200.00"), "g")),
        ("2 % v/v", "10", Unit.GRAM, (D("200.00"), "ml")),
        ("1 in 50", "5", Unit.ML, (D("100.00"), "ml")),
        ("1 to 150", "10", None, (D("66.67"), "ml")),
        ("1:100", "10", Unit.GRAM, (D("100.00"), "g")),
        ("2 %", "20", None, (D("400.00"), "ml")),
        ("2%", "20", Unit.GRAM, (D("400.00"), "g")),
        ("0,5 %", "7.5", None, (D("37.50"), "ml")),
        ("20 g/l", "12", None, (D("240.00"), "g")),
        ("20 g per litre", "12", Unit.ML, (D("240.00"), "g")),
        (" 10\u00a0ML / L ", "2.5", None, (D("25.00"), "ml")),
        ("1:1", "10", None, (D("10000.00"), "ml")),
    ],
)
def test_amounts_for_a_tub(
    dilution: str, litres: str, counted_in: Unit | None, amount: tuple[Decimal, str]
) -> None:
    assert disinfectant_amount(dilution, D(litres), counted_in=counted_in) == amount


@pytest.mark.parametrize(
    "dilution",
    [
        "",
        "strong",
        "1:0",
        "1:0.5",
        "0 %",
        "101 %",
        "2 % w/w",
        "1:",
        "2:100",
        "1001 g/l",
        "1:١٠٠",
        "-1:100",
        "1e3 %",
    ],
)
def test_what_cannot_be_read_gives_no_amount(dilution: str) -> None:
    assert read_dilution(dilution) is None
    assert disinfectant_amount(dilution, D(10)) is None


def test_a_tub_of_no_size_takes_nothing() -> None:
    assert disinfectant_amount("1:100", D(0)) is None


@given(st.decimals("0.1", "999.9", places=1), st.integers(1, 2000))
def test_twice_the_tub_takes_twice_the_product(litres: Decimal, parts: int) -> None:
    once, twice = disinfectant_amount(f"1:{parts}", litres), disinfectant_amount(f"1:{parts}", 2 * litres)
    assert once is not None
    assert twice is not None
    assert abs(twice[0] - 2 * once[0]) <= D("0.015")


@given(st.integers(1, 100), st.decimals("0.1", "99.9", places=1))
def test_parts_and_per_cent_say_the_same(percent: int, litres: Decimal) -> None:
    by_percent = disinfectant_amount(f"{percent} % v/v", litres)
    per_litre = disinfectant_amount(f"{percent * 10} ml/l", litres)
    assert by_percent == per_litre
    if 100 % percent == 0:
        assert disinfectant_amount(f"1:{100 // percent}", litres) == by_percent
