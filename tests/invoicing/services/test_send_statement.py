import pytest

from invoicing.models import FarmTerms
from invoicing.services.queue_sending import NoAddress
from invoicing.services.send_statement import send_statement
from tests.factories import MONDAY, NOON
from tests.invoicing.issued_papers import ISSUED_ON, issued
from trimops.outbox.models import OutgoingPart


def send(house):
    return send_statement(farm=house.farm, first=ISSUED_ON, last=MONDAY, at=NOON, by=house.office)


def test_one_mail_to_each_money_address(house):
    addresses = ["a@example.invalid", "b@example.invalid"]
    FarmTerms.objects.create(business=house.business, farm=house.farm, send_to=addresses)
    issued(house.farm, "60")
    sent = send(house)
    assert [row.outgoing.address for row in sent] == addresses
    first = sent[0].outgoing
    (part,) = OutgoingPart.objects.within(house.scope).filter(outgoing=first)
    assert bytes(part.content).startswith(b"%PDF")
    assert part.name == f"statement-{ISSUED_ON:%Y%m%d}-{MONDAY:%Y%m%d}.pdf"
    assert "To pay on that day: 60.00 GBP" in first.body
    assert "Low Croft, 2 Feb 2026 to 2 Mar 2026" in first.subject


def test_without_an_address_it_says_so(house):
    with pytest.raises(NoAddress):
        send(house)
