"""How long the drives of a problem document take."""

import json
from dataclasses import dataclass
from datetime import timedelta
from functools import cached_property

from visits.domain.planning.measures import minutes
from visits.domain.planning.problem import Travel
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.replan.broken_promises import Document, parts


@dataclass(frozen=True)
class Drives:
    """Drives between bases and sites of `document`, by their ids. Its jobs and shifts are not read."""

    document: Document

    @cached_property
    def _places(self) -> dict[str, int]:
        places = [str(place["id"]) for key in ("bases", "sites") for place in parts(self.document, key)]
        return {place: at for at, place in enumerate(places)}

    @cached_property
    def _travel(self) -> Travel:
        return read_problem(json.dumps({**self.document, "jobs": [], "shifts": []})).travel

    def between(self, start: str, end: str) -> timedelta:
        """The drive from `start` to `end`. KeyError where the document has no such place."""
        times = self._travel.times[self._places[start]][self._places[end]]
        return timedelta(minutes=minutes(times))
