"""What the finished visits say about how long the next ones last is learned anew."""

from datetime import datetime, timedelta

from django.db import transaction

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.domain.arrival_windows.day_ahead import Spread
from visits.domain.arrival_windows.learn_drives import learn_drives
from visits.domain.visit_lengths.learn_lengths import Lesson, learn_lengths
from visits.domain.visit_lengths.rule_document import FORMAT, rule_document
from visits.models import BusinessFigures, LearnedLengths
from visits.selectors.business_figures import figures_of
from visits.selectors.driven_days import driven_days
from visits.selectors.learned_rule import DRIVES
from visits.selectors.length_history import finished_visits, length_history

LEARNED_ANEW = timedelta(days=7)
"""Even where no visit was finished since: a cow's entry may have been mended."""


def learn_visit_lengths(*, business: Business, at: datetime) -> LearnedLengths | None:
    """Keep what was learned; None where there is too little history. The same history leaves the row as it is.

    Not one transaction: nothing is held while it thinks, some seconds for a thousand visits.
    """
    scope = Scope(business.pk)
    row = LearnedLengths.objects.within(scope).first()
    taught_by = _taught_by(scope)
    if row and row.taught_by == taught_by and at - row.learned_at < LEARNED_ANEW:
        return row
    lesson = learn_lengths(length_history(scope), figures_of(scope).length)
    if lesson is None:
        return None
    fresh = _filled(LearnedLengths(business=business), lesson)
    fresh.drives, fresh.taught_by, fresh.learned_at = _drives(business, at), taught_by, at
    return _keep(fresh)


@transaction.atomic
def _keep(fresh: LearnedLengths) -> LearnedLengths:
    """In place of what was kept before."""
    LearnedLengths.objects.within(Scope(fresh.business_id)).delete()
    fresh.full_clean()
    fresh.save()
    return fresh


def _filled(row: LearnedLengths, lesson: Lesson) -> LearnedLengths:
    row.rule, row.visits = rule_document(lesson.rule), lesson.rule.visits
    row.held_out_visits = lesson.held_out.visits
    row.held_out_error = lesson.held_out.error
    row.held_out_flat_error = lesson.held_out.flat_error
    row.held_out_figures_error = lesson.held_out.figures_error
    row.held_out_kept = lesson.held_out.kept
    return row


def _drives(business: Business, at: datetime) -> dict[str, float]:
    days = driven_days(business, at)
    spread = learn_drives(Spread(), days.between, days.first_late)
    return {name: round(getattr(spread, name), 4) for name in DRIVES}


def _taught_by(scope: Scope) -> dict[str, object]:
    """What tells one history from another, cheaply."""
    rows = finished_visits(scope)
    newest = rows.last()
    figures = BusinessFigures.objects.within(scope).first()
    return {
        "form": FORMAT,
        "visits": rows.count(),
        "newest": newest.finished_at.isoformat() if newest and newest.finished_at else None,
        "figures": figures.visit_length if figures else {},
    }
