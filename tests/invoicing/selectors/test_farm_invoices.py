from datetime import date
from decimal import Decimal

from invoicing.selectors.farm_invoices import farm_invoice, papers_of_farm, to_pay
from tests.factories import make_house
from tests.invoicing.issued_row import issued_row
from trimops.kernel.scope import Scope

DUE, LATE = date(2026, 4, 1), date(2026, 4, 2)


def test_what_is_to_pay_is_what_is_open_less_what_was_credited(house):
    first = issued_row(house, gross="120", settled=Decimal(20))
    issued_row(house, "INV-2026-0002", gross="60", due_on=date(2026, 5, 1))
    issued_row(house, "INV-2026-0003", gross="500", settled=Decimal(500), is_open=False)
    issued_row(house, "CN-2026-0001", gross="30", kind="credit_note", corrects=first, reason="Too many")
    issued_row(make_house("Far Side"), "INV-2026-0001", gross="999")
    (sum_,) = to_pay(house.scope, LATE)
    assert (sum_.currency, sum_.bills, sum_.credit, sum_.overdue, sum_.left) == ("GBP", 160, 30, 100, 130)
    assert to_pay(house.scope, DUE)[0].overdue == 0


def test_each_currency_stands_by_itself(house):
    issued_row(house)
    issued_row(house, "INV-2026-0002", currency="EUR", gross="60")
    assert [(each.currency, each.left) for each in to_pay(house.scope, DUE)] == [("EUR", 60), ("GBP", 120)]


def test_of_what_is_paid_too_much_nothing_is_left(house):
    paper = farm_invoice(issued_row(house, settled=Decimal(130), is_open=False), LATE)
    assert (paper.left, paper.state) == (0, "paid")


def test_a_farm_sees_its_own_papers_without_their_bytes(house, django_assert_num_queries):
    mine = issued_row(house)
    with django_assert_num_queries(1) as asked:
        (row,) = papers_of_farm(Scope(house.business.pk, house.farm.pk))
        assert (row, bool(row.papers.ubl_sha256)) == (mine, True)
    assert '"pdf"' not in asked.captured_queries[0]["sql"]
    assert not papers_of_farm(Scope(house.business.pk, house.farm.pk + 1))
