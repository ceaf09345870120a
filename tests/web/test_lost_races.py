"""What the database says of somebody quicker becomes a refusal that can be read; every other fault of it stays one."""

import pytest
from django.db import IntegrityError, OperationalError, transaction
from django.test import RequestFactory

from farms.models import Farm
from tests.factories import House, make_house
from trimops.web.lost_races import is_lost_race, lost_race
from trimops.web.refusals import RefusalMiddleware, answer_refusal


@pytest.fixture
def house(db) -> House:
    return make_house()


def fault_of(act):
    with pytest.raises((IntegrityError, OperationalError)) as found, transaction.atomic():
        act()
    return found.value


def same_name_again(house):
    return Farm.objects.create(
        business=house.business, name=house.farm.name, latitude="54", longitude="-2", herd_size=1
    )


def no_name(house):
    Farm.objects.within(house.scope).filter(pk=house.farm.pk).update(name=None)


def test_a_name_taken_at_the_same_moment_is_told_at_the_api_and_on_a_page(house):
    fault = fault_of(lambda: same_name_again(house))
    told = answer_refusal(fault, {})
    assert (told.status_code, told.data["code"]) == (409, "somebody_was_quicker")
    request = RequestFactory().post("/farms/new/")
    page = RefusalMiddleware(lambda each: None).process_exception(request, fault)
    assert page.status_code == 409
    assert "at the very same moment" in page.content.decode()


def test_a_fault_of_our_own_is_no_lost_race(house):
    fault = fault_of(lambda: no_name(house))
    assert isinstance(fault, IntegrityError)
    assert not is_lost_race(fault)
    assert lost_race(ValueError("UNIQUE constraint failed")) is None


@pytest.mark.parametrize(
    ("state", "is_lost"), [("40P01", True), ("40001", True), ("57014", False), (None, False)]
)
def test_a_deadlock_is_lost_and_a_query_that_was_stopped_is_not(state, is_lost):
    fault = OperationalError("as the driver says it")
    fault.__cause__ = type("OfTheDriver", (Exception,), {"sqlstate": state})()
    assert is_lost_race(fault) is is_lost
