"""Once a day of each business's own wall, whatever happens to clocks, machines and zones."""

import threading
from datetime import UTC, date, datetime, time, timedelta

import pytest
from django.db import connection

from tests.factories import make_business
from tests.trimops.errands.errand_hands import all_errands, set_work
from trimops.accounts.models import Business
from trimops.errands.services import begin_daily as beginning
from trimops.errands.services.begin_daily import begin_daily
from trimops.errands.services.run_errand import run_errand
from trimops.jobs import Job

EARLY = datetime(2011, 1, 1, tzinfo=UTC)
JOB = Job.KEEP_JOURNEYS


@pytest.fixture(autouse=True)
def one_daily_job(monkeypatch):
    monkeypatch.setattr(beginning, "DAILY", {JOB: time(2, 0)})


def opened(zone="Europe/London", at=EARLY):
    """A business that was opened at that moment."""
    business = make_business(f"In {zone} since {at:%d %H %M}", timezone=zone)
    Business.objects.filter(pk=business.pk).update(created_at=at)
    return business


def utc(text):
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def days():
    return [row.day for row in all_errands()]


@pytest.mark.django_db
def test_the_night_comes_to_each_zone_in_its_own_time():
    far, near = opened("Pacific/Auckland"), opened("Europe/London")
    begin_daily(now=utc("2026-07-01T00:30"))
    # In Auckland it is half past twelve of 1 July, in London half past one in the night: there 30 June is the newest.
    assert {(row.business_id, row.day) for row in all_errands()} == {
        (far.pk, date(2026, 7, 1)),
        (near.pk, date(2026, 6, 30)),
    }
    begin_daily(now=utc("2026-07-01T01:00"))
    assert (near.pk, date(2026, 7, 1)) in {(row.business_id, row.day) for row in all_errands()}


@pytest.mark.django_db
def test_a_day_is_begun_once_however_often_it_is_looked():
    opened()
    assert [begin_daily(now=utc(f"2026-07-01T0{hour}:00")) for hour in (1, 2, 5)] == [1, 0, 0]
    (row,) = all_errands()
    assert (row.job, row.ids, row.day) == (JOB.value, {"business_id": row.business_id}, date(2026, 7, 1))


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("first", "last", "days_expected"),
    [
        ("2026-10-24T12:00", "2026-10-26T12:00", 3),  # clocks go back: an hour twice
        ("2026-03-28T12:00", "2026-03-30T12:00", 3),  # clocks go forward: an hour never
        ("2028-02-28T12:00", "2028-03-01T12:00", 3),  # a leap day
        ("2026-12-31T12:00", "2027-01-04T12:00", 5),  # the turn of a year, week 53 and the week after
    ],
)
def test_ticks_over_days_with_changes_begin_each_day_once(first, last, days_expected):
    opened()
    now = utc(first)
    while now <= utc(last):
        begin_daily(now=now)
        now += timedelta(minutes=30)
    assert len(days()) == len(set(days())) == days_expected
    assert days() == sorted(days())


@pytest.mark.django_db
def test_a_day_that_a_zone_left_out_is_never_begun():
    opened("Pacific/Apia")
    now = utc("2011-12-29T13:00")
    while now < utc("2011-12-31T13:00"):
        begin_daily(now=now)
        now += timedelta(minutes=30)
    assert days() == [date(2011, 12, 29), date(2011, 12, 31), date(2012, 1, 1)]


@pytest.mark.django_db
def test_a_machine_that_slept_for_three_days_does_the_newest_day_alone():
    opened()
    begin_daily(now=utc("2026-07-01T09:00"))
    begin_daily(now=utc("2026-07-04T09:00"))
    assert days() == [date(2026, 7, 1), date(2026, 7, 4)]


@pytest.mark.django_db
def test_a_business_opened_today_waits_for_its_first_night():
    opened(at=utc("2026-07-01T08:00"))
    assert begin_daily(now=utc("2026-07-01T09:00")) == 0
    assert begin_daily(now=utc("2026-07-02T00:59")) == 0
    assert begin_daily(now=utc("2026-07-02T01:00")) == 1


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("zone", "expected"),
    [
        # Further east the next day's night comes sooner; further west the day that was begun is not begun again.
        ("Pacific/Auckland", [(0, 1), (8, 2), (30, 2)]),
        ("Pacific/Honolulu", [(0, 1), (8, 1), (30, 2)]),
        ("Europe/Paris", [(0, 1), (16, 1), (17, 2)]),
    ],
)
def test_a_business_that_moves_to_another_zone_has_each_day_once(zone, expected):
    business, now = opened(), utc("2026-07-01T07:00")
    begin_daily(now=now)
    Business.objects.filter(pk=business.pk).update(timezone=zone)
    seen = []
    for hours, _ in expected:
        begin_daily(now=now + timedelta(hours=hours))
        seen.append((hours, len(days())))
    assert seen == expected
    assert len(set(days())) == len(days())


@pytest.mark.django_db
def test_the_statements_do_not_grow_with_the_businesses(django_assert_num_queries):
    for number in range(3):
        opened(at=EARLY + timedelta(minutes=number))
    # The zones, who has not had the day, and the rows written in one statement.
    with django_assert_num_queries(3):
        assert begin_daily(now=utc("2026-07-01T09:00")) == 3
    with django_assert_num_queries(2):
        assert begin_daily(now=utc("2026-07-01T09:00")) == 0


@pytest.mark.services
@pytest.mark.django_db(transaction=True)
def test_two_timetables_at_the_same_moment_begin_one_day():
    for number in range(5):
        opened(at=EARLY + timedelta(minutes=number))
    ready = threading.Barrier(2)

    def begin():
        ready.wait()
        begin_daily(now=utc("2026-07-01T09:00"))
        connection.close()

    both = [threading.Thread(target=begin) for _ in range(2)]
    for thread in both:
        thread.start()
    for thread in both:
        thread.join()
    assert len(all_errands()) == 5


@pytest.mark.django_db
def test_what_a_business_is_asked_once_a_day_is_done_by_its_own_errand(monkeypatch):
    calls = set_work(monkeypatch, lambda time: None, job=JOB)
    business = opened()
    begin_daily(now=utc("2026-07-01T09:00"))
    (row,) = all_errands()
    run_errand(errand_id=row.pk, clock=lambda: row.due_at)
    assert calls == [{"business_id": business.pk}]


@pytest.mark.django_db
def test_a_zone_that_this_machine_does_not_know_costs_no_other_business_its_night(caplog):
    lost, near = opened("Europe/London"), opened("Europe/Dublin")
    Business.objects.filter(pk=lost.pk).update(timezone="Europe/Atlantis")
    begin_daily(now=utc("2026-07-01T03:00"))
    assert [row.business_id for row in all_errands()] == [near.pk]
    assert "no such zone of time: Europe/Atlantis" in caplog.text
