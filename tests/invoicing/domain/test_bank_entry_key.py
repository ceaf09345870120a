from dataclasses import replace
from datetime import date
from decimal import Decimal

from invoicing.domain.bank_entry_key import keys_of, without_copies
from invoicing.domain.bank_file import BankLine, ReadStatement
from invoicing.domain.camt053 import read_camt053
from tests.invoicing.domain.test_camt053 import NEW, OLD

LINE = BankLine(date(2026, 3, 2), Decimal("15.00"), "EUR", "A", "", "", "A gift")


def statement(*lines, opening=None, closing=None, account="X"):
    return ReadStatement("", account, "EUR", lines, opening, closing)


def test_statements_that_overlap_give_the_same_keys_for_the_same_bookings():
    _, tuesday = keys_of(read_camt053(OLD))
    (week,) = keys_of(read_camt053(NEW))
    assert set(tuesday) <= set(week)
    assert len(set(week)) == len(week) == 6


def test_equal_bookings_are_told_apart_by_their_place():
    ((first, second),) = keys_of([statement(LINE, LINE)])
    assert first != second


def test_statements_that_join_are_counted_on_and_others_anew():
    joined = keys_of([statement(LINE, opening=0, closing=15), statement(LINE, opening=15, closing=30)])
    assert joined[0] != joined[1]
    anew = keys_of([statement(LINE, opening=0, closing=15), statement(LINE, opening=3, closing=18)])
    assert anew[0] == anew[1]


def test_what_makes_two_bookings_different():
    changes = [
        {"booked_on": date(2026, 3, 3)},
        {"amount": Decimal(-15)},
        {"currency": "GBP"},
        {"party_name": "B"},
        {"text": "Another"},
        {"reference": "RF73INV20260042"},
        {"bank_reference": "77"},
    ]
    lines = [LINE, *(replace(LINE, **change) for change in changes)]
    keys = {keys_of([statement(line)])[0][0] for line in lines}
    keys.add(keys_of([statement(LINE, account="Y")])[0][0])
    assert len(keys) == len(lines) + 1


def test_the_banks_own_reference_outweighs_words_and_one_that_says_nothing_does_not():
    named = replace(LINE, bank_reference="77")
    assert keys_of([statement(named)]) == keys_of([statement(replace(named, text="Told otherwise"))])
    nothing = replace(LINE, bank_reference="NONREF")
    assert keys_of([statement(nothing)]) != keys_of([statement(replace(nothing, text="Other"))])
    assert keys_of([statement(LINE)]) == keys_of([statement(replace(LINE, amount=Decimal("15.0")))])


def test_copies_count_once():
    assert len(without_copies([statement(LINE), statement(LINE), statement(LINE, LINE)])) == 2
