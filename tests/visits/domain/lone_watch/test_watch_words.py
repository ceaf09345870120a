"""The words: everything somebody needs who goes to look, and nothing that is not known."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from visits.domain.lone_watch.watch_cautions import NO_REPLACEMENT
from visits.domain.lone_watch.watch_words import (
    Missed,
    Whereabouts,
    ask_mail,
    ask_sms,
    clock_words,
    first_lines,
    heard_words,
    place_lines,
    story_lines,
    tell_mail,
    tell_sms,
    try_mail,
    try_sms,
    well_mail,
)

LONDON = ZoneInfo("Europe/London")
NOON = datetime(2026, 7, 1, 12, tzinfo=UTC)
LINK = "https://trimops.example/watch/by/" + "x" * 43 + "/"
PLACE = Whereabouts(
    "Low Croft", "Down the track\nNowhere", "54.1", "-2.3", "Gate code 12", "0199 555 011", "GB"
)
MISSED = Missed(
    trimmer="Ada Trimmer",
    trimmer_phone="0199 555 010",
    place=PLACE,
    began_at=NOON - timedelta(hours=3),
    expected_end=NOON - timedelta(hours=1),
    asked_at=NOON - timedelta(minutes=10),
    heard_at=NOON - timedelta(minutes=5),
    last_cow_at=NOON - timedelta(minutes=80),
    is_by_plan=False,
    is_quiet_place=False,
    taken_by="",
    now=NOON,
    zone=LONDON,
)


def test_the_clock_is_the_businesss_own_and_names_another_day():
    assert clock_words(NOON, NOON, LONDON) == "13:00"
    assert clock_words(NOON - timedelta(days=1), NOON, LONDON) == "13:00 on Tue 30 Jun"


@pytest.mark.parametrize(
    ("minutes", "is_quiet", "said", "unsaid"),
    [
        (5, False, "in touch at 12:55, but nobody checked in", "no network"),
        (15, False, "in touch at 12:45", "no network"),
        (100, False, "since 11:20: it may have no network", "in touch"),
        (100, True, "known to have no network", "in touch"),
        (None, False, "Nothing was heard of the phone at all", "in touch"),
    ],
)
def test_a_missed_network_is_told_from_a_missed_check_in(minutes, is_quiet, said, unsaid):
    heard = None if minutes is None else NOON - timedelta(minutes=minutes)
    words = heard_words(replace(MISSED, heard_at=heard, is_quiet_place=is_quiet))
    assert said in words
    assert unsaid not in words


def test_work_that_may_still_lie_on_the_phone_is_said():
    assert "kept on it" in heard_words(replace(MISSED, heard_at=None))


def test_the_mail_holds_all_that_somebody_needs_who_goes_to_look():
    subject, body = tell_mail(MISSED, LINK)
    assert subject == "Ada Trimmer did not check in at Low Croft: please look"
    for part in (*first_lines(MISSED), *place_lines(PLACE), *story_lines(MISSED), LINK, NO_REPLACEMENT):
        assert part in body
    for part in ("0199 555 010", "0199 555 011", "geo:54.1,-2.3", "Down the track", "Gate code 12", "999"):
        assert part in body
    assert body.index("What to do first") < body.index("Where") < body.index("What is known")


def test_without_numbers_it_says_so():
    bare = replace(MISSED, trimmer_phone="", place=replace(PLACE, phone="", country="XX", access_notes=""))
    lines = " ".join(first_lines(bare))
    assert "no number is kept" in lines
    assert "if you know its number" in lines
    assert "the emergency number of the country" in lines
    assert "Getting in" not in " ".join(place_lines(bare.place))


def test_a_visit_of_the_plan_is_not_said_to_have_begun():
    told = " ".join(story_lines(replace(MISSED, is_by_plan=True, last_cow_at=None, asked_at=None)))
    assert "was to begin at 10:00" in told
    assert "Nobody has noted that it was begun." in told


def test_whoever_took_it_and_went_silent_is_named():
    assert "A. Neighbour said they see to it" in " ".join(
        story_lines(replace(MISSED, taken_by="A. Neighbour"))
    )


def test_an_sms_is_short_enough_to_arrive():
    """Three pieces of 153 letters (GSM 03.38, from memory) at most, with the longest names that are let in."""
    long = replace(MISSED, trimmer="T" * 120, place=replace(PLACE, farm="F" * 120))
    for text in (tell_sms(long, LINK), ask_sms(long, NOON, LINK), try_sms("T" * 120, LINK)):
        assert len(text) <= 3 * 153
        assert LINK in text


def test_the_trimmer_is_told_until_when_to_answer():
    subject, body = ask_mail(MISSED, NOON + timedelta(minutes=10), LINK)
    assert subject == "Are you well? Low Croft"
    assert "Answer by 13:10" in body
    assert LINK in body


def test_the_word_that_all_is_well_says_why():
    subject, body = well_mail("Ada Trimmer", "Ada Trimmer finished the visit at 12:10.")
    assert subject == "All is well: Ada Trimmer"
    assert body.startswith("Ada Trimmer finished the visit at 12:10.")


def test_a_test_is_said_to_be_one_before_anything_else():
    subject, body = try_mail("Ada Trimmer", "Ash & Rye", LINK)
    assert subject.startswith("TEST, nobody is missing")
    assert body.startswith("This is a test")
    assert try_sms("Ada", LINK).startswith("TEST, nobody is missing")
