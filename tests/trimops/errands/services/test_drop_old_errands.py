from datetime import UTC, datetime, timedelta

import pytest

from tests.factories import make_business
from tests.trimops.errands.errand_hands import all_errands, written
from trimops.errands.services import drop_old_errands as dropping
from trimops.errands.services.drop_old_errands import drop_old_errands
from trimops.kernel.scope import Scope

NOW = datetime(2026, 7, 1, 2, tzinfo=UTC)


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("state", "days", "stays"),
    [
        ("done", 13, True),
        ("done", 15, False),
        ("stuck", 15, True),
        ("stuck", 179, True),
        ("stuck", 181, False),
        ("waiting", 900, True),
        ("under_way", 900, True),
    ],
)
def test_what_is_done_goes_after_two_weeks_and_what_is_stuck_after_half_a_year(state, days, stays):
    over = NOW - timedelta(days=days)
    errand = written(state=state, due_at=over, ended_at=over if state in ("done", "stuck") else None)
    assert drop_old_errands(scope=errand.scope, at=NOW) == (0 if stays else 1)
    assert len(all_errands()) == int(stays)


@pytest.mark.django_db
def test_many_go_a_few_at_a_time_and_another_business_keeps_its_own(monkeypatch):
    monkeypatch.setattr(dropping, "AT_ONCE", 3)
    business, old = make_business(), NOW - timedelta(days=30)
    for _ in range(7):
        written(business, state="done", ended_at=old)
    written(make_business("Elm & Oak"), state="done", ended_at=old)
    assert drop_old_errands(scope=Scope(business.pk), at=NOW) == 7
    assert len(all_errands()) == 1
