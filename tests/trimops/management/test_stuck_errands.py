from datetime import UTC, datetime
from io import StringIO

import pytest
from django.core.management import call_command

from tests.factories import make_business
from tests.trimops.errands.errand_hands import now_of, set_work, written


def said(*words):
    out = StringIO()
    call_command("stuck_errands", *words, stdout=out)
    return out.getvalue().splitlines()


@pytest.mark.django_db(transaction=True)
def test_the_operator_sees_what_got_stuck_in_all_businesses_and_has_it_tried_again(monkeypatch):
    calls = set_work(monkeypatch, lambda time: None)
    at = datetime(2026, 7, 1, 9, tzinfo=UTC)
    first = written(state="stuck", tries=8, ended_at=at, ids={"visit_id": 7}, last_words="ValueError: no")
    second = written(make_business("Elm & Oak"), state="stuck", tries=1, ended_at=at)
    written(state="waiting")
    lines = said()
    assert lines[-1] == "2 stuck"
    assert lines[0] == (
        f"{first.pk} business {first.business_id} invoicing.draft_invoice {{'visit_id': 7}} "
        "2026-07-01 09:00Z, 8 tries: ValueError: no"
    )
    assert calls == []
    assert said("--again")[-1] == "2 are tried again"
    assert [now_of(errand).state for errand in (first, second)] == ["done", "done"]
    assert said() == ["0 stuck"]
