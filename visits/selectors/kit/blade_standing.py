"""Where a blade stands by all that was ever said of it."""

from datetime import time

from trimops.kernel.clock import at_local
from visits.domain.kit.blade_kinds import BladeFault, BladeState, TurnPart
from visits.domain.kit.blade_life import BladeWord, Standing, blade_standing
from visits.models import Blade, BladeEvent, BladeSaid, Sharpening


def standing_of(blade: Blade) -> Standing:
    """By its events, the words at the crush and its sharpenings. Three queries; one more for its business."""
    zone = blade.business.zone
    return blade_standing(
        [*_events(blade), *_said(blade), *_sharpened(blade)], at_local(blade.bought_on, time(0), zone)
    )


def open_faults_of(blade: Blade) -> frozenset[BladeFault]:
    """The dangers that nobody has put right."""
    return standing_of(blade).open_faults


def _events(blade: Blade) -> list[BladeWord]:
    rows = BladeEvent.objects.within(blade.scope).filter(blade=blade)
    return [
        BladeWord(row.at, BladeState(row.state), BladeFault(row.fault) if row.fault else None) for row in rows
    ]


def _said(blade: Blade) -> list[BladeWord]:
    rows = BladeSaid.objects.within(blade.scope).filter(blade=blade).select_related("turn")
    return [BladeWord(row.turn.at, TurnPart(row.part)) for row in rows]


def _sharpened(blade: Blade) -> list[BladeWord]:
    moments = Sharpening.objects.within(blade.scope).filter(blade=blade).values_list("at", flat=True)
    return [BladeWord(at, None) for at in moments]
