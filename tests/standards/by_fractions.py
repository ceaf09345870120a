"""Random invoices worked out a second time, in whole minor units with fractions, independently of the product."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal as D
from fractions import Fraction
from random import Random

from invoicing.domain.amounts import AmountLine, InvoiceAmounts, RoundingRule, WholeAmount, invoice_amounts

TOTALS = ("line_sum", "allowances", "charges", "net", "tax", "gross", "prepaid", "rounding", "payable")


def all_agree(count: int, seed: int) -> int:
    """How many of `count` random invoices came out alike both ways: all, or it raises with the first that did not."""
    for done, one in zip(range(count), drawn(seed), strict=False):
        lines, whole, digits, rule, prepaid, rounding = one
        ours = invoice_amounts(lines, whole, digits, rule, prepaid=prepaid, rounding=rounding)
        assert in_units(ours, digits) == by_fractions(*one), (done, one)
    return count


def all_cancel(count: int, seed: int) -> int:
    """How many of `count` random invoices are nought together with a credit note of everything (every sign turned)."""
    for done, one in zip(range(count), drawn(seed), strict=False):
        lines, whole, digits, rule, prepaid, rounding = one
        invoice = invoice_amounts(lines, whole, digits, rule, prepaid=prepaid, rounding=rounding)
        turned = [replace(line, quantity=-line.quantity, allowance=-line.allowance) for line in lines]
        back = [replace(part, amount=-part.amount) for part in whole]
        credit = invoice_amounts(turned, back, digits, rule, prepaid=-prepaid, rounding=-rounding)
        assert all(getattr(invoice, name) + getattr(credit, name) == 0 for name in TOTALS), (done, one)
        for share, other in zip(invoice.tax_shares, credit.tax_shares, strict=True):
            assert (share.taxable + other.taxable, share.tax + other.tax) == (0, 0), (done, one)
    return count


def drawn(seed: int) -> Iterator[tuple]:
    """(lines, whole, digits, rule, prepaid, rounding) without end."""
    rng = Random(seed)
    while True:
        yield draw(rng)


def draw(rng: Random):
    digits = rng.choice((0, 2, 2, 2, 3, 4))
    rates = [(category, D(rate)) for category, rate in rng.sample(RATES, rng.randint(1, 4))]
    lines = [_line(rng, *rng.choice(rates)) for _ in range(rng.choice((0, 1, 1, 2, 3, 6, 12)))]
    whole = [
        WholeAmount(rng.random() < 0.5, _number(rng, 60000, 4), *rng.choice(rates))
        for _ in range(rng.choice((0, 0, 1, 3)))
    ]
    prepaid, rounding = rng.choice((D(0), _number(rng, 10**7, 4))), rng.choice((D(0), _number(rng, 99, 2)))
    return lines, whole, digits, rng.choice(tuple(RoundingRule)), prepaid, rounding


RATES = (
    ("S", "20"),
    ("S", "5"),
    ("S", "13.5"),
    ("S", "2.1"),
    ("S", "25"),
    ("Z", "0"),
    ("E", "0"),
    ("AE", "0"),
)


def _line(rng, category, rate):
    sign = rng.choice((1, 1, 1, 1, -1))
    half_cents = rng.random() < 0.3  # the edge where rounding ways part
    price = (
        D(rng.randrange(5, 1000, 10)).scaleb(-3) if half_cents else _number(rng, 10**6, rng.choice((0, 2, 4)))
    )
    quantity = D(1) if half_cents else _number(rng, 10**5, rng.choice((0, 2, 4)))
    return AmountLine(
        sign * quantity, price, category, rate, rng.choice((D(0), D(0), sign * _number(rng, 999, 3)))
    )


def _number(rng, most, decimals):
    return D(rng.randint(0, most)).scaleb(-decimals)


def in_units(amounts: InvoiceAmounts, digits):
    def units(amount):
        whole = Fraction(amount) * 10**digits
        assert whole.denominator == 1, "finer than the currency"
        assert not (amount == 0 and amount.is_signed()), "minus nought"
        return int(whole)

    return {
        "nets": [units(net) for net in amounts.line_nets],
        "tax": {
            (share.category, share.percent): (units(share.taxable), units(share.tax))
            for share in amounts.tax_shares
        },
        "totals": [units(getattr(amounts, name)) for name in TOTALS],
    }


def _half_up(number: Fraction) -> int:
    """Half away from nought, without Decimal: add a half and cut."""
    cut = (2 * abs(number.numerator) + number.denominator) // (2 * number.denominator)
    return cut if number >= 0 else -cut


def by_fractions(lines, whole, digits, rule, prepaid, rounding):
    """All in whole minor units."""
    one = 10**digits
    nets = [
        _half_up(
            Fraction(line.quantity) * Fraction(line.unit_price) * one
            - _half_up(Fraction(line.allowance) * one)
        )
        for line in lines
    ]
    parts = [(line.tax_category, line.tax_percent, net) for line, net in zip(lines, nets, strict=True)]
    sums = {True: 0, False: 0}
    for part in whole:
        units = _half_up(Fraction(part.amount) * one)
        sums[part.is_charge] += units
        parts.append((part.tax_category, part.tax_percent, units if part.is_charge else -units))
    pots = defaultdict(list)
    for category, percent, units in parts:
        pots[category, percent].append(units)
    taxes = _taxes(pots, rule)
    net, tax = sum(nets) - sums[False] + sums[True], sum(taxes.values())
    paid, added = _half_up(Fraction(prepaid) * one), _half_up(Fraction(rounding) * one)
    return {
        "nets": nets,
        "tax": {key: (sum(pot), taxes[key]) for key, pot in pots.items()},
        "totals": [
            sum(nets),
            sums[False],
            sums[True],
            net,
            tax,
            net + tax,
            paid,
            added,
            net + tax - paid + added,
        ],
    }


def _taxes(pots, rule):
    exact = {key: Fraction(key[1]) / 100 * sum(pot) for key, pot in pots.items()}
    if rule is RoundingRule.PER_RATE:
        return {key: _half_up(amount) for key, amount in exact.items()}
    if rule is RoundingRule.PER_LINE:
        return {
            key: sum(_half_up(Fraction(key[1]) / 100 * units) for units in pot) for key, pot in pots.items()
        }
    total = sum(exact.values())
    goal = _half_up(total) if rule is RoundingRule.TOTAL else int(total)  # int() cuts towards nought
    return _handed_out({key: int(amount) for key, amount in exact.items()}, exact, goal)


def _handed_out(shares, exact, goal):
    """One unit at a time to the rate that lacks most, till the goal is met."""
    shares, had = dict(shares), set()
    while (short := goal - sum(shares.values())) != 0:
        way = 1 if short > 0 else -1
        free = [key for key in exact if key not in had]
        key = min(free, key=lambda one: (-(exact[one] - shares[one]) * way, one))
        shares[key] += way
        had.add(key)
    return shares
