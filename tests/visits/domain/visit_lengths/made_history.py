"""A made-up history whose true figures are known, to see whether they are found again."""

from datetime import date, timedelta
from random import Random

from visits.domain.visit_length import FarmSetup
from visits.domain.visit_lengths.finished_visit import Asked, FinishedVisit, Work

FIRST_DAY = date(2026, 1, 5)
BROUGHT, ON_SITE = FarmSetup(), FarmSetup(crush_on_site=True)


def made_visit(farm=1, minutes=200.0, cows=20, corrective=2, blocks=0, **changes):
    asked = Asked(farm, changes.pop("van", 1), changes.pop("setup", BROUGHT), cows, corrective)
    work = Work(cows - corrective, corrective, 0, blocks)
    return FinishedVisit(asked, changes.pop("day", FIRST_DAY), minutes, work)


def made_history(visits=300, farms=12, pace=9.0, noise=0.08, seed=1, farm_spread=1.5):
    """Visits of `pace` minutes a cow and 60 a visit, farms differing by `farm_spread` minutes a cow."""
    chance = Random(seed)
    own = {farm: chance.gauss(0, farm_spread) for farm in range(1, farms + 1)}
    found = []
    for number in range(visits):
        farm, cows = chance.randrange(1, farms + 1), chance.randrange(4, 40)
        lame = chance.randrange(0, 4)
        minutes = (60 + (pace + own[farm]) * cows + 5 * lame) * (1 + chance.gauss(0, noise))
        day = FIRST_DAY + timedelta(days=number // 2)
        found.append(made_visit(farm, max(20.0, minutes), cows, lame, day=day, van=1 + farm % 2))
    return found, own
