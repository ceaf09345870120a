"""What is kept of one person: taken out by themselves, handed over or erased by the owner."""

from collections.abc import Iterator

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Contact, Farm
from trimops.accounts.actions import Action
from trimops.accounts.models import Membership
from trimops.audit.services.note_handed_out import note_handed_out
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.portal.selectors.erasing_person import what_stays_of
from trimops.portal.selectors.person_data import contact_files, person_files
from trimops.portal.selectors.retention import books_kept_until, retention_of
from trimops.portal.services.erase_person import erase_person
from trimops.portal.web.data_pages import zip_answer
from trimops.web.page_rates import Cost
from trimops.web.scoped_page import ScopedPage


def _own_membership(page: ScopedPage) -> Membership:
    return Membership.objects.select_related("user", "business").get(
        business=page.seat.business, user=page.seat.user
    )


def _membership(page: ScopedPage, pk: int) -> Membership:
    """Anybody who is or was in the business, 404 else."""
    rows = Membership.objects.select_related("user", "business")
    found = rows.filter(business=page.seat.business, pk=pk).first()
    if found is None:
        raise NotFound("There is nothing at this address.")
    return found


def _zipped(page: ScopedPage, files: Iterator[tuple[str, bytes]], what: str) -> HttpResponseBase:
    """Named without the person's name: it may bear signs that a header cannot."""
    day = local_day(page.now, page.seat.business.zone)
    return zip_answer(page, files, f"{what}-{day}.zip")


class OwnDataPage(ScopedPage):
    """What the business keeps of whoever looks."""

    does = Action.TAKE_OWN_DATA
    template = "portal/own_data.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self.show({"membership": _own_membership(self)})


class OwnDataAll(ScopedPage):
    does = Action.TAKE_OWN_DATA
    costs = {"post": Cost.EXPORT}

    def post(self, request: HttpRequest) -> HttpResponseBase:
        membership = _own_membership(self)
        note_handed_out(row=membership, words="everything", at=self.now)
        return _zipped(self, person_files(membership, self.now, is_asked_by_self=True), "my-data")


class PersonDataPage(ScopedPage):
    """Of a person of the business, when they ask."""

    does = Action.HAND_OVER_PEOPLE
    template = "portal/person_data.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self.show({"membership": _membership(self, pk)})


class PersonDataAll(ScopedPage):
    does = Action.HAND_OVER_PEOPLE
    costs = {"post": Cost.EXPORT}

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        membership = _membership(self, pk)
        note_handed_out(row=membership, words="everything", at=self.now)
        return _zipped(self, person_files(membership, self.now), f"person-{pk}")


class ErasePersonForm(forms.Form):
    typed_name = forms.CharField(label="Their name, typed", max_length=120)


class PersonErasePage(ScopedPage):
    """The last page before what cannot be taken back."""

    does = Action.HAND_OVER_PEOPLE
    template = "portal/person_erase.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(_membership(self, pk), ErasePersonForm())

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        membership, form = _membership(self, pk), ErasePersonForm(request.POST)
        if not form.is_valid():
            return self._show(membership, form, 400)
        is_gone = erase_person(membership=membership, typed_name=form.cleaned_data["typed_name"], at=self.now)
        said = (
            "Name and address are erased." if is_gone else "They are out of your business; the account stays."
        )
        messages.success(request, said)
        return redirect("people")

    def _show(self, membership: Membership, form: ErasePersonForm, status: int = 200) -> HttpResponse:
        until = books_kept_until(self.seat.business, retention_of(self.scope), self.now)
        told = {"membership": membership, "form": form, "stays": what_stays_of(membership), "until": until}
        return self.show(told, status=status)


class ContactDataAll(ScopedPage):
    """Of a person at a farm, who signs in nowhere."""

    does = Action.HAND_OVER_FARMS
    costs = {"post": Cost.EXPORT}

    def post(self, request: HttpRequest, farm_pk: int, pk: int) -> HttpResponseBase:
        farm = self.fetch(Farm, farm_pk)
        contact = self.fetch_from(Contact.objects.filter(farm=farm).select_related("business"), pk)
        note_handed_out(row=contact, words="everything", at=self.now)
        return _zipped(self, contact_files(contact, self.now), f"contact-{pk}")
