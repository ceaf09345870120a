"""How much goes into the bucket, on the phone. Two amounts are those of trade-facts 5.1 (1:100 in 10 l is 100 ml,
2 % w/v in 10 l is 200 g); the others follow from what the words mean: parts in parts, grams in 100 ml."""

from collections.abc import Iterator
from decimal import Decimal
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser

from tests.browser.phone_modules import Module, module_alone
from visits.domain.kit.disinfectant_amount import disinfectant_amount
from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.weight_and_volume import in_unit

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture(scope="module")
def dilution(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "dilution.js") as module:
        yield module


def needs(dilution: Module, text: str, litres: float) -> Any:
    return dilution.run("return it.bucketNeeds(given.text, given.litres)", {"text": text, "litres": litres})


@pytest.mark.parametrize(
    ("text", "litres", "ml", "g"),
    [
        ("1:100", 10, 100, None),
        ("1 : 100", 10, 100, None),
        ("1 in 50", 5, 100, None),
        ("1 to 250", 20, 80, None),
        ("2 % w/v", 10, None, 200),
        ("2% W/V", 10, None, 200),
        ("2 % v/v", 10, 200, None),
        ("0,5 % v/v", 7.5, 38, None),
        ("0.05 % w/v", 5, None, 2.5),
        ("1 %", 10, 100, 100),
    ],
)
def test_parts_are_measured_and_percent_is_weighed_or_measured(dilution, text, litres, ml, g) -> None:
    assert needs(dilution, text, litres) == {"ml": ml, "g": g}


@pytest.mark.parametrize(
    "text", ["", "strong", "1:0", "0 %", "120 %", "100:1", "2 % v/w", "1:100 or so", "-1 %"]
)
def test_what_is_no_dilution_gives_no_amount(dilution, text) -> None:
    assert needs(dilution, text, 10) is None


@pytest.mark.parametrize("litres", [0, -5, None])
def test_a_bucket_that_holds_nothing_needs_nothing(dilution, litres) -> None:
    assert needs(dilution, "1:100", litres) is None


@pytest.mark.parametrize(
    ("text", "litres", "words"),
    [
        ("1:100", 10, "100 ml of product, water up to 10 l."),
        ("2 % w/v", 10, "200 g of product, water up to 10 l."),
        ("2 %", 5, "100 ml of liquid or 100 g of powder, water up to 5 l."),
        ("20 g/l", 10, "200 g of product, water up to 10 l."),
        ("strong", 10, "Cannot work out the amount from that: write 1:100, or 2 % w/v for powder."),
        (" ", 10, "Say how strong, and the amount for the bucket stands here."),
        ("1:100", 0, "Say how many litres the bucket holds."),
    ],
)
def test_the_bucket_speaks_in_words(dilution, text, litres, words) -> None:
    said = dilution.run("return it.bucketWords(given.text, given.litres)", {"text": text, "litres": litres})
    assert said == words


def test_what_comes_off_the_stock_is_what_the_server_books(browser: Browser) -> None:
    """The two ways of reckoning, on tubs of every kind, readable dilutions and others."""
    made = [tub(Random(seed)) for seed in range(600)]
    with module_alone(browser, "rules.js") as rules:
        ask = (
            "return given.map(([wash, item]) => it.washMaterial(wash, { consumables: [item] })?.used ?? null)"
        )
        said = rules.run(ask, made)
    booked = [on_server(*each) for each in made]
    assert said == booked
    assert 200 < sum(amount is not None for amount in booked) < 590


def tub(chance: Random) -> tuple[dict[str, object], dict[str, object]]:
    """A wash-down and the product that it names."""
    number = chance.choice(["100", "2", "0,5", "33", "1.75", "0", "1001", "12.3456", "7"])
    shape = chance.choice(["1:{}", "1 in {}", "{} %", "{} % w/v", "{}% V/V", "{} g/l", "{} ml per l", "{} x"])
    litres = f"{chance.randint(1, 99_999) / 10}"
    item = {
        "id": 1,
        "unit": chance.choice(["ml", "g", "g", "ml", "each"]),
        "grams_per_ml": chance.choice([None, 1.0, 1.234, 0.1, 0.777, 20]),
    }
    return {"consumable": 1, "dilution": shape.format(number), "litres": litres}, item


def on_server(wash: dict[str, Any], item: dict[str, Any]) -> float | None:
    unit = Unit(item["unit"])
    amount = disinfectant_amount(wash["dilution"], Decimal(wash["litres"]), counted_in=unit)
    density = None if item["grams_per_ml"] is None else Decimal(str(item["grams_per_ml"]))
    found = in_unit(amount[0], Unit(amount[1]), unit, density) if amount else None
    return None if found is None else float(found)
