from datetime import date

from invoicing.domain.billing_rhythm import BillingRhythm, month_of


def test_each_rhythm_has_words():
    assert {rhythm.label for rhythm in BillingRhythm} == {"Each visit", "Each month"}


def test_a_month_is_known_by_its_first_and_last_day():
    assert month_of(date(2028, 2, 14)) == (date(2028, 2, 1), date(2028, 2, 29))
    assert month_of(date(2026, 12, 31)) == (date(2026, 12, 1), date(2026, 12, 31))
