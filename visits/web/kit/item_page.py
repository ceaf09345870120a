"""One consumable: its forecast, lots, recipe and ledger."""

from django.http import HttpRequest, HttpResponse

from trimops.accounts.actions import Action
from visits.models import Consumable
from visits.selectors.kit.item_ledger import item_ledger
from visits.selectors.kit.item_story import item_story
from visits.selectors.kit.ledger_words import told_lines
from visits.web.kit.stock_pages import StockPage


class ItemPage(StockPage):
    does = Action.SEE_KIT
    template = "visits/kit/item.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        item = self.fetch(Consumable, pk)
        story = item_story(self.seat.business, item, self.today)
        ledger = item_ledger(self.scope, item, request.GET.get("page"))
        told = {"item": item, "story": story, "page": ledger.page}
        told["lines"] = told_lines(self.scope, item, ledger.rows)
        told["currency"] = self.seat.business.currency
        return self.show({**told, "may_count": self.seat.allows(Action.COUNT_KIT)})
