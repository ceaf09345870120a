"""One farm as the generator walks through the months: its cows, those that leave and come, what is due and open."""

from dataclasses import dataclass, field
from datetime import date, timedelta
from random import Random

from trimops.portal.demo.chances import factor, happens, how_many, swing
from trimops.portal.demo.demo_files import FarmSketch, Rates
from trimops.portal.demo.invent_lesions import CowPast
from trimops.portal.demo.open_feet import OpenFeet
from trimops.portal.demo.past import Past
from visits.domain.recheck_due import RecheckFigures

WORKING_DAYS_PER_YEAR = 260
SAME_ROUND = timedelta(days=30)
ENOUGH_OF_A_ROUND = 0.04


@dataclass
class FarmState:
    """`herd_factor` is the farm's proneness to lesions, `horn` how hard its cows' horn is to cut.

    A cow keeps her number; one that left stays in `cows` and in `gone`, and a heifer that came has the next number.
    """

    number: int
    sketch: FarmSketch
    cows: list[CowPast]
    herd_factor: float
    horn: float
    next_routine: date
    feet: OpenFeet
    last_visit: date
    turns_on: date
    lame: dict[int, date] = field(default_factory=dict)
    gone: set[int] = field(default_factory=set)

    def present(self) -> list[int]:
        """The cows that are still there."""
        return [number for number in range(len(self.cows)) if number not in self.gone]

    def not_seen_in_this_round(self, day: date) -> int:
        return sum(self.cows[number].seen_on < day - SAME_ROUND for number in self.present())

    def round_goes_on(self, day: date) -> bool:
        """On a farm that has every cow trimmed: whether so many are left that the van comes back tomorrow."""
        left = self.not_seen_in_this_round(day)
        return self.sketch.whole_herd and left > ENOUGH_OF_A_ROUND * self.sketch.herd

    def some_leave(self, chance: Random, rates: Rates, past: Past, day: date) -> None:
        """Now and then a cow is sold or dies, and a heifer with her first calf comes in her place."""
        daily = rates.leaves_per_cow_year * self.sketch.herd / WORKING_DAYS_PER_YEAR
        for number in chance.sample(self.present(), how_many(chance, daily)):
            self.gone.add(number)
            self.lame.pop(number, None)
            self.feet.forget(number, day)
            past.left[self.number, number] = day
            past.came[self.number, len(self.cows)] = day
            self.cows.append(CowPast(factor(chance, rates.cow_spread), day))

    def reports_lame_cows(self, chance: Random, rates: Rates, day: date) -> None:
        """Now and then the farm rings about a lame cow."""
        daily = rates.urgent_per_cow_year * self.sketch.herd / WORKING_DAYS_PER_YEAR
        if happens(chance, daily):
            self.lame[chance.choice(self.present())] = day


def first_states(
    chance: Random, rates: Rates, sketches: list[FarmSketch], start: date, turns_on: date
) -> list[FarmState]:
    """The farms on the day before the history begins; what changes on them does so on `turns_on`."""
    found = [_state(chance, rates, number, sketch, start) for number, sketch in enumerate(sketches)]
    for state in found:
        state.turns_on = turns_on
    return found


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
        turns_on=start,
    )
