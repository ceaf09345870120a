"""A cow over the wire and back is the same cow."""

import json

from hypothesis import given

from tests.visits.domain.cow_entries import COWS
from visits.domain.cow_entry_json import cow_entry_json
from visits.domain.crush_entry import SIGNS, CowEntry, FootEntry
from visits.domain.feet import Foot
from visits.domain.read_cow_entry import read_cow_entry


@given(COWS)
def test_what_is_written_is_read_back_exactly(entry):
    faults = []
    assert read_cow_entry(json.loads(json.dumps(cow_entry_json(entry))), "content.entry", faults) == entry
    assert faults == []


def test_every_key_is_there_even_of_an_empty_cow():
    told = cow_entry_json(CowEntry(feet=(FootEntry(Foot.LEFT_HIND),)))
    assert told.keys() == {
        *(
            "mobility_scale",
            "mobility_score",
            "belly_band_minutes",
            "crush_seconds",
            "note",
            "for_vet",
            "feet",
        )
    }
    (foot,) = told["feet"]
    measures = {"wall_mm", "wall_measured_from", "toe_angle", "look_again_days", "for_vet"}
    assert foot.keys() == {"foot", "findings", "actions", *measures, *SIGNS}
    assert (told["mobility_scale"], told["mobility_score"], foot["for_vet"]) == ("", None, "")
