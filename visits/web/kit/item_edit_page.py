"""A consumable with its recipe: put on the list, or mended."""

from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.kernel.errors import FieldRefused, RuleBroken
from trimops.web.scoped_page import ScopedPage
from visits.models import Consumable
from visits.selectors.kit.kit_sheets import recipe_of
from visits.services.kit.save_consumable import save_consumable
from visits.web.kit.item_form import ItemForm


class ItemEditPage(ScopedPage):
    does = Action.KEEP_KIT
    template = "visits/kit/item_edit.html"

    def get(self, request: HttpRequest, pk: int | None = None) -> HttpResponse:
        item = self._item(pk)
        return self._page(item, self._form(item), 200)

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int | None = None) -> HttpResponseBase:
        item = self._item(pk)
        item = item.locked() if item.pk else item
        form = self._form(item, request.POST)
        if not form.is_valid():
            return self._page(item, form, form.refused_as)
        try:
            save_consumable(consumable=form.instance, lines=form.lines())
        except RuleBroken as fault:
            form.add_error(fault.field if isinstance(fault, FieldRefused) else None, fault.message)
            return self._page(item, form, 409)
        messages.success(request, f"{item.name} is kept. Cows noted from now on go by this recipe.")
        return redirect("kit_item", item.pk)

    def _form(self, item: Consumable, data: QueryDict | None = None) -> ItemForm:
        return ItemForm(data, instance=item, recipe=recipe_of(item) if item.pk else None)

    def _page(self, item: Consumable, form: ItemForm, status: int) -> HttpResponse:
        return self.show({"item": item, "name": self._name(item), "form": form}, status=status)

    def _name(self, item: Consumable) -> str:
        """As it is kept: a form that is to be mended has written over the row at hand."""
        return Consumable.objects.within(self.scope).get(pk=item.pk).name if item.pk else ""

    def _item(self, pk: int | None) -> Consumable:
        return self.fetch(Consumable, pk) if pk else Consumable(business=self.seat.business)
