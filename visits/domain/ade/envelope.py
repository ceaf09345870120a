"""What every resource carries. `resourceType` is the name of the schema file without its ending, the form since 1.3."""

from datetime import datetime

from visits.domain.ade.herd_out import CowOut, FarmOut
from visits.domain.ade.identifiers import OWN, animal_id, location_id
from visits.domain.ade.lists import JsonObject
from visits.domain.ade.moments import instant_text

RESPONSIBLE = "foot trimmer"


def resource(kind: str, source_id: str, modified: datetime) -> JsonObject:
    """The head of any resource: what it is, whose system it comes from, when it was last written there."""
    return {
        "resourceType": f"icar{kind}Resource",
        "meta": {"source": OWN, "sourceId": source_id, "modified": instant_text(modified)},
    }


def animal_event(kind: str, key: str, farm: FarmOut, cow: CowOut, at: datetime, source: str) -> JsonObject:
    """The head of something that happened to one animal."""
    return {
        **resource(kind, source, at),
        "id": key,
        "location": dict(location_id(farm)),
        "animal": dict(animal_id(cow)),
        "eventDateTime": instant_text(at),
        "responsible": RESPONSIBLE,
    }
