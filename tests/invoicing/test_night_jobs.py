"""In the hour of its own night a business's reminders are put forward and its drives kept; doing it twice is once."""

from datetime import UTC, datetime, timedelta

import pytest

from invoicing.models import Journey, MoneyRules, Reminder
from invoicing.tasks import keep_journeys_task, propose_reminders_task, sweep_sendings_task
from tests.factories import TUESDAY_TEN, finished, make_business, make_house
from tests.invoicing.booked import booked, line

NIGHT = datetime(2026, 3, 5, 2, 17, tzinfo=UTC)


@pytest.mark.django_db
def test_the_night_jobs_work_in_their_hour_and_once(monkeypatch):
    house = make_house()
    MoneyRules.objects.create(business=house.business, reminder_days=[7])
    booked(house.farm, line("100"))
    finished(house.farm, house.van, TUESDAY_TEN)
    found = []
    for at in (NIGHT - timedelta(hours=1), NIGHT, NIGHT + timedelta(minutes=5)):
        monkeypatch.setattr("invoicing.tasks.timezone.now", lambda at=at: at)
        propose_reminders_task()
        keep_journeys_task()
        rows = Reminder.objects.within(house.scope), Journey.objects.within(house.scope)
        found.append(tuple(each.count() for each in rows))
    assert found == [(0, 0), (1, 2), (1, 2)]


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("task", "service"),
    [
        (sweep_sendings_task, "sweep_sendings"),
        (propose_reminders_task, "propose_reminders"),
        (keep_journeys_task, "keep_journeys"),
    ],
)
def test_what_is_wrong_with_one_business_keeps_nothing_from_the_others(task, service, monkeypatch):
    make_business("First")
    make_business("Second")
    called = []

    def fails_for_the_first(**told):
        called.append(told)
        if len(called) == 1:
            raise ValueError("A row of the first is broken.")

    monkeypatch.setattr("invoicing.tasks.timezone.now", lambda: NIGHT)
    monkeypatch.setattr(f"invoicing.tasks.{service}", fails_for_the_first)
    task()
    assert len(called) == 2
