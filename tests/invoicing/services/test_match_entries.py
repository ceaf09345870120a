from decimal import Decimal

from invoicing.services.match_entries import Accepted, match_entries
from tests.factories import NOON
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.test_match_entry import booking


def test_what_holds_is_booked_and_what_does_not_is_told(house):
    bill = issued(house.farm, "100")
    entries = [booking(house), booking(house), booking(house, "40")]
    shares = [{bill.pk: Decimal(100)}, {bill.pk: Decimal(100)}, {}]
    accepted = [Accepted(entry, house.farm, share) for entry, share in zip(entries, shares, strict=True)]
    booked, refused = match_entries(accepted=accepted, at=NOON, by=house.office)
    assert [payment.bank_entry for payment in booked] == [entries[0], entries[2]]
    assert [entry for entry, _ in refused] == [entries[1]]
    assert "only 0.00 is open" in refused[0][1]
