"""Slips are refused with what to mend."""

from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest

from visits.domain.kit.stock_doubts import expiry_doubt, moment_doubt, purchase_doubt, quantity_doubt
from visits.domain.kit.stock_kinds import Unit

NOW = datetime(2026, 3, 3, 10, tzinfo=UTC)
DAY = date(2026, 3, 3)


@pytest.mark.parametrize(
    ("quantity", "unit", "words"),
    [
        ("0", Unit.EACH, None),
        ("2.5", Unit.EACH, None),
        ("100000", Unit.PAIR, None),
        ("100001", Unit.PAIR, "cannot be meant"),
        ("5000001", Unit.ML, "cannot be meant"),
        ("-1", Unit.ML, "nought or more"),
        ("NaN", Unit.ML, "nought or more"),
        ("0.001", Unit.GRAM, "two decimals"),
    ],
)
def test_amounts(quantity, unit, words):
    doubt = quantity_doubt("Glue", Decimal(quantity), unit)
    assert doubt is None if words is None else words in doubt and doubt.startswith("Glue")


@pytest.mark.parametrize(
    ("quantity", "unit", "price", "words"),
    [
        ("24", Unit.EACH, "60.00", None),
        ("24", Unit.EACH, None, None),
        ("24", Unit.EACH, "0", None),
        ("0", Unit.EACH, None, "say how much"),
        ("2.5", Unit.EACH, None, "whole pieces, not 2.5"),
        ("2.5", Unit.ML, None, None),
        ("24001", Unit.EACH, None, "1,000 packs of 24"),
        ("24", Unit.EACH, "-1", "nought or more"),
        ("24", Unit.EACH, "1.005", "two decimals"),
        ("24", Unit.EACH, "1000001", "cannot be meant"),
    ],
)
def test_purchases(quantity, unit, price, words):
    cost = None if price is None else Decimal(price)
    doubt = purchase_doubt("Block", Decimal(quantity), unit, Decimal(24), cost)
    assert doubt is None if words is None else words in doubt


@pytest.mark.parametrize(
    ("days", "words"), [(0, None), (400, None), (-1, "past it when it was bought"), (12_000, "30 years")]
)
def test_dates_on_labels(days, words):
    doubt = expiry_doubt("Glue", DAY + timedelta(days=days), DAY)
    assert doubt is None if words is None else words in doubt


@pytest.mark.parametrize(
    ("ahead", "words"),
    [
        (timedelta(0), None),
        (timedelta(minutes=5), None),
        (timedelta(minutes=6), "lies ahead"),
        (timedelta(days=-3000), None),
        (timedelta(days=-3661), "ten years"),
    ],
)
def test_moments(ahead, words):
    doubt = moment_doubt(NOW + ahead, NOW)
    assert doubt is None if words is None else words in doubt
