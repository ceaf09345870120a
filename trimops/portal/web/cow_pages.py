"""A cow of the farm: finding her by her number, and her feet."""

from urllib.parse import urlencode

from django import forms
from django.core.paginator import Paginator
from django.db.models.functions import Length
from django.http import HttpRequest, HttpResponse

from farms.models import Cow
from trimops.kernel.clock import local_day
from trimops.portal.web.client_page import ClientPage
from visits.selectors.cow_feet import cow_feet

PER_PAGE = 60


class FindCowForm(forms.Form):
    q = forms.CharField(label="Her number, or a part of it", required=False, max_length=30)


class PortalCowsPage(ClientPage):
    template = "portal/cows.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        form = FindCowForm(request.GET or None)
        asked = form.cleaned_data["q"] if form.is_valid() else ""
        rows = Cow.objects.within(self.scope).on_farm().order_by(Length("number"), "number")
        if asked:
            rows = rows.filter(number__icontains=asked)
        page = Paginator(rows, PER_PAGE).get_page(request.GET.get("page"))
        found = {"asked": asked, "keep": urlencode({"q": asked}) if asked else ""}
        return self.show({"farm": self.farm(), "page": page, "form": form, **found})


class PortalCowPage(ClientPage):
    template = "portal/cow.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        cow = self.fetch(Cow, pk)
        feet = cow_feet(self.scope, cow, self.now, request.GET.get("page"))
        today = local_day(self.now, self.seat.business.zone)
        return self.show({"cow": cow, "feet": feet, "today": today})
