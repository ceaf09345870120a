"""Issued and sent, or neither."""

import pytest

from invoicing.models import FarmTerms, NumberSeries, Sending
from invoicing.services.issue_and_send import issue_and_send
from invoicing.services.queue_sending import NoAddress
from tests.factories import NOON
from tests.invoicing.drafts import plain_draft


def test_one_press_issues_and_queues_a_mail_for_each_address(house):
    to = ["farm@example.invalid", "books@example.invalid"]
    FarmTerms.objects.create(business=house.business, farm=house.farm, send_to=to)
    issued = issue_and_send(invoice=plain_draft(house), at=NOON, by=house.office)
    assert issued.is_issued
    rows = Sending.objects.within(house.scope).filter(invoice=issued)
    assert sorted(rows.values_list("outgoing__address", flat=True)) == sorted(to)


def test_where_it_cannot_be_sent_it_is_not_issued_and_no_number_is_taken(house):
    draft = plain_draft(house)
    with pytest.raises(NoAddress):
        issue_and_send(invoice=draft, at=NOON, by=house.office)
    draft.refresh_from_db()
    assert not draft.is_issued
    assert not NumberSeries.objects.within(house.scope).exists()
