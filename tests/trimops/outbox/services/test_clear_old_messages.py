from datetime import UTC, datetime, timedelta

import pytest

from tests.factories import make_business
from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import Outgoing, OutgoingEvent, OutgoingPart
from trimops.outbox.senders.ready import Part
from trimops.outbox.services import clear_old_messages as clearing
from trimops.outbox.services.clear_old_messages import clear_old_messages
from trimops.outbox.services.put_out import Message, put_out

NOW = datetime(2027, 7, 1, 2, tzinfo=UTC)


def message(business, state, days):
    at = NOW - timedelta(days=days)
    words = Message(
        Channel.MAIL, Topic.INVOICE, "farm@low-croft.example", "All that was done.", subject="Invoice",
        parts=[Part("invoice.pdf", "application/pdf", b"%PDF")],
    )  # fmt: skip
    row = put_out(business_id=business.pk, message=words, at=at)
    Outgoing.objects.within(row.scope).filter(pk=row.pk).update(
        state=state, went_at=at if state == "went" else None
    )
    return row


def counted(model, business):
    return model.objects.within(Scope(business.pk)).count()


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("state", "days", "has_words", "stays"),
    [
        ("went", 29, True, True),
        ("went", 31, False, True),
        ("went", 399, False, True),
        ("went", 401, False, False),
        # May be sent again by a person: kept whole until the row goes.
        ("failed", 100, True, True),
        ("left", 401, False, False),
        # Not over: whoever looks must find it.
        ("waiting", 900, True, True),
        ("going", 900, True, True),
    ],
)
def test_words_go_after_a_month_and_rows_after_a_year_and_a_month(state, days, has_words, stays):
    business = make_business()
    message(business, state, days)
    clear_old_messages(scope=Scope(business.pk), at=NOW)
    rows = list(Outgoing.objects.within(Scope(business.pk)))
    assert len(rows) == int(stays)
    assert all(bool(row.body) == has_words for row in rows)
    assert counted(OutgoingPart, business) == int(has_words and stays)
    assert bool(counted(OutgoingEvent, business)) == stays


@pytest.mark.django_db
def test_many_go_a_few_at_a_time_and_others_keep_theirs(monkeypatch):
    monkeypatch.setattr(clearing, "AT_ONCE", 2)
    business, other = make_business(), make_business("Elm & Oak")
    for days in (40, 41, 42, 500, 501):
        message(business, "went", days)
    message(other, "went", 500)
    assert clear_old_messages(scope=Scope(business.pk), at=NOW) == (5, 2)
    assert (counted(Outgoing, business), counted(Outgoing, other)) == (3, 1)
