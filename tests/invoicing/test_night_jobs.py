"""Once a day a business's reminders are put forward and its drives kept; doing it twice is once."""

from datetime import UTC, datetime, timedelta

import pytest

from invoicing.models import Journey, MoneyRules, Reminder
from invoicing.tasks import keep_journeys_task, propose_reminders_task
from tests.factories import TUESDAY_TEN, finished, make_house
from tests.invoicing.booked import booked, line

NIGHT = datetime(2026, 3, 5, 2, 17, tzinfo=UTC)


@pytest.mark.django_db
def test_the_night_jobs_work_for_their_business_and_once(monkeypatch):
    house, other = make_house(), make_house("Far Side")
    for each in (house, other):
        MoneyRules.objects.create(business=each.business, reminder_days=[7])
        booked(each.farm, line("100"))
        finished(each.farm, each.van, TUESDAY_TEN)
    found = []
    for at in (NIGHT, NIGHT + timedelta(minutes=5)):
        monkeypatch.setattr("invoicing.tasks.timezone.now", lambda at=at: at)
        propose_reminders_task(business_id=house.business.pk)
        keep_journeys_task(business_id=house.business.pk)
        rows = Reminder.objects.within(house.scope), Journey.objects.within(house.scope)
        found.append(tuple(each.count() for each in rows))
    assert found == [(1, 2), (1, 2)]
    assert not Reminder.objects.within(other.scope).exists()
    assert not Journey.objects.within(other.scope).exists()
