"""Washing down: the tub, the next farm, and what was washed."""

from datetime import timedelta
from decimal import Decimal

from django.http import HttpRequest, HttpResponse

from trimops.accounts.actions import Action
from trimops.kernel.errors import NotFound
from trimops.web.scoped_page import ScopedPage
from visits.domain.kit.tub_mix import TRIED_ON_KNIVES, WASH_CAUTIONS
from visits.models import Van
from visits.selectors.kit.next_farm_wash import next_farm_wash
from visits.selectors.kit.stock_now import stock_now
from visits.selectors.kit.wash_log import disinfectants, left_unwashed, wash_log
from visits.web.kit.wash_forms import TubForm

LATELY = timedelta(days=28)


class WashPage(ScopedPage):
    """Nothing is written here: wash-downs are noted at the crush."""

    does = Action.SEE_KIT
    template = "visits/kit/wash.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        asked = request.GET if "litres" in request.GET else None
        form = TubForm(asked, products=disinfectants(self.scope))
        is_asked = asked is not None and form.is_valid()
        vans = list(Van.objects.within(self.scope))
        van = self._van(request.GET.get("van", ""), vans)
        page, lines = wash_log(self.scope, van, request.GET.get("page"))
        return self.show(
            {
                "form": form,
                "tub": form.answer(self._in_vans()) if is_asked else None,
                "yards": next_farm_wash(self.scope, self.now),
                "unwashed": left_unwashed(self.scope, self.now - LATELY),
                "vans": vans,
                "van": van,
                "keep_query": f"van={van.pk}" if van else "",
                "page": page,
                "lines": lines,
                "cautions": WASH_CAUTIONS,
                "tried": TRIED_ON_KNIVES,
            },
            status=400 if asked is not None and not is_asked else 200,
        )

    def _van(self, key: str, vans: list[Van]) -> Van | None:
        if not key:
            return None
        found = next((van for van in vans if str(van.pk) == key), None)
        if found is None:
            raise NotFound("There is no such van.")
        return found

    def _in_vans(self) -> dict[int, Decimal]:
        """What all vans together hold of each consumable, of what somebody has said lies there."""
        found: dict[int, Decimal] = {}
        for item in stock_now(self.scope):
            held = [each.balance for each in item.places if each.place.van_id and each.is_told]
            if held:
                found[item.consumable.pk] = sum(held, Decimal(0))
        return found
