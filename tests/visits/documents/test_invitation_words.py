"""What the mail around an invitation says."""

from dataclasses import replace

import pytest

from tests.visits.documents.zone_edges import utc
from visits.documents.invitation_words import InvitationFacts, invitation_subject, invitation_text

FACTS = InvitationFacts(
    business="Ash & Rye Foot Trimming",
    phone="0199 555 010",
    farm="Low Croft",
    trimmer="Ann Trimmer",
    start=utc(2026, 7, 7, 8),
    end=utc(2026, 7, 7, 10, 30),
    zone="Europe/London",
)
MOVED = replace(FACTS, before=utc(2026, 7, 6, 8), is_confirmed=False)


@pytest.mark.parametrize(
    ("facts", "subject"),
    [
        (FACTS, "Foot trimming at Low Croft, Tue 7 Jul 09:00"),
        (replace(FACTS, before=FACTS.start), "Foot trimming at Low Croft, Tue 7 Jul 09:00"),
        (MOVED, "New hour: foot trimming at Low Croft, Tue 7 Jul 09:00"),
        (replace(FACTS, is_off=True), "Called off: foot trimming at Low Croft, Tue 7 Jul 09:00"),
        (replace(FACTS, zone="Australia/Lord_Howe"), "Foot trimming at Low Croft, Tue 7 Jul 18:30"),
        (replace(FACTS, start=utc(2028, 2, 29, 9)), "Foot trimming at Low Croft, Tue 29 Feb 09:00"),
    ],
)
def test_the_subject_says_what_is_new_and_when(facts, subject):
    assert invitation_subject(facts) == subject


def test_the_first_mail_says_when_who_and_what_to_do():
    assert invitation_text(FACTS) == (
        "Tuesday 7 July 2026, 09:00 to 11:30: foot trimming at Low Croft.\n\n"
        "Ann Trimmer comes.\nYour calendar can take it over from this mail.\n\n"
        "If this does not suit, answer this mail, or ring 0199 555 010.\nAsh & Rye Foot Trimming\n"
    )


def test_a_move_says_the_hour_before_and_whether_it_is_settled():
    text = invitation_text(MOVED)
    assert "Before it was Monday 6 July 2026, 09:00." in text
    assert "not settled yet" in text


def test_a_calling_off_does_not_say_that_somebody_comes():
    text = invitation_text(replace(FACTS, is_off=True, phone=""))
    assert "comes" not in text
    assert "does not take place" in text
    assert "ring" not in text.splitlines()[-2]
