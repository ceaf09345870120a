"""Two workers that are handed the same errand at the same moment tell a farm once."""

from datetime import timedelta

import pytest

from tests.factories import NOON, TUESDAY_TEN, make_house, planned
from tests.many_hands import ManyHands
from tests.visits.services.messages.told_farms import again, mailed, switch_on, texted
from trimops.outbox.models import Outgoing
from visits.models import VisitMessage
from visits.services.messages.tell_hour_news import tell_hour_news
from visits.services.messages.tell_tomorrow import tell_tomorrow

LATER = NOON + timedelta(hours=5)


@pytest.mark.django_db(transaction=True)
@pytest.mark.parametrize("job", ["news", "tomorrow"])
def test_however_many_are_at_it(job, tmp_path, monkeypatch):
    house = make_house()
    switch_on(house)
    mailed(house)
    texted(house)
    visit = planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=job == "news"))

    def tell(_):
        if job == "news":
            return len(tell_hour_news(visit=again(visit), at=LATER))
        return len(tell_tomorrow(business=house.business, at=LATER))

    def count(_):
        rows = Outgoing, VisitMessage
        return [model.objects.within(house.scope).count() for model in rows]

    hands = ManyHands(tmp_path, monkeypatch)
    # Alone first: the file's journal is set up by whoever opens it first, and no two can.
    assert hands(count, [0]) == [[0, 0]]
    assert sorted(hands(tell, range(3))) == [0, 0, 2]
    assert hands(count, [0]) == [[2, 2]]
