from datetime import date

import pytest

from invoicing.models import Agreement
from invoicing.selectors.price_book import agreed_on
from invoicing.services.end_agreement import end_agreement
from invoicing.services.lock_period import PeriodLocked, lock_period
from tests.factories import NOON
from tests.invoicing.services.test_save_agreement import MARCH, agree

LAST = date(2026, 4, 30)


def test_it_holds_on_its_last_day_and_not_after(house):
    row = end_agreement(agreement=agree(house), today=LAST)
    assert agreed_on(house.scope, house.farm, LAST)
    assert not agreed_on(house.scope, house.farm, date(2026, 5, 1))
    assert end_agreement(agreement=row, today=date(2026, 6, 1)).valid_until == LAST


def test_one_that_has_not_begun_is_taken_off(house):
    assert end_agreement(agreement=agree(house), today=date(2026, 2, 28)) is None
    assert not Agreement.objects.within(house.scope).exists()


def test_days_of_a_closed_period_keep_it(house):
    row = agree(house, valid_from=date(2026, 2, 1))
    lock_period(scope=house.scope, until=MARCH, why="Quarter", at=NOON, by=house.owner)
    with pytest.raises(PeriodLocked):
        end_agreement(agreement=row, today=date(2026, 2, 10))
    assert end_agreement(agreement=row, today=MARCH)
