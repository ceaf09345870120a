"""A business's own marks for the work itself: measures of the claw, the belly band, how many feet are lifted."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass

from visits.domain.own_figures import FigureRefused, with_own_figures

LONGEST_LANDMARK = 40
MOST_FEET = 4


@dataclass(frozen=True)
class TrimFigures:
    """A business's own marks. Sources disagree on the shortest safe wall (75 mm Toussaint Raven; 90 mm fits
    96 % of claws, Archer 2015), so it is a setting with its landmark, never an alarm."""

    shortest_wall_mm: int = 75
    wall_measured_from: str = "where the horn turns hard"
    toe_angle_from: int = 45
    toe_angle_to: int = 55
    belly_band_minutes: int = 15  # common practice, no source: no limit is published
    feet_lifted: int = MOST_FEET  # of a cow that walks sound: four, or the hind feet alone

    @classmethod
    def from_overrides(cls, overrides: Mapping[str, object]) -> "TrimFigures":
        """The usual marks with a business's own; FigureRefused names the faulty one and says what to mend."""
        numbers = {name: value for name, value in overrides.items() if name != "wall_measured_from"}
        found = with_own_figures(cls(), numbers)
        _check_numbers(found)
        if "wall_measured_from" not in overrides:
            return found
        return cls(**{**asdict(found), "wall_measured_from": _landmark(overrides["wall_measured_from"])})


def _check_numbers(figures: TrimFigures) -> None:
    for name, value in asdict(figures).items():
        if isinstance(value, float):
            raise FigureRefused(f"{name}: must be a whole number")
    if figures.toe_angle_to < figures.toe_angle_from:
        raise FigureRefused("toe_angle_to: must not be below toe_angle_from")
    if not 1 <= figures.feet_lifted <= MOST_FEET:
        raise FigureRefused(f"feet_lifted: must be from 1 to {MOST_FEET}")


def _landmark(text: object) -> str:
    if not isinstance(text, str) or not text.strip():
        raise FigureRefused("wall_measured_from: say in words from where the wall is measured")
    if len(text.strip()) > LONGEST_LANDMARK:
        raise FigureRefused(f"wall_measured_from: must be at most {LONGEST_LANDMARK} letters")
    return text.strip()
