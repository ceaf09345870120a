"""What a writing says, as the JSON that is kept of it. The way back: test_read_content.py."""

from datetime import UTC, datetime
from decimal import Decimal
from uuid import UUID

from visits.domain.crush_entry import CowEntry
from visits.domain.writing_content import (
    BladeContent,
    CowContent,
    KitContent,
    NewCow,
    SignOffContent,
    WashContent,
    content_json,
)


def test_a_cow_says_which_one_she_is():
    assert content_json(CowContent(412, CowEntry()))["cow"] == {"id": 412}
    new = NewCow(UUID(int=1), "900", True)
    assert content_json(CowContent(new, CowEntry()))["cow"] == {
        "new": {"uid": str(UUID(int=1)), "number": "900", "is_another": True}
    }


def test_numbers_are_text_so_that_nothing_is_rounded_on_the_way():
    assert content_json(KitContent(7, Decimal("2.00"))) == {"consumable": 7, "extra": "2.00"}
    washed = WashContent("peracetic acid", "1:100", Decimal(5), datetime(2026, 3, 2, 9, tzinfo=UTC))
    assert content_json(washed) == {
        "substance": "peracetic acid",
        "dilution": "1:100",
        "contact_minutes": "5",
        "washed_at": "2026-03-02T09:00:00+00:00",
        "consumable": None,
        "litres": None,
    }


def test_a_turn_of_the_blades_says_each_list_even_an_empty_one():
    said = BladeContent((7, 8), (9,), (), (), datetime(2026, 3, 2, 9, tzinfo=UTC))
    assert content_json(said) == {
        "in_hand": [7, 8],
        "went_dull": [9],
        "cracked": [],
        "chipped": [],
        "at": "2026-03-02T09:00:00+00:00",
    }


def test_a_sign_off_says_all_its_words():
    assert content_json(SignOffContent("H. M.", "all", "none", True, "")) == {
        "received_by": "H. M.",
        "was_done": "all",
        "farm_to_do": "none",
        "washed_down": True,
        "hygiene_note": "",
    }
