"""Drawings of a paper on a page: one drawing code for both."""

from django import template
from django.utils.safestring import SafeString, mark_safe

from trimops.paper.to_svg import to_svg
from visits.documents.sole_drawing import SoleView, small_sole_drawing, sole_drawing

register = template.Library()

SMALL, LARGE = 12.0, 70.0


@register.filter
def sole_small(view: SoleView) -> SafeString:
    """The foot as in a row of the report."""
    return mark_safe(to_svg(small_sole_drawing(view, SMALL), "sole"))  # because: to_svg escapes all words


@register.filter
def sole_large(view: SoleView) -> SafeString:
    """The foot with its zones numbered."""
    return mark_safe(to_svg(sole_drawing(view, LARGE), "sole"))  # because: to_svg escapes all words
