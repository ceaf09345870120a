"""The address in an SMS behind which a farm's draft list lies, without signing in."""

from django.conf import settings
from django.urls import reverse

from trimops.tenancy.signed_numbers import numbers_of, signed_numbers
from trimops.tenancy.unscoped import unscoped
from visits.domain.visit_states import VisitState
from visits.models import Visit

WHAT = "draft list"
OPEN = (VisitState.PLANNED, VisitState.CONFIRMED, VisitState.UNDER_WAY)


def list_link(visit: Visit) -> str:
    """The whole address."""
    return settings.SITE_ADDRESS + reverse("list_by_link", args=[signed_numbers(WHAT, visit.pk)])


def visit_of_link(word: str) -> Visit | None:
    """The visit whose list the word opens, while it is ahead or under way; its farm, van and business at hand."""
    numbers = numbers_of(WHAT, word)
    if numbers is None:
        return None
    with unscoped("the word of a link is the key"):
        found = Visit.objects.select_related("farm", "van", "business").filter(pk=numbers[0]).first()
    is_open = found is not None and found.visit_state in OPEN and found.farm.erased_at is None
    return found if is_open else None
