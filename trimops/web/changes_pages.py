"""Who changed what: on the page of each thing, and all of it for the owner."""

from typing import ClassVar

from django import forms
from django.apps import apps
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.utils.text import capfirst

from trimops.accounts.actions import Action
from trimops.accounts.models import Membership
from trimops.audit.audited import AUDITED
from trimops.audit.selectors.change_lines import change_acts
from trimops.audit.selectors.changes_of import ChangeWish, Entries, all_changes, changes_of
from trimops.kernel.clock import from_to
from trimops.kernel.errors import NotFound
from trimops.tenancy.models import TenantModel
from trimops.web.change_subjects import SUBJECTS, kinds_for
from trimops.web.scoped_page import ScopedPage

PER_PAGE = 40


class ChangesPage(ScopedPage):
    """Lines of the trail, the newest first."""

    template = "web/changes.html"

    def tell(self, entries: Entries, **more: object) -> HttpResponse:
        page = Paginator(entries, PER_PAGE).get_page(self.request.GET.get("page"))
        acts = change_acts(self.scope, page, self.seat.business.currency)
        return self.show({"page": page, "acts": acts, **more})


class ThingChangesPage(ChangesPage):
    """Of one thing. What was taken away since has no page any more, and so none of these either."""

    word: ClassVar[str] = ""

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        subject = SUBJECTS[self.word]
        thing = self.thing(subject.label, pk)
        parts = subject.shown_to(kinds_for(self.seat.allows))
        entries = changes_of(self.scope, f"{subject.label}:{pk}", parts)
        return self.tell(entries, subject=subject, thing=thing)

    def thing(self, label: str, pk: int) -> object:
        model = apps.get_model(label)
        if issubclass(model, TenantModel):
            return self.fetch(model, pk)
        row = Membership.objects.filter(business=self.seat.business, pk=pk).select_related("user").first()
        if row is None:
            raise NotFound("There is nothing at this address.")
        return row


class VisitChangesPage(ThingChangesPage):
    does, word = Action.SEE_CHANGES, "visit"


class CowChangesPage(ThingChangesPage):
    does, word = Action.SEE_CHANGES, "cow"


class FarmChangesPage(ThingChangesPage):
    does, word = Action.SEE_CHANGES, "farm"


class VanChangesPage(ThingChangesPage):
    does, word = Action.SEE_CHANGES, "van"


class InvoiceChangesPage(ThingChangesPage):
    does, word = Action.SEE_MONEY_CHANGES, "invoice"


class PaymentChangesPage(ThingChangesPage):
    does, word = Action.SEE_MONEY_CHANGES, "payment"


class PriceListChangesPage(ThingChangesPage):
    does, word = Action.SEE_MONEY_CHANGES, "price_list"


class MemberChangesPage(ThingChangesPage):
    does, word = Action.SEE_ALL_CHANGES, "member"


class WishForm(forms.Form):
    """Which of all changes are shown."""

    all_may_stay_empty = True
    kind = forms.ChoiceField(label="What", required=False)
    by = forms.ChoiceField(label="Who", required=False)
    day = forms.DateField(label="On", required=False, widget=forms.DateInput(attrs={"type": "date"}))

    def __init__(self, asked: object, members: list[Membership]) -> None:
        super().__init__(asked)  # type: ignore[arg-type]  # because: the query as the request has it
        kinds = sorted((capfirst(str(apps.get_model(label)._meta.verbose_name)), label) for label in AUDITED)
        people = [(str(member.user_id), str(member.user)) for member in members]
        self.fields["kind"].choices = [("", "Everything"), *((label, words) for words, label in kinds)]  # type: ignore[attr-defined]
        self.fields["by"].choices = [("", "Everybody"), *people, ("0", "The program")]  # type: ignore[attr-defined]

    @property
    def query(self) -> str:
        said = {name: self.data.get(name) for name in self.fields}
        return "&".join(f"{name}={value}" for name, value in said.items() if value)


class AllChangesPage(ChangesPage):
    """Everything that was changed in the business, people and settings too."""

    does = Action.SEE_ALL_CHANGES

    def get(self, request: HttpRequest) -> HttpResponse:
        members = Membership.objects.filter(business=self.seat.business).select_related("user")
        form = WishForm(request.GET, list(members.order_by("user__name", "pk")))
        is_good = form.is_valid()
        entries = all_changes(self.scope, self._wish(form) if is_good else ChangeWish())
        return self.tell(entries, form=form, keep_query=form.query if is_good else "")

    def _wish(self, form: WishForm) -> ChangeWish:
        said = form.cleaned_data
        since = until = None
        if day := said["day"]:
            since, until = from_to(day, day, self.seat.business.zone)
        return ChangeWish(
            kinds=[said["kind"]] if said["kind"] else None,
            by=int(said["by"]) if said["by"] else None,
            since=since,
            until=until,
        )
