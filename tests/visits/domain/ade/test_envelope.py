"""The head of a resource."""

from tests.visits.domain.ade.herds import AT, DAISY, FARM
from visits.domain.ade.envelope import animal_event, resource


def test_the_kind_is_the_name_of_the_schema_file():
    assert resource("Location", "farm-7", AT)["resourceType"] == "icarLocationResource"


def test_an_event_says_which_animal_where_when_and_from_whose_system():
    told = animal_event("DiagnosisEvent", "lesions-1", FARM, DAISY, AT, "uid")
    assert told["animal"] == {"id": "UK123450600001", "scheme": "uk.cts.eartag"}
    assert told["location"] == {"id": "7", "scheme": "x.trimops.farm"}
    assert told["eventDateTime"] == "2026-03-02T10:41:00Z"
    assert told["meta"] == {"source": "x.trimops", "sourceId": "uid", "modified": "2026-03-02T10:41:00Z"}
