"""The sheet for the dashboard: one page, large, all of the day."""

from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader

from tests.visits.documents.sheet_days import MEAL, day, stop
from trimops.paper.colours import Meaning
from visits.documents.day_sheet import day_sheet

WORDY = {
    "way_in": "Second gate after the bridge, mind the dog, then left of the silage clamp. " * 4,
    "note": "Bring the long rope; the bull is out with the heifers. " * 4,
    "ring": "01632 960 001, H. Manager",
}


def pages_of(sheet):
    return PdfReader(BytesIO(day_sheet(sheet))).pages


def sizes_of(sheet):
    sizes = {}
    pages_of(sheet)[0].extract_text(
        visitor_text=lambda text, cm, tm, font, size: sizes.update({text.strip(): size})
    )
    return sizes


def test_a_stop_has_its_hour_farm_cows_drive_hygiene_number_way_in_and_note(text_of):
    full = stop(
        "Low Croft", lame=3, ring="01632 960 001", way_in="Mind the dog.", note="Long rope.", mark="re-check"
    )
    text = text_of(day_sheet(day(full)))
    for words in (
        "08:00 to 09:00",
        "Low Croft (re-check)",
        "14 cows, 3 of them lame or to re-check; drive 18 min, 12 km",
        "Hygiene: 1, usual",
        "Ring 01632 960 001",
        "Way in: Mind the dog.",
        "Long rope.",
    ):
        assert words in text


def test_the_round_and_what_to_load_stand_on_top(text_of):
    text = text_of(day_sheet(day(stop("A"), load=("crush", "water for A"))))
    assert "Van 1. Leave 07:00, home by 16:00, 59 km." in text
    assert "Load: crush; water for A." in text
    assert "Load:" not in text_of(day_sheet(day(stop("A"))))


def test_the_meal_stands_between_the_stops_it_lies_between(text_of):
    text = text_of(day_sheet(day(stop("Before", 1), stop("After", 6), meal=MEAL)))
    assert text.index("Before") < text.index("12:00 Meal, 30 min") < text.index("After")
    last = text_of(day_sheet(day(stop("Before", 1), meal=MEAL)))
    assert last.index("Before") < last.index("Meal")


def test_all_lame_is_said_as_all(text_of):
    assert "14 cows, all lame or to re-check" in text_of(day_sheet(day(stop("A", lame=14))))


@pytest.mark.parametrize("stops", [1, 4, 7, 9])
def test_it_is_one_page_however_much_there_is_to_say(stops):
    sheet = day(*(stop(f"Farm {n}", n, **WORDY) for n in range(stops)), meal=MEAL, load=("crush",) * 3)
    assert len(pages_of(sheet)) == 1


def test_a_usual_day_is_in_large_type():
    sizes = sizes_of(day(*(stop(f"Farm {n}", n, ring="01632") for n in range(4)), meal=MEAL))
    assert sizes["08:00"] >= 20
    assert sizes["Hygiene: 1, usual"] >= 13


def test_a_long_day_is_in_smaller_type_but_readable():
    sizes = sizes_of(day(*(stop(f"Farm {n}", n, **WORDY) for n in range(7)), meal=MEAL))
    assert 8 <= min(size for words, size in sizes.items() if words.startswith("14 cows")) < 13


def test_a_plan_that_is_only_proposed_says_so(text_of):
    assert "PROPOSED" in text_of(day_sheet(day(stop("A"), is_proposed=True)))
    assert "PROPOSED" not in text_of(day_sheet(day(stop("A"))))


def test_same_day_same_bytes_and_strange_names_are_safe(text_of):
    sheet = day(stop("A & <B>", meaning=Meaning.URGENT, note="<i>1 < 2</i>"))
    assert day_sheet(sheet) == day_sheet(sheet)
    assert "A & <B>" in text_of(day_sheet(sheet))
    assert "<i>1 < 2</i>" in text_of(day_sheet(sheet))


def test_a_time_without_a_zone_is_refused():
    with pytest.raises(ValueError, match="time zone"):
        day_sheet(replace(day(stop("A")), made_at=day(stop("A")).made_at.replace(tzinfo=None)))
