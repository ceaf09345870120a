from datetime import date
from decimal import Decimal

from invoicing.domain.match_facts import OpenBill, OpenBook


def test_the_book_finds_bills_by_what_a_booking_may_say():
    early = OpenBill(1, "INV-2026-0001", "", "farm:1", 1, Decimal(5), date(2026, 1, 1))
    late = OpenBill(2, "INV-2026-0002", "RF1", "farm:1", 1, Decimal(5), date(2026, 1, 1), date(2026, 2, 1))
    book = OpenBook((late, early), {"farm:1": ("Quellenried Hof",)}, {})
    assert book.by_group["farm:1"] == [early, late]
    assert book.by_amount[Decimal(5)] == [late, early]
    assert book.by_reference == {"RF1": late}
    assert book.by_digits["0002"] == [late]
    assert book.by_word["quellenried"] == [("farm:1", frozenset({"quellenried"}))]
    assert book.by_key[1] is early
