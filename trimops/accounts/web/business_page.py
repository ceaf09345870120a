"""What the papers say of the business: its address, its tax number, how to pay it."""

from typing import TYPE_CHECKING

from django import forms
from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.accounts.models import Business
from trimops.accounts.services.save_business import save_business
from trimops.kernel.public_holidays import regions_of
from trimops.web.scoped_page import ScopedPage
from trimops.web.seen_form import SeenForm

if TYPE_CHECKING:
    BusinessModelForm = forms.ModelForm[Business]
else:
    # Django's form classes take no type argument at run time.
    BusinessModelForm = forms.ModelForm


class BusinessForm(SeenForm, BusinessModelForm):
    class Meta:
        model = Business
        fields = [
            "name",
            "address",
            "phone",
            "email",
            "vat_number",
            "bank_details",
            "payment_days",
            "timezone",
            "region",
            "works_holidays",
            "proposes_weeks",
            "needs_second_step",
        ]
        labels = {
            "email": "Email",
            "vat_number": "VAT number",
            "bank_details": "How to pay",
            "payment_days": "Days to pay",
            "timezone": "Time zone",
            "works_holidays": "The vans go out on public holidays",
            "proposes_weeks": "Have the coming days planned each evening",
            "needs_second_step": "Everybody who works here signs in in two steps",
        }
        help_texts = {
            "bank_details": "Printed on invoices, a line each: what, a colon, and the value.",
            "timezone": "For instance Europe/London.",
            "proposes_weeks": "Owners are mailed what it proposes; nothing is in the diary until somebody accepts it.",
            "needs_second_step": "Who has no passkey and no app for codes yet sets one up before anything else.",
            "works_holidays": "If not, no visit is planned or offered on one. A van's days off are given at the van.",
        }

    def __init__(self, data: QueryDict | None = None, *, instance: Business) -> None:
        super().__init__(data, instance=instance)
        parts = regions_of(instance.country)
        if not parts:
            del self.fields["region"]
            return
        self.fields["region"] = forms.ChoiceField(
            label="Public holidays of",
            choices=[("", "the whole country"), *parts.items()],
            required=False,
            help_text="They are shown in the week. The list is kept by others: look at it once a year.",
        )


class BusinessPage(ScopedPage):
    does = Action.KEEP_BUSINESS
    template = "accounts/business.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self.show({"form": BusinessForm(instance=self.seat.business)})

    @transaction.atomic
    def post(self, request: HttpRequest) -> HttpResponseBase:
        kept = Business.objects.select_for_update(no_key=True).get(pk=self.seat.business.pk)
        form = BusinessForm(request.POST, instance=kept)
        if not form.is_valid():
            return self.show({"form": form}, status=form.refused_as)
        save_business(business=form.instance)
        messages.success(request, "Kept. Papers from now on say this; those issued keep what they said.")
        return redirect("business")
