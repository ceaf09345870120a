"""What was open at the end of a day: told anew for every day by adding up, and compared."""

from datetime import date, timedelta
from decimal import Decimal as D

from django.utils import timezone

from invoicing.selectors.open_on import open_on
from invoicing.services.settle_invoice import settle_invoice
from tests.factories import make_house
from tests.invoicing.booked import ISSUED_ON, booked, line, written_off


def off(invoice, amount, on, house):
    row = written_off(invoice, amount, on, house.office)
    settle_invoice(invoice=invoice)
    return row


def test_each_day_knows_only_what_was_done_by_then(house):
    first = booked(house.farm, line("100", "0", "Z"))
    second = booked(house.farm, line("50", "0", "Z"), on=ISSUED_ON + timedelta(days=3))
    done = {5: off(first, "40", ISSUED_ON + timedelta(days=5), house)}
    done[9] = off(first, "60", ISSUED_ON + timedelta(days=9), house)
    for day in range(-1, 12):
        paid = sum((row.amount for after, row in done.items() if after <= day), D(0))
        expected = {first.number: D(100) - paid} if day >= 0 else {}
        expected |= {second.number: D(50)} if day >= 3 else {}
        found = open_on(house.scope, ISSUED_ON + timedelta(days=day))
        assert {row.number: row.still_open for row in found} == {k: v for k, v in expected.items() if v}


def test_what_was_undone_counts_as_never_done(house):
    first = booked(house.farm, line("100", "0", "Z"))
    row = off(first, "100", ISSUED_ON, house)
    row.undone_at, row.undone_because = timezone.now(), "A slip"
    row.save()
    settle_invoice(invoice=first)
    assert [open_row.still_open for open_row in open_on(house.scope, ISSUED_ON)] == [100]


def test_lateness_is_that_of_the_day_and_a_credit_note_is_never_late(house):
    first = booked(house.farm, line("100", "0", "Z"))
    booked(house.farm, line("30", "0", "Z"), corrects=first)
    rows = open_on(house.scope, ISSUED_ON + timedelta(days=54))
    assert {(row.still_open, row.days_late) for row in rows} == {(D(100), 40), (D(-30), 0)}
    assert open_on(make_house("Elsewhere Trimming").scope, date(2030, 1, 1)) == []
