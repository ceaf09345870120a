from datetime import date, timedelta

import pytest

from invoicing.domain.reminder_steps import PastStep, ReminderState, due_step, read_days, step_words

DAYS = (7, 21, 35)
DUE = date(2026, 3, 1)


def step(late, *past):
    return due_step(DUE, DUE + timedelta(days=late), DAYS, past)


def done(number, late):
    return PastStep(number, DUE + timedelta(days=late))


@pytest.mark.parametrize(("late", "expected"), [(-3, None), (6, None), (7, 1), (20, 1), (90, 1)])
def test_the_first_letter_is_never_skipped(late, expected):
    assert step(late) == expected


def test_the_next_comes_at_its_day():
    assert step(20, done(1, 7)) is None
    assert step(21, done(1, 7)) == 2
    assert step(35, done(1, 7), done(2, 21)) == 3


def test_a_late_first_letter_leaves_the_time_between():
    assert step(41, done(1, 40)) is None
    assert step(53, done(1, 40)) is None
    assert step(54, done(1, 40)) == 2


def test_one_that_waits_holds_up_the_next():
    assert step(90, done(1, 7), PastStep(2, None)) is None


def test_after_the_last_there_is_none():
    assert step(400, done(1, 7), done(2, 21), done(3, 35)) is None


def test_without_steps_nobody_is_reminded():
    assert due_step(DUE, DUE + timedelta(days=99), (), ()) is None


@pytest.mark.parametrize(
    ("kept", "days"), [([21, 7, 7], (7, 21)), ([], ()), (None, ()), (["x", 0, 5], (5,)), ({}, ())]
)
def test_days_are_read_in_order(kept, days):
    assert read_days(kept) == days


@pytest.mark.parametrize(
    ("number", "of", "words"),
    [(1, 3, "First reminder"), (2, 3, "Second reminder"), (3, 3, "Last reminder"), (1, 1, "First reminder")],
)
def test_steps_have_words(number, of, words):
    assert step_words(number, range(of)) == words


@pytest.mark.parametrize("kind", [ReminderState])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)
