"""Lesions seen go out as what they are: seen."""

from dataclasses import replace

import pytest

from tests.visits.domain.ade.herds import BLOCKED, DAISY, DERMATITIS, FARM, ULCER, UNCUT, trim_of
from visits.domain.ade.diagnoses import lesions_seen
from visits.domain.feet import Claw


def told_of(*findings):
    foot = replace(BLOCKED, findings=findings)
    event = lesions_seen(FARM, DAISY, trim_of(DAISY, foot))
    return event, event["diagnoses"]


def test_every_event_says_that_it_is_no_veterinary_diagnosis():
    event, _ = told_of(ULCER)
    assert event["remark"] == "seen at trim, not a veterinary diagnosis"


def test_a_sole_ulcer_is_on_the_outer_toe_in_its_zone_of_the_map():
    _, (ulcer,) = told_of(ULCER)
    assert ulcer["positions"] == [{"position": "OuterToeRearRight"}]
    assert ulcer["site"] == "ILC zone 4 (where sole meets heel)"
    assert ulcer["diagnosisCode"] == {"id": "SU", "scheme": "x.trimops.icar-claw-atlas-2020"}


def test_a_stage_of_dermatitis_is_described_and_is_never_a_stage_of_the_exchange():
    _, (sore,) = told_of(DERMATITIS)
    assert sore["description"] == "stage M2 (raw sore, over 2 cm)"
    assert "stage" not in sore
    assert sore["positions"] == [{"position": "LegsRearRight"}]


@pytest.mark.parametrize(("severity", "word"), [(1, "Light"), (2, "Moderate"), (3, "Severe")])
def test_severity_is_told_as_a_word_and_as_the_number_noted(severity, word):
    _, (told,) = told_of(replace(ULCER, severity=severity))
    assert (told["severity"], told["severityScore"]) == (word, severity)


def test_a_place_that_was_not_noted_is_not_told():
    _, (told,) = told_of(replace(ULCER, zone=None))
    assert "site" not in told


def test_two_lesions_of_a_foot_have_two_ids():
    _, found = told_of(ULCER, replace(ULCER, claw=Claw.MEDIAL))
    assert [told["id"] for told in found] == ["lesions-1-RH-1", "lesions-1-RH-2"]


def test_a_cow_without_a_lesion_makes_no_event():
    assert lesions_seen(FARM, DAISY, trim_of(DAISY, UNCUT)) is None
