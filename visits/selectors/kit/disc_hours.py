"""The hours of a disc, from the log."""

from visits.domain.kit.blade_hours import BladeHours, blade_hours
from visits.domain.kit.blade_kinds import BladeFault, BladeKind, BladeState
from visits.models import Blade
from visits.selectors.kit.blade_logs import BladeLogs

REPLACED = (BladeFault.WORN, BladeFault.CRACKED, BladeFault.CHIPPED)
"""A word "in use" on one of these says of a disc that a new one is in its place."""


def disc_hours(logs: BladeLogs, blade: Blade) -> BladeHours | None:
    """Since it was bought or replaced last. None for a blade that no grinder turns and that has no limit of hours."""
    limit = float(blade.hours_limit) if blade.hours_limit else None
    if limit is None and not BladeKind(blade.kind).is_turned:
        return None
    log = logs.logs[blade.pk]
    replaced = [word.at for word in log.words if word.says is BladeState.IN_USE and word.fault in REPLACED]
    return blade_hours(logs.cows.get(blade.pk, ()), max(replaced, default=log.known_since), limit)
