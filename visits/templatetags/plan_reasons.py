"""Reasons of a plan, looked up in a page."""

from django import template

from visits.models import Visit
from visits.selectors.plan_reasons import PlanReasons, Why

register = template.Library()


@register.filter
def why_of(reasons: PlanReasons | None, visit: Visit) -> Why | None:
    """`reasons|why_of:visit`: what is known of that visit; None without reasons or for a visit they do not know."""
    return reasons.why(visit.pk) if reasons else None
