"""A farm goes out of a stored document; the document stays one."""

import pytest

from visits.domain.blot_farm import STAND_IN, Blot, blotted, blotted_text, without_name

BLOT = Blot("farm-7", ("Low Croft",), (54.0, -2.4))
PLAN = {
    "sites": [
        {"id": "farm-7", "lat": 54.123, "lon": -2.345, "hygiene": 1},
        {"id": "farm-70", "lat": 54.5, "lon": -2.5, "hygiene": 1},
    ],
    "jobs": [{"id": "visit-3", "site": "farm-7", "minutes": 90}],
    "notes": ["Van 1 runs late at low croft", "Van 1 waits", None, 3, 2.5, True],
    "by name": {"Low Croft": 1},
}


def test_the_farms_place_is_another_one_and_every_other_stays():
    first, second = blotted(PLAN, BLOT)["sites"]
    assert first == {"id": "farm-7", "lat": 54.0, "lon": -2.4, "hygiene": 1}
    assert second == PLAN["sites"][1]


def test_a_sentence_that_names_the_farm_says_nothing_any_more_however_it_was_written():
    assert blotted(PLAN, BLOT)["notes"] == [STAND_IN, "Van 1 waits", None, 3, 2.5, True]
    assert blotted(PLAN, BLOT)["by name"] == {STAND_IN: 1}


def test_the_jobs_of_the_plan_can_still_be_read():
    assert blotted(PLAN, BLOT)["jobs"] == PLAN["jobs"]


def test_a_document_without_the_farm_is_left_as_it_is():
    other = {"sites": [PLAN["sites"][1]], "words": ["High Croft"]}
    assert blotted(other, BLOT) == other
    assert blotted(None, BLOT) is None
    assert blotted_text("", BLOT) == ""


@pytest.mark.parametrize("name", ["Start", "Van", "Site", "Farm", "London", "start", "ash"])
def test_a_farm_called_by_a_word_of_the_program_takes_no_key_and_no_code_with_it(name):
    blot = Blot("farm-7", (name,), (54.0, -2.4))
    plan = {
        "start": "van-1-2026-03-02",
        "sites": [],
        "kind": "start",
        "id": "farm-8",
        "timezone": "Europe/London",
        "note": "washed, done",
    }
    assert blotted(plan, blot) == plan
    assert blotted_text(f"Van 1 runs late at {name} until 12:00", blot) == STAND_IN


def test_a_name_alone_goes_from_a_document_as_well():
    assert blotted(["(Low)", "LOW"], Blot("farm-7", ("Low",), (54.0, -2.4))) == [STAND_IN, "LOW"]


def test_what_is_said_of_another_farm_stays():
    assert without_name("After LOW CROFT: gate code 4", BLOT) == "After an erased farm: gate code 4"
    assert without_name("Low Crofters' lane", BLOT) == "Low Crofters' lane"
