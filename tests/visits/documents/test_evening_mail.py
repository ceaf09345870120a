from dataclasses import replace
from datetime import UTC, date, datetime

from visits.documents.evening_mail import EveningMail, RoundStop, evening_subject, evening_text

LOW = RoundStop(
    start=datetime(2026, 12, 1, 8, 30, tzinfo=UTC),
    farm="Low Croft",
    address="Down the track\nNowhere",
    cows=12,
    lame=2,
    hygiene=1,
    hygiene_words="1, usual",
    ring="01632 960001",
    way_in="Second gate",
    note="Mind the heifers",
)
HIGH = replace(
    LOW,
    start=datetime(2026, 12, 1, 12, 5, tzinfo=UTC),
    farm="High Croft",
    cows=1,
    lame=0,
    way_in="",
    note="",
    ring="",
)
MAIL = EveningMail(
    van="Van 1",
    day=date(2026, 12, 1),
    title="Tonight: load 2 things",
    stops=[LOW, HIGH],
    tonight=[("Load: Wooden block; Glue", "13 cows at 2 farms on Tuesday")],
    load=["lamp for Low Croft"],
    caution="Somebody knows where you are.",
)


def test_the_subject_says_the_day_the_van_and_how_much():
    assert evening_subject(MAIL) == "Tue 1 Dec, Van 1: 2 farms, 13 cows"
    assert evening_subject(replace(MAIL, stops=[])) == "Van 1: Tonight: load 2 things"


def test_the_round_stands_first_by_the_hour_then_what_to_mind_then_the_evening():
    assert evening_text(MAIL).splitlines() == [
        "Van 1, Tue 1 Dec",
        "08:30  Low Croft: 12 cows (2 lame)",
        "       Down the track, Nowhere",
        "       Hygiene: 1, usual",
        "       Ring 01632 960001",
        "       Way in: Second gate",
        "       Mind the heifers",
        "12:05  High Croft: 1 cow",
        "       Down the track, Nowhere",
        "       Hygiene: 1, usual",
        "",
        "To mind:",
        "- Load lamp for Low Croft.",
        "- Somebody knows where you are.",
        "",
        "Tonight: load 2 things",
        "- Load: Wooden block; Glue (13 cows at 2 farms on Tuesday)",
    ]


def test_a_cleaner_herd_after_a_worse_one_is_said():
    mail = replace(MAIL, stops=[replace(LOW, hygiene=2), HIGH])
    assert "High Croft comes after Low Croft and has the cleaner herd" in evening_text(mail)
    assert "cleaner herd" not in evening_text(replace(MAIL, stops=[LOW, replace(HIGH, hygiene=2)]))


def test_a_visit_that_may_run_into_the_milking_is_said():
    assert "Low Croft: 63 in a hundred to be done" in evening_text(
        replace(MAIL, stops=[replace(LOW, tight=63)])
    )


def test_without_a_round_only_the_evening_is_told():
    mail = replace(MAIL, stops=[], load=[])
    assert evening_text(mail).splitlines()[:3] == [
        "Van 1 has no visit on Tue 1 Dec.",
        "",
        "Tonight: load 2 things",
    ]
    assert not mail.is_empty
    assert replace(mail, tonight=[]).is_empty
