from tests.visits.documents.ribbon_days import EMPTY_DAY, FULL_DAY
from trimops.paper.colours import Meaning
from visits.documents.ribbon_words import MEANING_WORDS, drive_words, told, visit_times, visit_work


def test_a_visit_is_told_by_its_times_cows_and_hygiene():
    visit = FULL_DAY.visits[0]
    assert visit_times(visit) == "08:30 to 11:35"
    assert visit_work(visit) == ("28 cows", "hygiene 0")


def test_a_drive_is_told_by_its_length_and_way():
    assert drive_words(FULL_DAY.drives[0]) == "drive 45 min, 31 km"


def test_the_whole_day_is_told_in_its_order():
    parts = told(FULL_DAY).split("; ")
    assert parts[:2] == [
        "07:40 drive 45 min, 31 km",
        "08:30 to 11:35 High Thornbeck, 28 cows, hygiene 0, done",
    ]
    assert "12:30 meal 30 min" in parts
    assert "13:55 free 20 min" in parts
    assert len(parts) == 11
    assert told(EMPTY_DAY) == ""


def test_every_meaning_has_a_word():
    assert set(MEANING_WORDS) == set(Meaning)
