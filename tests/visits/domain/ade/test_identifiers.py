"""Names that the outside can use, and none that claims to be registered when it is not."""

from dataclasses import replace

import pytest

from tests.visits.domain.ade.herds import BARE, DAISY, FARM
from visits.domain.ade.identifiers import (
    animal_id,
    lesion_id,
    location_id,
    other_animal_ids,
    score_sheet_id,
)
from visits.domain.lesions import LesionCode
from visits.domain.mobility import MobilityScale


def test_a_cow_goes_by_her_uk_tag():
    assert animal_id(DAISY) == {"id": "UK123450600001", "scheme": "uk.cts.eartag"}


@pytest.mark.parametrize("tag", ["IE371234590123", "UKAB123", "no tag at all"])
def test_another_tag_is_not_said_to_be_a_uk_one(tag):
    assert animal_id(replace(DAISY, tag=tag)) == {"id": tag, "scheme": "x.trimops.official-tag"}


def test_a_cow_without_a_tag_goes_by_our_key_since_two_cows_may_wear_one_number():
    twin = replace(BARE, key=418)
    assert animal_id(BARE) == {"id": "417", "scheme": "x.trimops.cow"}
    assert animal_id(twin) != animal_id(BARE)


def test_what_else_she_goes_by_is_told_once():
    assert other_animal_ids(DAISY) == [
        {"id": "416", "scheme": "x.trimops.cow"},
        {"id": "826123450600001", "scheme": "x.trimops.iso-11784"},
    ]
    assert other_animal_ids(BARE) == []


def test_atlas_codes_score_sheets_and_the_farm_go_by_schemes_of_our_own():
    own = [lesion_id(LesionCode.SU), score_sheet_id(MobilityScale.UK), location_id(FARM)]
    assert all(known["scheme"].startswith("x.trimops.") for known in own)
    assert len({known["scheme"] for known in own}) == 3
    assert own[0]["id"] == "SU"
