"""A change by hand says why, and is kept."""

import pytest
from django.db import transaction

from invoicing.services.open_draft import CreditIsFixed, keep_edit, open_draft
from invoicing.services.want_reason import ReasonMissing
from tests.invoicing.drafts import plain_draft
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.billing import hand


def test_without_a_reason_it_stays_shut(house):
    with pytest.raises(ReasonMissing), transaction.atomic():
        open_draft(invoice=plain_draft(house), hand=hand(house, "  "))


def test_the_lines_of_a_credit_note_are_fixed_but_not_its_head(house):
    note = plain_draft(house, corrects=issued(house.farm, "12.00"), reason="Wrong farm")
    with pytest.raises(CreditIsFixed), transaction.atomic():
        open_draft(invoice=note, hand=hand(house))
    with transaction.atomic():
        assert open_draft(invoice=note, hand=hand(house), lines=False) == note


def test_an_edit_that_is_too_long_is_cut(house):
    edit = keep_edit(invoice=plain_draft(house), hand=hand(house, "y" * 300), what="x" * 400)
    assert (len(edit.what), len(edit.reason), edit.by) == (300, 200, house.office)
