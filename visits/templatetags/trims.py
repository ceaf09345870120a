"""Words of the trim for pages."""

from django import template

from visits.domain.mobility import MobilityScale

register = template.Library()


@register.filter
def scale_label(scale: str) -> str:
    """`"UK0-3"` is the score sheet "UK 0 to 3"."""
    return MobilityScale(scale).label if scale else ""
