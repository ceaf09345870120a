from datetime import UTC, datetime, timedelta

import pytest
from django.contrib.sessions.models import Session

from tests.factories import make_business
from tests.trimops.errands.errand_hands import all_errands, written
from trimops.portal.services import clean_up as cleaning
from trimops.portal.services.clean_up import clean_up

NOW = datetime(2026, 7, 1, 2, tzinfo=UTC)


@pytest.mark.django_db
def test_sign_ins_that_ran_out_go_and_those_in_use_stay(monkeypatch):
    monkeypatch.setattr(cleaning, "AT_ONCE", 2)
    for number in range(5):
        Session.objects.create(
            session_key=f"old{number}", session_data="", expire_date=NOW - timedelta(hours=1)
        )
    Session.objects.create(session_key="used", session_data="", expire_date=NOW + timedelta(hours=1))
    errand = written(make_business(), state="done", ended_at=NOW - timedelta(days=30))
    clean_up(scope=errand.scope, at=NOW)
    assert list(Session.objects.values_list("session_key", flat=True)) == ["used"]
    assert all_errands() == []


@pytest.mark.django_db
def test_a_second_time_there_is_nothing_to_do():
    business = make_business()
    for _ in range(2):
        clean_up(scope=written(business).scope, at=NOW)
    assert len(all_errands()) == 2
