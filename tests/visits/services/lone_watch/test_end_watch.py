"""A watch is over, and whoever was told hears of it once."""

import pytest

from tests.factories import TUESDAY_TEN, finish, planned
from tests.visits.services.lone_watch.watched import (
    after,
    again,
    alarmed,
    log,
    look,
    sent,
    watch_of,
    went,
)
from trimops.errands.models import Errand
from trimops.outbox.models import Outgoing
from visits.domain.lone_watch.watch_states import WatchEnd, WatchState
from visits.models import WatchEvent
from visits.services.call_off_visit import call_off_visit
from visits.services.lone_watch.begin_watch import begin_watch
from visits.services.lone_watch.end_watch import end_watch
from visits.services.put_off_visit import put_off_visit


def test_finishing_the_visit_ends_it(house):
    watch = watch_of(house)
    finish(watch.visit, house.trimmer)
    over = again(watch)
    assert (over.state, over.ended_how) == (WatchState.ENDED, WatchEnd.FINISHED)
    assert not sent(house), "nobody was told, so nobody hears"


def test_a_finish_heard_of_late_is_told_by_the_phones_own_time(house):
    """It was finished before the question; the phone had no network."""
    watch = alarmed(house)
    went(house)
    done = after(watch, 10)
    finish(watch.visit, house.trimmer, at=done)
    over = again(watch)
    assert over.ended_at == done
    last = sent(house)[-1]
    assert f"finished the visit at {done:%H:%M}" in last.body
    event = WatchEvent.objects.within(house.scope).filter(watch=watch).last()
    assert event.at == done
    assert event.noted_at != done


@pytest.mark.parametrize("step", ["off", "put off"])
def test_a_visit_that_will_not_be_is_not_watched(house, step):
    visit = planned(house.farm, house.van)
    watch = begin_watch(visit=visit, trimmer=house.trimmer, at=TUESDAY_TEN, is_by_plan=True)
    does = call_off_visit if step == "off" else put_off_visit
    does(visit=visit, because="Snow", at=after(watch, 5), by=house.office)
    assert again(watch).ended_how == WatchEnd.CALLED_OFF


def test_ending_twice_tells_once(house):
    watch = alarmed(house)
    went(house)
    for _ in range(2):
        end_watch(watch=watch, how=WatchEnd.WELL, because="Ada is well.", at=after(watch, 45))
    assert [mail.body for mail in sent(house)].count(sent(house)[-1].body) == 1
    assert log(watch).count("Ada is well.") == 1


def test_everybody_who_was_told_hears_by_the_way_they_were_told(house):
    watch = alarmed(house)
    look(watch, 55)
    went(house)
    end_watch(watch=watch, how=WatchEnd.WELL, because="Ada is well.", at=after(watch, 60))
    well = [(mail.channel, mail.address) for mail in sent(house) if "Ada is well." in mail.body]
    assert well == [("mail", "neighbour@home.example"), ("sms", "0199 555 020")]


def test_who_may_have_the_alarm_is_told_even_if_it_waits(house):
    """The line broke after the text: nobody knows whether it arrived."""
    watch = alarmed(house)
    Outgoing.objects.within(house.scope).update(may_have_gone=True)
    end_watch(watch=watch, how=WatchEnd.WELL, because="Ada is well.", at=after(watch, 45))
    assert sent(house)[-1].address == "neighbour@home.example"
    assert "Ada is well." in sent(house)[-1].body


def test_an_alarm_that_is_left_wakes_nobody(house):
    watch = alarmed(house)
    before = Errand.objects.within(house.scope).count()
    end_watch(watch=watch, how=WatchEnd.WELL, because="Ada is well.", at=after(watch, 45))
    assert Errand.objects.within(house.scope).count() == before


def test_a_second_alarm_is_taken_back_as_well(house):
    watch = alarmed(house)
    went(house)
    row = again(watch)
    for start in (60, 200):
        row.state, row.next_at, row.well_until = "watching", after(watch, start), after(watch, start)
        row.tellings, row.told_at = 0, None
        row.save()
        look(watch, start), look(watch, start + 10)
        went(house)
        row = again(watch)
    assert row.state == WatchState.TOLD
    end_watch(watch=watch, how=WatchEnd.WELL, because="Ada is well.", at=after(watch, 300))
    well = [mail for mail in sent(house) if mail.once.split(":")[2] == "well"]
    assert [mail.address for mail in well] == ["neighbour@home.example"]
