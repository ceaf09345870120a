"""The cows, their lactations and the farm."""

from collections.abc import Iterator
from datetime import datetime

from farms.domain.cow_status import CowStatus
from visits.domain.ade.envelope import resource
from visits.domain.ade.herd_out import CowOut, FarmOut
from visits.domain.ade.identifiers import animal_id, location_id, other_animal_ids
from visits.domain.ade.lists import Json, JsonObject
from visits.domain.ade.moments import day_text

_LACTATION = {CowStatus.MILKING: "Lactating", CowStatus.DRY: "Dry"}


def animal(cow: CowOut, farm: FarmOut, told_at: datetime) -> JsonObject:
    """A cow as she stands on the farm's list now."""
    told: JsonObject = {
        **resource("AnimalCore", f"cow-{cow.key}", told_at),
        "location": dict(location_id(farm)),
        "identifier": dict(animal_id(cow)),
        "specie": "Cattle",
        "gender": "Male" if cow.status is CowStatus.BULL else "Female",
        "managementTag": cow.number,
    }
    others: list[Json] = [dict(known) for known in other_animal_ids(cow)]
    if others:
        told["alternativeIdentifiers"] = others
    if cow.born_on is not None:
        told["birthDate"] = day_text(cow.born_on)
    if cow.status in _LACTATION:
        told["lactationStatus"] = _LACTATION[cow.status]
    return told


def lactations(cow: CowOut, told_at: datetime) -> Iterator[JsonObject]:
    """One from each calving that is known; when it ended is not known here."""
    for calving in cow.calvings:
        told: JsonObject = {
            **resource("Lactation", f"calving-{calving.key}", told_at),
            "id": f"calving-{calving.key}",
            "animal": dict(animal_id(cow)),
            "beginDate": day_text(calving.day),
        }
        if calving.lactation is not None:
            told["parity"] = calving.lactation
        yield told


def location(farm: FarmOut, told_at: datetime) -> JsonObject:
    """The farm itself."""
    return {
        **resource("Location", f"farm-{farm.key}", told_at),
        "identifier": dict(location_id(farm)),
        "name": farm.name,
    }
