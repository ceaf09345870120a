"""One farm as the generator walks through the months: its cows, what is due, what is open."""

from dataclasses import dataclass, field
from datetime import date, timedelta
from random import Random

from trimops.portal.demo.chances import factor, happens, swing
from trimops.portal.demo.demo_files import FarmSketch, Rates
from trimops.portal.demo.invent_lesions import CowPast
from trimops.portal.demo.open_feet import OpenFeet
from trimops.portal.demo.past import Past
from visits.domain.recheck_due import RecheckFigures


@dataclass
class FarmState:
    """`herd_factor` is the farm's proneness to lesions, `horn` how hard its cows' horn is to cut."""

    number: int
    sketch: FarmSketch
    cows: list[CowPast]
    herd_factor: float
    horn: float
    next_routine: date
    feet: OpenFeet
    last_visit: date
    lame: dict[int, date] = field(default_factory=dict)

    def reports_lame_cows(self, chance: Random, rates: Rates, day: date) -> None:
        """Now and then the farm rings about a lame cow."""
        daily = rates.urgent_per_cow_year * len(self.cows) / 260
        if happens(chance, daily):
            self.lame[chance.randrange(len(self.cows))] = day


def first_states(chance: Random, rates: Rates, sketches: list[FarmSketch], start: date) -> list[FarmState]:
    """The farms on the day before the history begins."""
    return [_state(chance, rates, number, sketch, start) for number, sketch in enumerate(sketches)]


def attach(states: list[FarmState], past: Past, rates: Rates) -> None:
    """Give every farm its memory of open feet, written into `past`."""
    for state in states:
        state.feet = OpenFeet(state.number, past, RecheckFigures(), rates.farm_looks_itself)


def _state(chance: Random, rates: Rates, number: int, sketch: FarmSketch, start: date) -> FarmState:
    cows = [
        CowPast(factor(chance, rates.cow_spread), start - timedelta(days=chance.randrange(1, 240)))
        for _ in range(sketch.herd)
    ]
    return FarmState(
        number=number,
        sketch=sketch,
        cows=cows,
        herd_factor=factor(chance, rates.herd_spread),
        horn=swing(chance, rates.hidden_length.horn_farm_spread),
        next_routine=start + timedelta(days=chance.randrange(sketch.interval_days)),
        feet=OpenFeet(number, Past(), RecheckFigures(), rates.farm_looks_itself),
        last_visit=start - timedelta(days=1),
    )
