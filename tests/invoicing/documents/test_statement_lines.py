from dataclasses import replace
from decimal import Decimal

from invoicing.documents.statement_content import StatementLine
from invoicing.documents.statement_lines import account_table, ageing_part
from invoicing.documents.statement_pdf import statement_pdf
from tests.invoicing.documents.paper_pictures import page_texts
from tests.invoicing.documents.test_statement_pdf import CONTENT

ZERO = Decimal(0)


def test_the_balance_is_carried_over_a_page():
    lines, balance = [], CONTENT.opening
    for number in range(50):
        balance += 7
        lines.append(StatementLine(CONTENT.first, "Invoice", f"INV-{number}", Decimal(7), ZERO, balance))
    first, second = page_texts(statement_pdf(replace(CONTENT, lines=tuple(lines), closing=balance)))
    carried = f"{120 + 7 * first.count('Invoice INV-')}.00"
    assert f"Carried over {carried}" in first
    assert f"Brought forward {carried}" in second
    assert f"30 Nov 2026 Balance {balance}" in second


def test_there_is_a_row_for_each_line_and_both_balances():
    assert len(account_table(CONTENT).rows) == len(CONTENT.lines) + 2
    assert len(account_table(replace(CONTENT, lines=())).rows) == 2


def test_what_is_open_is_told_by_its_age(text_of):
    text = text_of(statement_pdf(CONTENT))
    assert "How long it has been due, on 30 Nov 2026 Not yet due GBP 1 to 30 days GBP" in text
    assert "12.05 10.00 0.00 0.00 0.00 −3.50" in text


def test_without_ages_or_unused_money_they_are_not_told(text_of):
    assert ageing_part(replace(CONTENT, ageing=None)) == []
    assert CONTENT.ageing
    used = replace(CONTENT, ageing=replace(CONTENT.ageing, unused=ZERO))
    assert "not yet used" not in text_of(statement_pdf(used))
