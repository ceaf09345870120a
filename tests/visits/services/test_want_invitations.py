"""Who changes a visit asks for invitations only where somebody is to be invited or told."""

import pytest

from farms.models import Contact
from tests.factories import NOON, TUESDAY_TEN, in_state, planned
from trimops.errands.models import Errand
from trimops.jobs import Job
from visits.domain.visit_states import VisitState
from visits.models import Invitation
from visits.services.expect_cows import expect_cows
from visits.services.want_invitations import want_invitations


def wanting(house, **fields):
    return Contact.objects.create(
        business=house.business, farm=house.farm, name="H", part="Herd", email="h@low-croft.example", **fields
    )


def told(house, visit, **fields):
    return Invitation.objects.create(
        business=house.business, visit=visit, address="h@low-croft.example", start=TUESDAY_TEN,
        finish=TUESDAY_TEN.replace(hour=12), is_confirmed=True, sequence=1, sent_at=NOON, **fields,
    )  # fmt: skip


@pytest.mark.parametrize("state", list(VisitState))
@pytest.mark.parametrize("is_invited", [False, True])
def test_only_where_somebody_is_concerned(house, state, is_invited):
    visit = in_state(state, house.farm, house.van)
    wanting(house, gets_invitations=True)
    if is_invited:
        told(house, visit)
    hears = state not in (VisitState.UNDER_WAY, VisitState.FINISHED)
    assert want_invitations(visit=visit, at=NOON) == (hears and (is_invited or state is VisitState.CONFIRMED))


def test_nobody_wants_them_and_nothing_is_asked_for(house, django_assert_num_queries):
    visit = in_state(VisitState.CONFIRMED, house.farm, house.van)
    wanting(house)
    told(house, visit, cancelled_at=NOON)
    with django_assert_num_queries(1):
        assert not want_invitations(visit=visit, at=NOON)


def test_a_list_that_makes_the_visit_longer_is_news_and_one_that_does_not_is_none(house):
    visit = planned(house.farm, house.van)
    told(house, visit)
    asked = Errand.objects.within(house.scope).filter(job=Job.SEND_INVITATIONS)
    expect_cows(visit=visit, count=visit.head_count, at=NOON, by=house.owner)
    before = asked.count()
    expect_cows(visit=visit, count=visit.head_count + 8, at=NOON, by=house.owner)
    assert asked.count() == before + 1
