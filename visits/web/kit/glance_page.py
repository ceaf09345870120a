"""The kit's first page: store and vans at a glance."""

from django.http import HttpRequest, HttpResponse

from trimops.accounts.actions import Action
from visits.models import Consumable
from visits.selectors.kit.kit_at_a_glance import kit_at_a_glance
from visits.services.kit.stock_places import stock_places_of
from visits.web.kit.stock_pages import StockPage

FILES = {
    "consumables": "Consumables and recipes",
    "stock": "Stock by place",
    "lots": "Lots",
    "ledger": "The ledger",
    "blades": "Knives and discs",
    "sharpenings": "Sharpenings",
    "wash-downs": "Wash-downs",
}


class KitPage(StockPage):
    does = Action.SEE_KIT
    template = "visits/kit/kit.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        places = stock_places_of(self.scope)
        glance = kit_at_a_glance(self.seat.business, self.today)
        shown = {row.item.pk for row in glance.rows}
        resting = Consumable.objects.within(self.scope).filter(is_active=False).exclude(pk__in=shown)
        told = {"places": places, "glance": glance, "resting": list(resting), "files": FILES.items()}
        return self.show({**told, "may_count": self.seat.allows(Action.COUNT_KIT)})
