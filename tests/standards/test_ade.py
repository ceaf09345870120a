"""Our animal-data JSON against the schemas of ICAR ADE 1.5.1 as re-typed in fixtures/ade (see the README there)."""

import json
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from referencing import Registry, Resource

from tests.visits.domain.ade.herds import BARE, BLOCKED, DAISY, LATER, UNCUT, herd_of, score_of, trim_of
from tests.visits.domain.cow_entries import COWS
from visits.documents.data_words import ade_files
from visits.domain.ade.documents import ade_documents
from visits.domain.crush_entry import FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "ade"
SCHEMAS = {path.name: json.loads(path.read_text()) for path in sorted(FOLDER.glob("*.schema.json"))}
REGISTRY = Registry().with_resources(
    (schema["$id"], Resource.from_contents(schema)) for schema in SCHEMAS.values()
)


@cache
def validator_of(kind, strict):
    """Of the schema of that name; strict: unknown properties too."""
    wanted = {"$ref": f"https://example.invalid/ade/{kind}.schema.json"}
    if strict:
        wanted["unevaluatedProperties"] = False
    return Draft202012Validator(wanted, registry=REGISTRY)


def faults_of(told, kind, *, strict=True):
    """What the schema says against it."""
    return [fault.message for fault in validator_of(kind, strict).iter_errors(told)]


def files_of(herd, **asked):
    """The documents as they are read back from the files that are handed over."""
    files = dict(ade_files(ade_documents(herd, LATER, **asked), herd.farm.name, LATER))
    del files["read me first.txt"]
    return {name.removesuffix(".json"): json.loads(content) for name, content in files.items()}


def is_on_its_sheet(entry):
    """The crush refuses a score that its sheet does not have."""
    scale, score = entry.mobility_scale, entry.mobility_score
    return scale is None or score is None or score in scale.scores


def everything():
    """Every lesion on every claw of every foot with every stage, every score of both sheets."""
    feet = [
        FootEntry(
            foot,
            findings=tuple(
                FindingEntry(lesion, claw, zone, 1 + number % 3, stage)
                for number, lesion in enumerate(LesionCode)
                for claw, zone, stage in (
                    (Claw.LATERAL, 4, None),
                    (Claw.MEDIAL, None, None),
                    (Claw.SKIN, 10, list(DDStage)[number % 6]),
                )
            ),
            actions=BLOCKED.actions,
            look_again_days=28,
        )
        for foot in Foot
    ]
    scores = [
        score_of(cow, score, key=number, scale=scale)
        for number, (cow, scale, score) in enumerate(
            (cow, scale, score) for cow in (DAISY, BARE) for scale in MobilityScale for score in scale.scores
        )
    ]
    walked_in = {"mobility_scale": MobilityScale.UK, "mobility_score": 0}
    lame = replace(BARE, key=418)
    scores.append(score_of(lame, 3, key=99))
    trims = [trim_of(DAISY, *feet, **walked_in), trim_of(BARE, UNCUT, key=2)]
    herd = herd_of(cows=[DAISY, BARE, lame], trims=trims, scores=scores)
    return files_of(herd)


DOCUMENTS = everything()


def test_the_schemas_themselves_are_in_order_and_say_what_they_are():
    for name, schema in SCHEMAS.items():
        Draft202012Validator.check_schema(schema)
        assert "1.5.1" in schema["$comment"], name
        assert "RE-TYPED" in schema["$comment"], name


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_document_and_all_that_is_in_it_fits_its_schema(name):
    document = DOCUMENTS[name]
    assert faults_of(document, "collection") == []
    assert document["member"], "nothing was tried"
    for told in document["member"]:
        assert faults_of(told, told["resourceType"]) == [], told.get("id", name)


@given(entries=st.lists(COWS.filter(is_on_its_sheet), min_size=1, max_size=3))
@settings(max_examples=8)
def test_whatever_is_noted_at_the_crush_fits(entries):
    trims = [replace(trim_of(DAISY, key=key), entry=entry) for key, entry in enumerate(entries)]
    told = files_of(herd_of(trims=trims))
    assert told["diagnoses"]["view"]["totalItems"] == sum(
        any(foot.findings for foot in entry.feet) for entry in entries
    )
    for document in told.values():
        for member in document["member"]:
            assert faults_of(member, member["resourceType"]) == []


def test_the_proposed_property_is_unknown_to_the_version_and_a_tolerant_reader_passes_over_it():
    (event,) = files_of(herd_of(trims=[trim_of(DAISY, BLOCKED)]), common_procedure=True)["treatments"][
        "member"
    ]
    assert any("commonProcedure" in fault for fault in faults_of(event, "icarTreatmentEventResource"))
    assert faults_of(event, "icarTreatmentEventResource", strict=False) == []


@pytest.mark.parametrize("score", [0, 10, 49])
def test_a_mobility_score_outside_one_to_nine_would_be_no_conformation_score(score):
    told = {
        **DOCUMENTS["diagnoses"]["member"][0],
        "resourceType": "icarConformationScoreEventResource",
        "traitScored": "Locomotion",
        "score": score,
    }
    assert faults_of(told, "icarConformationScoreEventResource", strict=False)


SPOILT = {
    "a local time": ("eventDateTime", "2026-03-02T10:41:00+01:00"),
    "no animal": ("animal", None),
    "an M-stage as a stage": ("diagnoses", [{"stage": "M2"}]),
    "a toe that the list does not have": ("diagnoses", [{"positions": [{"position": "LateralRearLeft"}]}]),
    "a severity of ours": ("diagnoses", [{"severity": "slight"}]),
    "an id without its scheme": ("animal", {"id": "UK123450600001"}),
    "a word of our own": ("lesions", []),
}


@pytest.mark.parametrize(("name", "value"), SPOILT.values(), ids=SPOILT)
def test_what_does_not_fit_is_found(name, value):
    spoilt = {**DOCUMENTS["diagnoses"]["member"][0], name: value}
    if value is None:
        del spoilt[name]
    assert faults_of(spoilt, "icarDiagnosisEventResource")
