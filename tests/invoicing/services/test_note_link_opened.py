from datetime import timedelta

from invoicing.services.close_invoice_link import close_invoice_link
from invoicing.services.make_invoice_link import make_invoice_link
from invoicing.services.note_link_opened import note_link_opened
from tests.factories import NOON
from tests.invoicing.issued_row import issued_row


def test_who_looks_and_takes_the_paper_opened_it_once(house):
    link = make_invoice_link(invoice=issued_row(house), at=NOON).row
    later = [NOON, NOON + timedelta(minutes=5), NOON + timedelta(minutes=10)]
    assert [note_link_opened(link=link, at=at) for at in later] == [True, False, True]
    link.refresh_from_db()
    assert link.opened_at == later[-1]


def test_a_link_that_is_over_is_not_opened(house):
    link = make_invoice_link(invoice=issued_row(house), at=NOON).row
    assert not note_link_opened(link=link, at=link.expires_at)
    close_invoice_link(link=link, at=NOON)
    assert not note_link_opened(link=link, at=NOON)
