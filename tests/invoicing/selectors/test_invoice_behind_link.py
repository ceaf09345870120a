from decimal import Decimal

from invoicing.selectors.invoice_behind_link import (
    invoice_behind_link,
    invoice_link_of,
    ways_to_pay,
)
from invoicing.services.close_invoice_link import close_invoice_link
from invoicing.services.make_invoice_link import make_invoice_link
from tests.factories import NOON
from tests.invoicing.issued_row import TODAY, issued_row


def secret_of(made):
    return made.address.rstrip("/").rpartition("/")[2]


def test_the_secret_opens_its_invoice_and_another_opens_nothing(house):
    made = make_invoice_link(invoice=issued_row(house), at=NOON)
    assert invoice_link_of(secret_of(made), NOON) == made.row
    assert invoice_link_of(secret_of(made)[::-1], NOON) is None
    assert invoice_link_of("", NOON) is None


def test_an_ended_a_closed_and_an_erased_farms_link_open_nothing(house):
    invoice = issued_row(house)
    ended, closed = (make_invoice_link(invoice=invoice, at=NOON) for _ in range(2))
    close_invoice_link(link=closed.row, at=NOON)
    assert invoice_link_of(secret_of(ended), ended.row.expires_at) is None
    assert invoice_link_of(secret_of(closed), NOON) is None
    house.farm.erased_at = NOON
    house.farm.save()
    assert invoice_link_of(secret_of(ended), NOON) is None


def test_a_farm_that_is_served_no_more_still_pays(house):
    made = make_invoice_link(invoice=issued_row(house), at=NOON)
    house.farm.is_active = False
    house.farm.save()
    assert invoice_link_of(secret_of(made), NOON) is not None


def test_it_shows_the_paper_and_what_was_credited_on_it(house, django_assert_num_queries):
    invoice = issued_row(house, settled=Decimal(20))
    note = issued_row(house, "CN-2026-0001", gross="12", kind="credit_note", corrects=invoice, reason="Less")
    issued_row(house, "INV-2026-0002")
    made = make_invoice_link(invoice=invoice, at=NOON)
    link = invoice_link_of(secret_of(made), NOON)
    with django_assert_num_queries(2):
        behind = invoice_behind_link(link, TODAY)
    assert (behind.paper.left, behind.paper.state) == (100, "part")
    assert [line.description for line in behind.lines] == ["Functional trim"]
    assert list(behind.credit_notes) == [note]
    assert invoice_behind_link(make_invoice_link(invoice=note, at=NOON).row, TODAY).ways == ()


def test_the_way_to_pay_is_the_one_that_was_printed(house):
    invoice = issued_row(house)
    invoice.payment["details"] = "Sort code: 00-00-00\nAt the farm gate\n\n"
    assert ways_to_pay(invoice) == (
        ("Account of", house.business.name),
        ("IBAN", "GB33 BUKB 2020 1555 5555 55"),
        ("Sort code", "00-00-00"),
        ("Pay to", "At the farm gate"),
        ("Reference", "RF18539007547034"),
    )
    invoice.payment, invoice.creditor_reference = {}, ""
    assert ways_to_pay(invoice) == (("Reference", "INV-2026-0001"),)
