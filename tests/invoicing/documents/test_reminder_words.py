import re
from dataclasses import replace
from datetime import date

import pytest

from invoicing.documents.reminder_words import (
    PAID_ALREADY,
    ask_words,
    reminder_mark,
    reminder_title,
    reminder_words,
)
from tests.invoicing.documents.test_reminder_pdf import CONTENT

THREATS = re.compile(
    r"court|legal|lawyer|collect|bailiff|proceed|consequence|last chance|final|demand|stop", re.I
)


@pytest.mark.parametrize(
    ("step", "mark"), [(1, "Reminder"), (2, "Second reminder"), (3, "Third reminder"), (4, "Reminder 4")]
)
def test_it_says_which_reminder_it_is(step, mark):
    assert reminder_mark(step) == mark


def test_there_is_no_reminder_before_the_first():
    with pytest.raises(ValueError, match="from 1"):
        reminder_mark(0)


def test_the_title_is_the_answer():
    assert reminder_title(CONTENT) == "Invoice INV-2026-0042: £420.89 due since 1 Jan 2027"


@pytest.mark.parametrize("step", [1, 2, 3, 4, 9])
def test_no_step_threatens_and_each_thanks_who_has_paid(step):
    said = reminder_words(replace(CONTENT, step=step))
    assert said[-1] == PAID_ALREADY
    assert not THREATS.search(" ".join(said))


def test_each_step_is_firmer_than_the_one_before():
    first, second, third, fourth = (reminder_words(replace(CONTENT, step=step))[0] for step in (1, 2, 3, 4))
    assert "may have slipped through" in first
    assert "Please pay it now" in second
    assert "50 days ago" in second
    assert "reminded you twice" in third
    assert "reminded you 3 times" in fourth


def test_one_day_late_is_one_day():
    assert "1 day ago" in reminder_words(replace(CONTENT, step=2, day=date(2027, 1, 2)))[0]


@pytest.mark.parametrize(
    ("phone", "email", "ask", "told"),
    [
        ("01632", "a@b.example", "Mo", "Questions? Please ring Mo on 01632 or write to a@b.example."),
        ("01632", "", "01632", "Questions? Please ring Skelderdale Foot Trimming on 01632."),
        ("", "a@b.example", "", "Questions? Please write to a@b.example."),
        ("", "", "Mo", ""),
    ],
)
def test_it_says_whom_to_ring(phone, email, ask, told):
    business = replace(CONTENT.business, phone=phone, email=email)
    assert ask_words(replace(CONTENT, business=business, ask=ask)) == told
