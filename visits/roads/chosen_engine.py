"""Which road map an installation uses."""

from visits.roads.local_engine import local_engine
from visits.roads.road_engine import RoadEngine, RoadsUnavailable
from visits.roads.roads_server import roads_server


def chosen_engine(*, file: str, address: str) -> RoadEngine | None:
    """The map of this machine where one is named, else the server; None where neither is.

    A map that is named but cannot be used gives way to the server; without a server RoadsUnavailable says why.
    """
    if not file:
        return roads_server(address) if address else None
    try:
        return local_engine(file)
    except RoadsUnavailable:
        if not address:
            raise
        return roads_server(address)
