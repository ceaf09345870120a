from datetime import date
from decimal import Decimal

from invoicing.domain.account_lines import AccountMove, AccountWhat, FarmAccount, running_lines

DAY = date(2026, 3, 2)


def move(what, amount, day=DAY, key=1):
    return AccountMove(day, what, Decimal(amount), "INV-1", key)


def test_the_balance_runs_by_day_and_an_invoice_comes_before_its_payment():
    moves = [
        move(AccountWhat.PAYMENT, -60),
        move(AccountWhat.INVOICE, 100),
        move(AccountWhat.WRITE_OFF, -5, date(2026, 3, 1)),
    ]
    lines = running_lines(Decimal(10), moves)
    assert [line.balance for line in lines] == [5, 105, 45]
    assert [line.debit - line.credit for line in lines] == [-5, 100, -60]
    account = FarmAccount(DAY, DAY, "GBP", Decimal(10), lines)
    assert (account.closing, account.debits, account.credits) == (45, 100, 65)
    assert account.opening + account.debits - account.credits == account.closing


def test_an_account_without_moves_stays_as_it_was():
    assert FarmAccount(DAY, DAY, "GBP", Decimal(10), ()).closing == 10


def test_each_move_has_words_of_its_own():
    assert len({what.label for what in AccountWhat}) == len(AccountWhat)
