"""A farm's name and place are taken out of what is kept of other farms: week plans, and why a visit moved."""

from django.db import transaction

from farms.models import Farm
from trimops.kernel.scope import Scope
from visits.domain.blot_farm import STAND_IN, Blot, blotted, blotted_text, without_name
from visits.models import HeldHour, LearnedLengths, Van, Visit, VisitEvent, WeekPlan

DOCUMENTS = ("problem", "travel", "plan", "change", "reasons", "left_by_hand")
SENTENCES = ("progress_text", "failure", "what_changed", "because")


@transaction.atomic
def forget_in_plans(*, farm: Farm) -> int:
    """Blot the farm out of every week plan, and what was learned of it alone out of the learned lengths.

    How many plans were changed. What its visits taught about all farms together stays until the next night's learning.
    """
    scope = Scope(farm.business_id)
    blot = Blot(f"farm-{farm.pk}", (farm.name,), _somewhere_else(scope))
    plans = WeekPlan.objects.within(scope)
    # One after the other: a plan holds a whole week's problem.
    changed = sum(_blot(plans.get(pk=key), blot) for key in list(plans.values_list("pk", flat=True)))
    _blot_events(scope, blot)
    _blot_words_of_others(farm, blot)
    for learned in LearnedLengths.objects.within(scope):
        if learned.rule.get("farms", {}).pop(str(farm.pk), None) is not None:
            learned.save()
    return changed


def _blot_events(scope: Scope, blot: Blot) -> None:
    """ "makes room for Low Croft" stands in the history of the visit that moved, of another farm."""
    events = VisitEvent.objects.within(scope)
    for word in blot.words:
        rows = events.filter(note__icontains=word).values_list("pk", "note")
        naming = [key for key, note in rows if blotted_text(note, blot) != note]
        events.filter(pk__in=naming).update(note=STAND_IN)


def _blot_words_of_others(farm: Farm, blot: Blot) -> None:
    """ "After Low Croft, gate code 4" was noted of another farm, and its gate has that code still."""
    for model, column in ((Visit, "note"), (Visit, "called_off_because"), (HeldHour, "note")):
        for word in blot.words:
            rows = (
                model.objects.within(farm.scope).exclude(farm=farm).filter(**{f"{column}__icontains": word})
            )
            for key, text in rows.values_list("pk", column):
                rows.filter(pk=key).update(**{column: without_name(text, blot)})


def _blot(plan: WeekPlan, blot: Blot) -> bool:
    fresh = {name: blotted(getattr(plan, name), blot) for name in DOCUMENTS}
    fresh |= {name: blotted_text(getattr(plan, name), blot) for name in SENTENCES}
    changes = {name: value for name, value in fresh.items() if value != getattr(plan, name)}
    for name, value in changes.items():
        setattr(plan, name, value)
    if changes:
        plan.save(update_fields=list(changes))
    return bool(changes)


def _somewhere_else(scope: Scope) -> tuple[float, float]:
    """A van's base: a place that the business has anyway."""
    van = Van.objects.within(scope).order_by("pk").first()
    return (float(van.base_latitude), float(van.base_longitude)) if van else (0.0, 0.0)
