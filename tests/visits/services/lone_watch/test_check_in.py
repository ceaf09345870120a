"""The trimmer says that all is well."""

from datetime import timedelta

from tests.visits.services.lone_watch.watched import (
    after,
    again,
    alarmed,
    calls,
    log,
    look,
    sent,
    watch_of,
    went,
)
from visits.domain.lone_watch.watch_states import WatchState
from visits.services.lone_watch.check_in import check_in


def test_thirty_minutes_more(house):
    watch = watch_of(house)
    look(watch, 30)
    check_in(watch=watch, is_done=False, at=after(watch, 35), who="Ada")
    assert again(watch).state == WatchState.WATCHING
    assert look(watch, 36).next_at == after(watch, 65)
    assert look(watch, 65).state == WatchState.ASKED, "then he is asked again"
    assert len([call for call in calls(watch) if call.is_trimmer]) == 2


def test_finished_ends_it(house):
    watch = watch_of(house)
    look(watch, 30)
    check_in(watch=watch, is_done=True, at=after(watch, 35), who="Ada")
    over = again(watch)
    assert (over.state, over.ended_how, over.ended_at, over.next_at) == (
        "ended",
        "well",
        after(watch, 35),
        None,
    )


def test_whoever_was_told_hears_that_all_is_well(house):
    watch = alarmed(house)
    went(house)
    check_in(watch=watch, is_done=False, at=after(watch, 42), who="Ada")
    last = sent(house)[-1]
    assert (last.address, last.subject.split(":")[0]) == ("neighbour@home.example", "All is well")
    assert "works on for 30 minutes" in last.body
    assert again(watch).tellings == 0, "if he is missed again, the first on the list is the first again"


def test_an_alarm_that_still_waits_does_not_go_any_more_and_is_not_taken_back(house):
    watch = alarmed(house)
    check_in(watch=watch, is_done=True, at=after(watch, 41), who="Ada")
    assert {mail.state for mail in sent(house)} == {"left"}
    assert {mail.secret for mail in sent(house)} == {""}
    assert not [mail for mail in sent(house) if "All is well" in mail.subject]


def test_said_twice_it_is_said_once(house):
    watch = alarmed(house)
    for _ in range(2):
        check_in(watch=watch, is_done=False, at=after(watch, 42), who="Ada")
    assert log(watch).count("all is well, and works on") == 1


def test_a_word_from_before_the_question_answers_nothing(house):
    """It lay on a phone without a network; what came after is not known."""
    watch = alarmed(house)
    check_in(watch=watch, is_done=False, at=after(watch, 29), who="Ada")
    assert again(watch).state == WatchState.TOLD
    assert "before the question" in log(watch)


def test_a_word_before_the_end_does_not_bring_the_question_forward(house):
    watch = watch_of(house)
    check_in(watch=watch, is_done=False, at=watch.began_at + timedelta(minutes=5), who="Ada")
    assert look(watch, 0).next_at == after(watch, 30)
