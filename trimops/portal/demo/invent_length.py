"""How long a visit really took. Its causes are drawn here and told to nobody: the planning figures do not see them."""

from random import Random

from trimops.portal.demo.chances import happens, swing
from trimops.portal.demo.demo_files import FarmSketch, HiddenLength
from visits.domain.visit_length import FarmSetup, LengthFigures, expected_length


def expected_minutes(sketch: FarmSketch, heads: int, corrective: int) -> int:
    """What the planning figures say, by the defaults of the domain."""
    setup = FarmSetup(
        crush_on_site=sketch.crush == "on_site",
        has_hard_standing=sketch.hard_standing,
        has_water=sketch.water,
        has_power=sketch.power != "none",
        has_light=sketch.light,
        hygiene_level=sketch.hygiene,
    )
    return expected_length(
        LengthFigures(), setup, head_count=heads, corrective_count=min(corrective, heads)
    ).minutes


def real_minutes(
    chance: Random, hidden: HiddenLength, expected: float, weather: float, gates: float
) -> float:
    """`expected` as weather, gates, a missing helper, kit trouble and the rest of life leave it."""
    minutes = expected * weather * gates * swing(chance, hidden.rest_spread)
    if happens(chance, hidden.no_helper):
        minutes *= hidden.no_helper_factor
    if happens(chance, hidden.kit_trouble):
        minutes += hidden.kit_trouble_minutes * chance.random() * 2
    return round(minutes, 1)
