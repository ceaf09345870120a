"""A message of the watch is tried again, or never went."""

from tests.visits.services.lone_watch.watched import after, alarmed, calls, sent, went
from trimops.errands.models import Errand
from trimops.kernel.secret_link import hash_of
from trimops.outbox.domain.outgoing_states import OutgoingState
from trimops.outbox.services.end_outgoing import Outcome, end_outgoing
from visits.domain.lone_watch.watch_states import WatchEnd
from visits.services.lone_watch.end_watch import end_watch
from visits.services.lone_watch.follow_message import follow_lost_call, renew_call_link


def looks(house):
    return Errand.objects.within(house.scope).filter(job="visits.look_at_watch").count()


def test_an_alarm_that_was_refused_has_the_watch_looked_at_at_once(house):
    watch = alarmed(house)
    alarm = sent(house)[2]
    end_outgoing(
        row=alarm, outcome=Outcome(OutgoingState.FAILED, "No such box", for_good=True), at=after(watch, 41)
    )
    assert looks(house) == 1, "the outbox itself says so to the watch"


def test_the_question_to_the_trimmer_and_what_was_left_wake_nobody(house):
    watch = alarmed(house)
    question, alarm = sent(house)[0], sent(house)[2]
    question.state, alarm.state = "failed", "left"
    for outgoing in (question, alarm):
        follow_lost_call(outgoing=outgoing, at=after(watch, 41))
    assert looks(house) == 0


def test_tried_again_by_hand_it_has_a_new_link_and_the_old_one_ends(house):
    watch = alarmed(house)
    call = calls(watch)[1]
    secret = renew_call_link(outgoing=sent(house)[2])
    assert calls(watch)[1].secret_hash == hash_of(secret) != call.secret_hash


def test_the_word_that_all_is_well_has_no_link(house):
    watch = alarmed(house)
    went(house)
    end_watch(watch=watch, how=WatchEnd.WELL, because="Ada is well.", at=after(watch, 45))
    assert renew_call_link(outgoing=sent(house)[-1]) == ""
