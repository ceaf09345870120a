"""People at a farm, and payers."""

from typing import TYPE_CHECKING

from django import forms
from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Contact, Farm, Payer
from farms.services.save_contact import remove_contact, save_contact
from farms.services.save_payer import save_payer
from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from trimops.web.seen_form import SeenForm

if TYPE_CHECKING:
    ContactModelForm = forms.ModelForm[Contact]
    PayerModelForm = forms.ModelForm[Payer]
else:
    # Django's form classes take no type argument at run time.
    ContactModelForm = PayerModelForm = forms.ModelForm


class ContactForm(SeenForm, ContactModelForm):
    class Meta:
        model = Contact
        fields = ["name", "part", "phone", "email", "gets_reports", "gets_invitations", "told_by", "language"]
        help_texts = {
            "told_by": "Visits booked, moved, tomorrow’s list, delays: what your business has switched on.",
            "language": "The text comes in it where you have written one.",
        }


class PayerForm(SeenForm, PayerModelForm):
    class Meta:
        model = Payer
        fields = ["name", "address", "email", "vat_number", "payment_days"]

    def _get_validation_exclusions(self) -> set[str]:
        # The business is set by the page, so that one name is kept once within it.
        return super()._get_validation_exclusions() - {"business"}  # type: ignore[misc, no-any-return]


class ContactsPage(ScopedPage):
    """Who is who at a farm; one more, or one less."""

    does = Action.KEEP_FARMS
    template = "farms/contacts.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(self.fetch(Farm, pk), ContactForm())

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        farm = self.fetch(Farm, pk)
        if request.POST.get("leaves", "").isdecimal():
            contact = self.fetch_from(Contact.objects.filter(farm=farm), int(request.POST["leaves"]))
            remove_contact(contact=contact)
            messages.success(request, f"{contact.name} is off the list.")
            return redirect("contacts", farm.pk)
        form = ContactForm(request.POST, instance=Contact(business=self.seat.business, farm=farm))
        if not form.is_valid():
            return self._show(farm, form, 400)
        save_contact(contact=form.instance)
        messages.success(request, f"{form.instance.name} is kept.")
        return redirect("contacts", farm.pk)

    def _show(self, farm: Farm, form: ContactForm, status: int = 200) -> HttpResponse:
        rows = Contact.objects.within(self.scope).filter(farm=farm)
        return self.show({"farm": farm, "form": form, "contacts": rows}, status=status)


class ContactPage(ScopedPage):
    """One person of a farm, mended."""

    does = Action.KEEP_FARMS
    template = "farms/contact.html"

    def get(self, request: HttpRequest, farm_pk: int, pk: int) -> HttpResponse:
        contact = self._contact(farm_pk, pk)
        return self.show({"farm": contact.farm, "contact": contact, "form": ContactForm(instance=contact)})

    @transaction.atomic
    def post(self, request: HttpRequest, farm_pk: int, pk: int) -> HttpResponseBase:
        contact = self._contact(farm_pk, pk).locked()
        form = ContactForm(request.POST, instance=contact)
        if not form.is_valid():
            told: dict[str, object] = {"farm": contact.farm, "contact": contact, "form": form}
            return self.show(told, status=form.refused_as)
        save_contact(contact=form.instance)
        messages.success(request, f"{form.instance.name} is kept.")
        return redirect("contacts", farm_pk)

    def _contact(self, farm_pk: int, pk: int) -> Contact:
        farm = self.fetch(Farm, farm_pk)
        return self.fetch_from(Contact.objects.filter(farm=farm).select_related("farm"), pk)


class PayersPage(ScopedPage):
    """Payers; one more, or one mended."""

    does = Action.KEEP_PAYERS
    template = "farms/payers.html"

    def get(self, request: HttpRequest, pk: int | None = None) -> HttpResponse:
        return self._show(PayerForm(instance=self._payer(pk)))

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int | None = None) -> HttpResponseBase:
        payer = self._payer(pk)
        form = PayerForm(request.POST, instance=payer.locked() if payer.pk else payer)
        if not form.is_valid():
            return self._show(form, form.refused_as)
        save_payer(payer=form.instance)
        messages.success(request, f"{form.instance.name} is kept; choose it at the farms it pays for.")
        return redirect("payers")

    def _payer(self, pk: int | None) -> Payer:
        return self.fetch(Payer, pk) if pk else Payer(business=self.seat.business)

    def _show(self, form: PayerForm, status: int = 200) -> HttpResponse:
        return self.show(
            {"form": form, "payers": Payer.objects.within(self.scope).order_by("name")}, status=status
        )
