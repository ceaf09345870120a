"""How somebody of the business wants to be told things."""

from django import forms
from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.accounts.models import Membership
from trimops.accounts.services.save_own_ways import save_own_ways
from trimops.web.scoped_page import ScopedPage
from trimops.web.seen_form import SeenForm


class WaysForm(SeenForm, forms.Form):
    all_may_stay_empty = True
    phone = forms.CharField(
        label="Your phone",
        max_length=40,
        required=False,
        help_text="With the country's code, for instance +44 1632 960001.",
        widget=forms.TextInput(attrs={"type": "tel", "autocomplete": "tel"}),
    )
    evening_mail = forms.BooleanField(
        label="Mail me tomorrow’s round and tonight’s list at seven in the evening",
        required=False,
        help_text="For each van that is yours, when it goes out the next day or something is to be done tonight.",
    )


class OwnWaysPage(ScopedPage):
    does = Action.KEEP_OWN_WAYS
    template = "accounts/own_ways.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self.show({"form": self._form()})

    @transaction.atomic
    def post(self, request: HttpRequest) -> HttpResponseBase:
        Membership.objects.select_for_update(no_key=True).get(pk=self.seat.membership.pk)
        form = self._form(request.POST)
        if not form.is_valid():
            return self.show({"form": form}, status=form.refused_as)
        save_own_ways(membership=self._membership(), **form.cleaned_data)
        messages.success(request, "Kept.")
        return redirect("own_ways")

    def _form(self, data: QueryDict | None = None) -> WaysForm:
        kept = self._membership()
        return WaysForm(data, initial={"phone": kept.phone, "evening_mail": kept.evening_mail})

    def _membership(self) -> Membership:
        return Membership.objects.get(business=self.seat.business, user=self.seat.user)
