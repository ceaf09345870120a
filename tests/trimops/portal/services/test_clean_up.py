from datetime import UTC, datetime, timedelta

import pytest
from django.contrib.sessions.models import Session
from django.utils import timezone

from farms.models import HerdImport
from farms.services.keep_herd_list import keep_herd_list
from tests.factories import blocked_foot, finish, make_business, make_house, photo_of, put_down, under_way
from tests.trimops.audit.old_trail import make_old
from tests.trimops.errands.errand_hands import all_errands, written
from trimops.api.models import RepeatableCall
from trimops.audit.models import AuditCut
from trimops.portal.services import clean_up as cleaning
from trimops.portal.services.clean_up import clean_up
from trimops.portal.services.save_retention import save_retention
from visits.models import TrimPhoto

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


@pytest.mark.django_db
def test_each_kind_goes_when_the_owner_says_and_not_before():
    house = make_house()
    photo = photo_of(put_down(under_way(house.farm, house.van), house.cow, blocked_foot()))
    list_of = {"farm": house.farm, "file_name": "herd.csv", "content": b"Number\n7\n", "by": house.office}
    keep_herd_list(**list_of, at=photo.taken_at)
    months_later = photo.taken_at + timedelta(days=13 * 31)
    clean_up(scope=house.scope, at=months_later)
    assert not HerdImport.objects.within(house.scope).exists(), "twelve months is usual"
    assert TrimPhoto.objects.within(house.scope).exists(), "five years are usual"
    save_retention(business=house.business, periods={"photos_months": 12}, at=NOW, by=house.owner)
    clean_up(scope=house.scope, at=months_later)
    assert not TrimPhoto.objects.within(house.scope).exists()


@pytest.mark.django_db
def test_answers_to_calls_that_nobody_repeats_any_more_go():
    house = make_house()
    for days in (8, 1):
        RepeatableCall.objects.create(
            business=house.business,
            user=house.owner,
            key=str(days),
            fingerprint="x",
            called_at=NOW - timedelta(days=days),
        )
    clean_up(scope=house.scope, at=NOW)
    assert RepeatableCall.objects.within(house.scope).get().key == "1"


@pytest.mark.django_db
def test_the_trail_and_what_phones_wrote_go_by_their_own_periods(settings, tmp_path):
    settings.DATA_DIR = tmp_path
    house = make_house()
    old = make_old(house, 8)
    clean_up(scope=house.scope, at=timezone.now())
    assert not AuditCut.objects.within(house.scope).exists(), "ten years are usual"
    save_retention(
        business=house.business, periods={"books_years": 3, "trail_years": 5}, at=NOW, by=house.owner
    )
    clean_up(scope=house.scope, at=timezone.now())
    assert AuditCut.objects.within(house.scope).get().entries == old


@pytest.mark.django_db
def test_a_visit_of_long_ago_takes_nothing_more_from_phones():
    house = make_house()
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())
    over = finish(visit, house.trimmer)
    for years, is_closed in ((2, False), (4, True)):
        clean_up(scope=house.scope, at=over.finished_at + timedelta(days=years * 366))
        over.refresh_from_db()
        assert (over.versions_dropped_at is not None) is is_closed
