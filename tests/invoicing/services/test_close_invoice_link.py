from datetime import timedelta

from invoicing.services.close_invoice_link import close_invoice_link
from invoicing.services.make_invoice_link import make_invoice_link
from tests.factories import NOON
from tests.invoicing.issued_row import issued_row


def test_a_closed_link_is_over_and_closing_it_again_changes_nothing(house):
    link = make_invoice_link(invoice=issued_row(house), at=NOON).row
    assert link.is_alive(NOON)
    closed = close_invoice_link(link=link, at=NOON)
    assert not closed.is_alive(NOON)
    assert close_invoice_link(link=link, at=NOON + timedelta(hours=1)).closed_at == NOON
