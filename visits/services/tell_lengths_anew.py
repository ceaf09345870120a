"""Visits that have no hour yet are told the length that was learned since they were asked for."""

from django.db import transaction

from trimops.kernel.scope import Scope
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.selectors.expected_length import asked_of, expected_by
from visits.selectors.learned_rule import rule_in_use


@transaction.atomic
def tell_lengths_anew(*, scope: Scope) -> int:
    """How many wanted visits got another length. Planned and confirmed ones keep the hours that farms count on."""
    rule = rule_in_use(scope).rule
    rows = Visit.objects.within(scope).in_state(VisitState.WANTED).select_related("farm")
    changed = 0
    for visit in rows.select_for_update(of=("self",)).order_by("pk"):
        minutes = expected_by(rule, asked_of(visit)).minutes
        if minutes != visit.expected_minutes:
            visit.expected_minutes = minutes
            visit.full_clean()
            visit.save(update_fields=["expected_minutes"])
            changed += 1
    return changed
