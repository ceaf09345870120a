"""What a credit note marked is let go of, and nothing else."""

from invoicing.models import BilledWork
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.let_go_of_work import let_go_of_work
from tests.factories import NOON, make_prices
from tests.invoicing.drafts import plain_draft
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.billing import worked


def test_only_marked_work_is_let_go_of(house):
    make_prices(house.business)
    draft = draft_invoice(visit=worked(house, 1), at=NOON)
    note = plain_draft(house, corrects=issued(house.farm, "12.00"), reason="Wrong farm")
    assert let_go_of_work(credit_note=note) == 0
    claims = BilledWork.objects.within(house.scope)
    marked = claims.filter(invoice=draft, line__item="block")
    marked.update(credit_line=note.lines.within(house.scope).get())
    assert let_go_of_work(credit_note=note) == 1
    assert claims.filter(holds=True).count() == 2
    assert let_go_of_work(credit_note=note) == 0, "once"
