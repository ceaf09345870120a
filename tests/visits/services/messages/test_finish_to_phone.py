"""A cow is signed off at one farm, and the next farm's phone knows: the whole way, by the clock on the wall."""

from datetime import timedelta

import pytest
from django.utils import timezone

from tests.factories import finish, make_farm, make_house, planned, under_way
from tests.visits.services.messages.told_farms import errands, mailed, switch_on
from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.services.run_errand import run_errand
from trimops.jobs import Job
from trimops.outbox.models import Outgoing
from visits.domain.messages.message_kinds import MessageKind
from visits.models import VisitMessage

TEN = 10


def zone_in_which_it_is_ten(now):
    """Whatever the hour here, somewhere it is ten in the morning, far from milking and from quiet hours."""
    behind = now.hour - TEN
    behind = behind if behind <= 12 else behind - 24
    return f"Etc/GMT{behind:+d}" if behind else "Etc/GMT"


@pytest.fixture
def day(db):
    now = timezone.now()
    house = make_house()
    house.business.timezone = zone_in_which_it_is_ten(now)
    house.business.save()
    switch_on(house, MessageKind.ON_THE_WAY)
    second = make_farm(house.business, "High Croft", by=house.owner, latitude="54.12", longitude="-2.32")
    mailed(house, "Odo Other", farm=second)
    first = under_way(house.farm, house.van, now - timedelta(hours=1), head_count=3)
    then = planned(second, house.van, now + timedelta(hours=1), head_count=10)
    return house, first, then


def run(house, job):
    return [run_errand(errand_id=errand.pk) for errand in errands(house, job)]


def test_from_the_sign_off_to_the_mail_of_the_next_farm(day, mailoutbox):
    house, first, then = day
    finish(first, house.trimmer, timezone.now())
    assert run(house, Job.TELL_NEXT) == [ErrandState.DONE]
    assert run(house, Job.SEND_OUTGOING) == [ErrandState.DONE]
    (mail,) = mailoutbox
    assert mail.to == ["odo@farm.example"]
    assert mail.subject == "On the way to High Croft"
    assert Outgoing.objects.within(house.scope).get().state == "went"
    assert VisitMessage.objects.within(house.scope).get().visit == then


def test_run_again_nothing_more_goes(day, mailoutbox):
    house, first, _ = day
    finish(first, house.trimmer, timezone.now())
    (errand,) = errands(house, Job.TELL_NEXT)
    for _ in range(2):
        run_errand(errand_id=errand.pk)
        type(errand).objects.within(house.scope).filter(pk=errand.pk).update(state="waiting")
    assert Outgoing.objects.within(house.scope).count() == 1


@pytest.mark.parametrize("hour", range(24))
def test_there_is_a_zone_for_every_hour(hour):
    now = timezone.now().replace(hour=hour)
    name = zone_in_which_it_is_ten(now)
    behind = int(name.removeprefix("Etc/GMT") or 0)
    assert (hour - behind) % 24 == TEN
