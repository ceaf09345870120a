"""The drives that a business has really driven, beside what planning would allow without its own stretch."""

from collections.abc import Sequence
from datetime import datetime

from trimops.accounts.models import Business
from visits.domain.arrival_windows.learn_drives import Driven
from visits.domain.travel.own_drives import DrivenGap
from visits.domain.travel.travel_figures import TravelFigures
from visits.selectors.driven_days import driven_days


def driven_gaps(business: Business, figures: TravelFigures, at: datetime) -> list[DrivenGap]:
    """Of the last year. Getting away and parking is taken off both, since the stretch does not apply to it."""
    return gaps_of(driven_days(business, at).between, figures)


def gaps_of(drives: Sequence[Driven], figures: TravelFigures) -> list[DrivenGap]:
    """The drives as `own_drives_factor` wants them; `figures` are those by which they were reckoned."""
    away = figures.minutes_per_leg
    return [DrivenGap(drive.really - away, (drive.reckoned - away) / figures.own_drives) for drive in drives]
