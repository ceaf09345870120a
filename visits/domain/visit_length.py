"""How long a visit will take, and out of what parts.

Minutes per cow: 15.9 ± 4.4 in a walk-in crush and 11.1 ± 3.5 on a tilt table were measured (Pesenhofer 2006,
207 cattle); a lone trimmer with a good hydraulic crush says 6 to 10. Setting up 20 to 30 min and a wash-down
of 30 to 45 min: common practice, no source. All are a business's own figures.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from visits.domain.own_figures import with_own_figures


@dataclass(frozen=True)
class LengthFigures:
    """Minutes."""

    set_up_brought: float = 25
    set_up_on_site: float = 10
    pack_up: float = 15
    functional_cow: float = 7
    corrective_cow: float = 13
    wash_down: float = 15
    wash_down_dermatitis: float = 30
    wash_down_restricted: float = 45
    no_hard_standing: float = 10
    no_water: float = 10
    no_power: float = 5
    no_light: float = 5

    @classmethod
    def from_overrides(cls, own: Mapping[str, object]) -> "LengthFigures":
        """The defaults with a business's own minutes; `FigureRefused` names what to mend."""
        return with_own_figures(cls(), own)


@dataclass(frozen=True)
class FarmSetup:
    """What the farm has to work with, and its hygiene level 0 to 3."""

    crush_on_site: bool = False
    has_hard_standing: bool = True
    has_water: bool = True
    has_power: bool = True
    has_light: bool = True
    hygiene_level: int = 1


@dataclass(frozen=True)
class ExpectedLength:
    """Whole minutes and the parts they come from, in words."""

    minutes: int
    parts: tuple[tuple[str, float], ...]


def expected_length(
    figures: LengthFigures, setup: FarmSetup, *, head_count: int, corrective_count: int
) -> ExpectedLength:
    """Minutes on the farm for so many cows, of which so many lame or re-checked. ValueError on impossible counts."""
    if not 0 <= corrective_count <= head_count:
        raise ValueError(f"{corrective_count} lame or re-checked of {head_count} cows cannot be")
    functional = head_count - corrective_count
    parts = [
        ("setting up", figures.set_up_on_site if setup.crush_on_site else figures.set_up_brought),
        (f"{functional} cows to trim", functional * figures.functional_cow),
        (f"{corrective_count} lame or re-checked", corrective_count * figures.corrective_cow),
        ("packing up", figures.pack_up),
        ("washing down", _wash_down(figures, setup)),
        ("no hard standing", 0 if setup.has_hard_standing else figures.no_hard_standing),
        ("no water at the place", 0 if setup.has_water else figures.no_water),
        ("no power", 0 if setup.has_power else figures.no_power),
        ("no light", 0 if setup.has_light else figures.no_light),
    ]
    kept = tuple((words, minutes) for words, minutes in parts if minutes)
    return ExpectedLength(math.ceil(sum(minutes for _, minutes in kept)), kept)


def _wash_down(figures: LengthFigures, setup: FarmSetup) -> float:
    if setup.hygiene_level >= 3:
        return figures.wash_down_restricted
    return figures.wash_down_dermatitis if setup.hygiene_level == 2 else figures.wash_down
