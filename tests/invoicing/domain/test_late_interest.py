"""Late interest by the stated formula: worked examples with their sources, and what must hold for any debt."""

from datetime import date, timedelta
from decimal import Decimal as D

import pytest
from hypothesis import given
from hypothesis import strategies as st

from invoicing.domain.late_interest import (
    InterestTerms,
    NoReferenceRate,
    PaidPart,
    RateFrom,
    RateRule,
    fixed_sum,
    interest_stretches,
    interest_total,
    reference_rate,
)

DUE = date(2026, 3, 1)
HALF_PERCENT = (RateFrom(date(2020, 1, 1), D("0.5")),)
TERMS = InterestTerms(D(8), 365, RateRule.LAST_HALF, HALF_PERCENT)
# 1998 Act, section 5A, http://www.legislation.gov.uk/cy/ukpga/1998/20/section/5A (read; checkdata uk-late-fixed-sum)
UK_BANDS = ((D(0), D(40)), (D(1000), D(70)), (D(10000), D(100)))
TWO_RATES = (RateFrom(date(2025, 12, 18), D(4)), RateFrom(date(2026, 6, 10), D(3)))


def late(amount, days, parts=(), terms=TERMS, due=DUE):
    return interest_stretches(D(amount), due, parts, terms, due + timedelta(days=days))


def total(*args, **kwargs):
    return interest_total(late(*args, **kwargs))


@pytest.mark.parametrize(("days", "interest"), [(365, "85.00"), (50, "11.64"), (1, "0.23"), (0, "0.00")])
def test_the_worked_example(days, interest):
    """gov.uk, late commercial payments: 1,000.00 at 0.5 % + 8 % is 85.00 a year and 0.23 a day (from memory; the same
    figures were read on a secondary page; checkdata uk-late-interest). 50 days are 11.64 exactly; 11.50 with the day
    rounded first. Ours is the exact one."""
    assert total("1000.00", days) == D(interest)


@pytest.mark.parametrize(
    ("debt", "claimed"), [("999.99", 40), ("1000.00", 70), ("9999.99", 70), ("10000.00", 100)]
)
def test_the_fixed_sum_goes_by_the_debt(debt, claimed):
    assert fixed_sum(D(debt), UK_BANDS) == claimed


def test_below_every_band_nothing_is_claimed():
    assert fixed_sum(D("39.99"), ((D(40), D(10)),)) == 0
    assert fixed_sum(D("39.99"), ()) == 0


def test_days_run_from_the_day_after_the_due_day_to_the_day_of_reckoning():
    (stretch,) = late("1000.00", 50)
    assert (stretch.first, stretch.last, stretch.days) == (date(2026, 3, 2), date(2026, 4, 20), 50)


def test_a_part_payment_lessens_the_debt_from_its_day_on():
    paid = [PaidPart(DUE + timedelta(days=11), D(600))]
    first, second = late("1000.00", 50, paid)
    assert (first.days, first.base, second.days, second.base) == (10, D(1000), 40, D(400))
    assert interest_total((first, second)) == D("6.05")  # 8.5 % x (1000 x 10 + 400 x 40) / 365 = 6.0548


def test_what_was_paid_before_it_was_due_bears_none():
    assert total("1000.00", 365, [PaidPart(DUE - timedelta(days=5), D(900))]) == D("8.50")


def test_a_debt_that_is_paid_bears_none_from_then_on():
    paid = [PaidPart(DUE + timedelta(days=2), D(1000))]
    assert [stretch.days for stretch in late("1000.00", 50, paid)] == [1]


def test_the_rate_of_a_half_year_is_that_of_the_day_before_it():
    terms = InterestTerms(D(8), 365, RateRule.LAST_HALF, TWO_RATES)
    first, second = late("1000.00", 30, terms=terms, due=date(2026, 6, 15))
    assert (first.days, first.percent, second.days, second.percent) == (15, D(12), 15, D(11))
    assert second.first == date(2026, 7, 1)


def test_a_rate_that_changes_in_june_counts_at_once_only_where_each_day_has_its_own():
    terms = InterestTerms(D(8), 365, RateRule.EACH_DAY, TWO_RATES)
    parts = late("1000.00", 30, terms=terms, due=date(2026, 5, 31))
    assert [(part.days, part.percent) for part in parts] == [(9, D(12)), (21, D(11))]


@pytest.mark.parametrize(
    ("rule", "day", "percent"),
    [
        (RateRule.LAST_HALF, date(2026, 6, 30), 4),
        (RateRule.LAST_HALF, date(2026, 7, 1), 3),
        (RateRule.FIRST_OF_HALF, date(2026, 7, 1), 3),
        (RateRule.FIRST_OF_HALF, date(2026, 6, 30), 4),
        (RateRule.AT_THE_START, date(2027, 1, 10), 4),
        (RateRule.EACH_DAY, date(2026, 6, 10), 3),
    ],
)
def test_which_days_rate_holds_is_a_rule_of_the_business(rule, day, percent):
    rates = (*TWO_RATES, RateFrom(date(2025, 1, 1), D(4)))
    assert reference_rate(day, date(2026, 5, 1), InterestTerms(D(8), 365, rule, rates)) == percent


def test_first_of_half_reads_the_rate_on_the_first_day_itself():
    rates = (RateFrom(date(2020, 1, 1), D(1)), RateFrom(date(2026, 7, 1), D(2)))
    of = {
        rule: reference_rate(date(2026, 7, 1), DUE, InterestTerms(D(8), 365, rule, rates))
        for rule in RateRule
    }
    assert (of[RateRule.FIRST_OF_HALF], of[RateRule.LAST_HALF]) == (2, 1)


def test_a_rate_that_is_missing_is_named():
    with pytest.raises(NoReferenceRate, match="31 December 2025"):
        late("1000.00", 5, terms=InterestTerms(D(8)))


def test_each_rule_has_words_of_its_own():
    assert len({rule.label for rule in RateRule}) == len(RateRule)


@given(
    amount=st.decimals(1, 50_000, places=2),
    days=st.integers(0, 900),
    paid=st.lists(st.tuples(st.integers(-20, 900), st.decimals("0.01", 500, places=2)), max_size=4),
    rule=st.sampled_from(RateRule),
)
def test_the_interest_is_that_of_every_single_day(amount, days, paid, rule):
    """Reckoned again day by day, without stretches."""
    terms = InterestTerms(D("8.25"), 365, rule, (RateFrom(date(2025, 1, 1), D(5)), *TWO_RATES))
    parts = [PaidPart(DUE + timedelta(days=after), part) for after, part in paid]
    by_day = D(0)
    for number in range(1, days + 1):
        day = DUE + timedelta(days=number)
        left = max(D(0), amount - sum((part.amount for part in parts if part.on <= day), D(0)))
        by_day += left * (reference_rate(day, DUE + timedelta(days=1), terms) + terms.margin)
    exact = sum((stretch.interest for stretch in late(amount, days, parts, terms)), D(0))
    assert abs(exact - by_day / 36500) < D("1e-15")
