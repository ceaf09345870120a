"""What the services of the stock share."""

from datetime import timedelta
from uuid import uuid4

import pytest

from tests.factories import NOON, make_house, make_kit, stock_up
from tests.visits.services.kit.stock_words import amount, word
from visits.services.kit.stock_place import store_of
from visits.services.kit.stock_word import (
    MoreThanIsThere,
    StockRefused,
    booked_before,
    refuse_amounts,
    refuse_moment,
    refuse_more_than_is_there,
)


@pytest.fixture
def glue(house):
    return make_kit(house.business)["glue"]


def test_a_form_is_known_by_its_uid_within_the_business(house, glue):
    line = stock_up(glue, 100, at=NOON)
    line.uid = uuid4()
    line.save()
    assert booked_before(house.scope, word(house, uid=line.uid)) == [line]
    assert booked_before(house.scope, word(house)) == []
    assert booked_before(make_house("Another business").scope, word(house, uid=line.uid)) == []


def test_nought_is_a_word_in_a_count_only(glue):
    refuse_amounts([amount(glue, 0)], nought=True)
    with pytest.raises(StockRefused, match="Glue: say how much"):
        refuse_amounts([amount(glue, 0)], nought=False)


def test_the_ledger_of_that_moment_is_asked_in_two_queries(house, glue, django_assert_num_queries):
    stock_up(glue, 100, at=NOON)
    store = store_of(house.scope)
    with django_assert_num_queries(2):
        refuse_more_than_is_there(store, [amount(glue, 100)], word(house))
    with pytest.raises(MoreThanIsThere, match=r"100 ml of Glue, not 100\.5 ml"):
        refuse_more_than_is_there(store, [amount(glue, "100.5")], word(house))
    refuse_moment(word(house, noted_at=NOON))
    with pytest.raises(StockRefused):
        refuse_moment(word(house, noted_at=NOON - timedelta(hours=1)))
