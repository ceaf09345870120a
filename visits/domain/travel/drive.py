"""One drive of the van, in the grain of the planner: a tenth of a minute and a metre."""

from dataclasses import dataclass

from visits.domain.travel.travel_figures import TravelFigures


@dataclass(frozen=True)
class Drive:
    """Minutes and kilometres from one place to another."""

    minutes: float
    km: float


@dataclass(frozen=True)
class CarLeg:
    """What a road map says of a car: seconds and metres."""

    seconds: float
    metres: float


NO_DRIVE = Drive(0, 0)


def estimated_drive(straight_km: float, figures: TravelFigures) -> Drive:
    """Without a road map: `straight_km` (geodesic) by circuity, and slow lanes before faster roads.

    Each further kilometre takes no longer than the one before it, so a drive is never longer than the same
    drive with a stop on the way.
    """
    km = straight_km * figures.circuity
    lane_kmh, main_kmh = min(figures.lane_kmh, figures.kmh), max(figures.main_road_kmh, figures.kmh)
    lanes = min(km, figures.lane_km)
    main = max(0.0, km - figures.main_road_after_km)
    hours = lanes / lane_kmh + (km - lanes - main) / figures.kmh + main / main_kmh
    return _as_driven(hours * 60, km, figures)


def road_drive(leg: CarLeg, figures: TravelFigures) -> Drive:
    """By the road map, whose times are a car's, with the trailer behind the van."""
    return _as_driven(leg.seconds / 60 * figures.trailer, leg.metres / 1000, figures)


def _as_driven(minutes: float, km: float, figures: TravelFigures) -> Drive:
    return Drive(round(minutes * figures.own_drives + figures.minutes_per_leg, 1), round(km, 3))
