"""Who was asked or told answers by the link."""

import pytest

from tests.visits.services.lone_watch.watched import after, again, alarmed, calls, log, look, sent, went
from visits.domain.lone_watch.watch_states import CallAnswer, WatchEnd, WatchState
from visits.services.lone_watch.answer_call import NotYoursToSay, answer_call
from visits.services.lone_watch.try_watch import try_watch

OF_OTHERS = [CallAnswer.TAKES, CallAnswer.FOUND, CallAnswer.CANNOT]
OF_HIM = [CallAnswer.WELL_ON, CallAnswer.WELL_DONE]


@pytest.fixture
def watch(house):
    found = alarmed(house)
    went(house)
    return found


def call_of(watch, *, trimmer=False):
    return next(call for call in calls(watch) if call.is_trimmer is trimmer)


@pytest.mark.parametrize(
    ("answer", "trimmer"), [*((a, True) for a in OF_OTHERS), *((a, False) for a in OF_HIM)]
)
def test_nobody_says_what_is_the_others_to_say(watch, answer, trimmer):
    with pytest.raises(NotYoursToSay):
        answer_call(call=call_of(watch, trimmer=trimmer), answer=answer, at=after(watch, 41))
    assert again(watch).state == WatchState.TOLD


def test_the_trimmer_is_well_and_works_on(watch):
    answer_call(call=call_of(watch, trimmer=True), answer=CallAnswer.WELL_ON, at=after(watch, 45))
    assert again(watch).state == WatchState.WATCHING
    assert again(watch).well_until == after(watch, 75)


def test_the_trimmer_is_well_and_done(watch):
    answer_call(call=call_of(watch, trimmer=True), answer=CallAnswer.WELL_DONE, at=after(watch, 45))
    assert again(watch).ended_how == WatchEnd.WELL


def test_who_sees_to_it_holds_the_others_back(house, watch):
    answer_call(call=call_of(watch), answer=CallAnswer.TAKES, at=after(watch, 45))
    assert again(watch).taken_by == "N. Neighbour"
    before = len(sent(house))
    assert look(watch, 56).next_at == after(watch, 105)
    assert len(sent(house)) == before
    look(watch, 105)
    assert "N. Neighbour said they see to it" in sent(house)[-1].body or sent(house)[-1].channel == "sms"
    assert len(sent(house)) == before + 1, "an hour later without a word the next is told"


def test_who_has_spoken_to_him_ends_it(house, watch):
    answer_call(call=call_of(watch), answer=CallAnswer.FOUND, at=after(watch, 50))
    over = again(watch)
    assert (over.state, over.ended_how) == (WatchState.ENDED, WatchEnd.FOUND)
    assert "N. Neighbour has spoken to" in sent(house)[-1].body


def test_who_cannot_has_the_next_told_at_once(house, watch):
    answer_call(call=call_of(watch), answer=CallAnswer.CANNOT, at=after(watch, 42))
    look(watch, 42)
    assert sent(house)[-1].address == "0199 555 020"


def test_who_cannot_does_not_undo_that_another_sees_to_it(house, watch):
    look(watch, 55)
    first, second = (call for call in calls(watch) if not call.is_trimmer)
    answer_call(call=second, answer=CallAnswer.TAKES, at=after(watch, 56))
    answer_call(call=first, answer=CallAnswer.CANNOT, at=after(watch, 57))
    before = len(sent(house))
    look(watch, 58)
    assert len(sent(house)) == before


def test_after_the_end_an_answer_is_noted_and_changes_nothing(watch):
    answer_call(call=call_of(watch), answer=CallAnswer.FOUND, at=after(watch, 50))
    answer_call(call=call_of(watch), answer=CallAnswer.TAKES, at=after(watch, 60))
    assert again(watch).ended_at == after(watch, 50)
    assert "I see to it now" in log(watch)


def test_a_test_is_confirmed(house):
    watch = try_watch(business=house.business, at=after(alarmed(house), 200), by=house.owner)
    answer_call(call=calls(watch)[0], answer=CallAnswer.TAKES, at=watch.began_at)
    assert calls(watch)[0].answered_at == watch.began_at
    assert "N. Neighbour answered" in log(watch)
