"""The parts a visit's length is made of, and what is thought of each before anything was seen.

The means are the business's own figures over the published and usual ones (`visit_length.py`, where their sources
stand). How far a business may differ from them, as a standard deviation in minutes: a cow 3 (practice says 6 to 10 for
a functional trim; 11.1 to 15.9 were measured, Pesenhofer 2006), a lame cow 4, the others a good quarter (common
practice, no source). A block: glue holds after 1 to 3 min (Cramer 2015), so 3 +- 2 on top of the lame cow. A cow only
looked at: 5 +- 2 (common practice, no source).
"""

from dataclasses import dataclass

from visits.domain.visit_length import FarmSetup, LengthFigures
from visits.domain.visit_lengths.finished_visit import Work
from visits.domain.visit_lengths.mixed_rows import CommonPrior, Sparse

PARTS = (
    "set_up_brought",
    "set_up_on_site",
    "pack_up",
    "functional_cow",
    "corrective_cow",
    "check_cow",
    "block",
    "wash_down",
    "wash_down_dermatitis",
    "wash_down_restricted",
    "no_hard_standing",
    "no_water",
    "no_power",
    "no_light",
)
DEVIATIONS = (7.0, 5.0, 5.0, 3.0, 4.0, 2.0, 2.0, 5.0, 8.0, 10.0, 5.0, 5.0, 4.0, 4.0)
CHECK_COW, BLOCK = 5.0, 3.0
TRIMMER_PACE = 1.0
"""Standard deviation of a van's (its trimmer's) minutes per cow about the business's (common practice, no source)."""

COLUMN = {name: at for at, name in enumerate(PARTS)}


@dataclass(frozen=True)
class Vans:
    """The vans that have a column of their own, after the parts."""

    keys: tuple[int, ...]

    @property
    def columns(self) -> int:
        return len(PARTS) + len(self.keys)

    def column(self, van: int | None) -> int | None:
        """None for a van that was never seen."""
        return len(PARTS) + self.keys.index(van) if van in self.keys else None


def amounts(setup: FarmSetup, work: Work) -> dict[str, float]:
    """How much of each part a visit has; parts it has none of are left out."""
    found = {
        "set_up_on_site" if setup.crush_on_site else "set_up_brought": 1.0,
        "functional_cow": work.functional,
        "corrective_cow": work.corrective,
        "check_cow": work.check,
        "block": work.blocks,
        "pack_up": 1.0,
        _wash_down(setup.hygiene_level): 1.0,
        "no_hard_standing": float(not setup.has_hard_standing),
        "no_water": float(not setup.has_water),
        "no_power": float(not setup.has_power),
        "no_light": float(not setup.has_light),
    }
    return {name: amount for name, amount in found.items() if amount}


def columns_of(setup: FarmSetup, work: Work, vans: Vans, van: int | None) -> Sparse:
    """The common columns of a visit: its parts, and its van's pace times the cows."""
    parts = tuple((COLUMN[name], amount) for name, amount in amounts(setup, work).items())
    column = vans.column(van)
    return parts if column is None else (*parts, (column, work.cows))


def prior_of(figures: LengthFigures, vans: Vans) -> CommonPrior:
    """What is thought of each column beforehand."""
    means = tuple(float(getattr(figures, name, USUAL.get(name, 0.0))) for name in PARTS)
    deviations = (*DEVIATIONS, *(TRIMMER_PACE for _ in vans.keys))
    return CommonPrior(
        (*means, *(0.0 for _ in vans.keys)), tuple(1 / deviation**2 for deviation in deviations)
    )


USUAL = {"check_cow": CHECK_COW, "block": BLOCK}


def _wash_down(level: int) -> str:
    if level >= 3:
        return "wash_down_restricted"
    return "wash_down_dermatitis" if level == 2 else "wash_down"
