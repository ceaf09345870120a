from django.utils import timezone

from invoicing.models import InvoiceLink, Sending
from invoicing.services.forget_sendings import forget_sendings
from invoicing.services.make_invoice_link import make_invoice_link
from tests.factories import make_farm
from tests.invoicing.issued_row import issued_row
from tests.invoicing.services.test_queue_sending import queue
from trimops.outbox.models import Outgoing, OutgoingEvent


def test_mails_their_log_and_links_of_that_farm_go_and_no_others(
    house, django_capture_on_commit_callbacks, mailoutbox
):
    other = make_farm(house.business, "High Croft", by=house.owner)
    with django_capture_on_commit_callbacks(execute=True):
        queue(house)
        for farm, number in ((house.farm, "INV-1"), (other, "INV-2")):
            make_invoice_link(invoice=issued_row(house, number, farm=farm), at=timezone.now())
        assert forget_sendings(farm=house.farm) == {"mails": 1, "links to invoices": 1}
    assert not mailoutbox
    assert not Sending.objects.within(house.scope).exists()
    assert not Outgoing.objects.within(house.scope).exists()
    assert not OutgoingEvent.objects.within(house.scope).exists()
    assert InvoiceLink.objects.within(house.scope).get().invoice.number == "INV-2"
    assert forget_sendings(farm=house.farm) == {"mails": 0, "links to invoices": 0}
