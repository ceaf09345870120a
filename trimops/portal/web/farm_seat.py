"""At which of their farms a farm client sits, kept in the session."""

from django.http import HttpRequest

from farms.models import Farm, FarmAccess
from farms.web.seat_middleware import BUSINESS_KEY, FARM_KEY
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.portal.selectors.client_farms import farms_of

FARM_OF_PAGE = "farm_of_page"
"""What a form says it was shown for (`portal/_farm_of_page.html`), where nothing else in it names a row of the farm."""


class SatElsewhere(RuleBroken):
    """The form was of another of the person's farms than they sit at by now."""

    code = "sat_elsewhere"


def refuse_form_of_other_farm(request: HttpRequest, farm: Farm) -> None:
    """SatElsewhere where the seat was changed in another tab since the form was shown: nothing is done by mistake."""
    told = request.POST.get(FARM_OF_PAGE) or request.GET.get(FARM_OF_PAGE)
    if told and told != str(farm.pk):
        raise SatElsewhere(
            f"This page was of another of your farms, and you are at {farm} by now: "
            "go to the farm that you mean and do it there."
        )


def sit_at(request: HttpRequest, user: User, farm: str) -> FarmAccess | None:
    """Take the seat at the farm of that key if it is open to the person; None where it is not."""
    access = next((each for each in farms_of(user) if str(each.farm_id) == farm), None)
    if access is not None:
        request.session[BUSINESS_KEY], request.session[FARM_KEY] = access.business_id, access.farm_id
    return access
