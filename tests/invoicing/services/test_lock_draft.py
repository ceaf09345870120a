"""Only a draft is opened for a change."""

import pytest
from django.db import transaction

from invoicing.services.lock_draft import NotADraft, lock_draft, locked_draft
from tests.invoicing.drafts import plain_draft
from tests.invoicing.issued_papers import issued


def test_a_draft_is_read_anew(house):
    draft = plain_draft(house)
    draft.note = "never kept"
    with transaction.atomic():
        assert locked_draft(invoice=draft).note == ""


def test_what_was_issued_or_is_gone_is_no_draft(house):
    paper, gone = issued(house.farm, "10.00"), plain_draft(house)
    type(gone).objects.within(house.scope).filter(pk=gone.pk).delete()
    for row in (paper, gone):
        with transaction.atomic():
            assert lock_draft(invoice=row) is None
        with pytest.raises(NotADraft), transaction.atomic():
            locked_draft(invoice=row)
