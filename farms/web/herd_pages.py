"""Cows of a farm: one cow mended, and a whole list brought in, looked at first."""

from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.domain.ear_tag import ear_tag_hint
from farms.domain.electronic_id import NotAnElectronicId
from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Cow, CowIdentity, Farm, HerdImport
from farms.selectors.herd_plan import herd_list_of, herd_plan_of
from farms.services.apply_herd_list import apply_herd_list
from farms.services.keep_herd_list import HerdListUnreadable, keep_herd_list
from farms.services.save_cow import save_cow
from farms.web.forms import CowForm, HerdListForm
from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage

SEVERAL = [kind for kind in IdentityKind if kind is not IdentityKind.MANAGEMENT_NUMBER]


class CowEditPage(ScopedPage):
    """A new cow of a farm, or a known one."""

    does = Action.KEEP_COWS
    template = "farms/cow_edit.html"

    def get(self, request: HttpRequest, farm_pk: int, pk: int | None = None) -> HttpResponse:
        cow = self._cow(farm_pk, pk)
        return self.show({"cow": cow, "form": CowForm(instance=cow, initial=self._besides(cow))})

    @transaction.atomic
    def post(self, request: HttpRequest, farm_pk: int, pk: int | None = None) -> HttpResponseBase:
        cow = self._cow(farm_pk, pk)
        cow = cow.locked() if cow.pk else cow
        form = CowForm(request.POST, instance=cow, initial=self._besides(cow))
        if form.is_valid():
            identities: dict[IdentityKind, str] = {kind: form.cleaned_data[kind.value] for kind in SEVERAL}
            try:
                save_cow(
                    cow=form.instance,
                    identities=identities,
                    lactation=form.cleaned_data["lactation"],
                    at=self.now,
                )
            except NotAnElectronicId as fault:
                form.add_error("electronic_id", str(fault).capitalize())
            else:
                self._hint(request, identities[IdentityKind.OFFICIAL_TAG])
                return redirect("cow", cow.pk)
        return self.show({"cow": cow, "form": form}, status=form.refused_as)

    def _besides(self, cow: Cow) -> dict[str, object]:
        """What the form shows of her that stands in other rows."""
        rows = CowIdentity.objects.within(self.scope).filter(cow_id=cow.pk or 0)
        calvings = Calving.objects.within(self.scope).filter(cow_id=cow.pk or 0)
        told: dict[str, object] = {row.kind: row.value for row in rows}
        of_last = (row.lactation for row in calvings if row.calved_on == cow.calved_on)
        return {**told, "lactation": next(of_last, None)}

    def _cow(self, farm_pk: int, pk: int | None) -> Cow:
        farm = self.fetch(Farm, farm_pk)
        if pk is None:
            return Cow(business=self.seat.business, farm=farm)
        return self.fetch_from(Cow.objects.filter(farm=farm), pk)

    @staticmethod
    def _hint(request: HttpRequest, tag: str) -> None:
        hint = ear_tag_hint(tag) if tag else ""
        if hint:
            messages.warning(request, f"Kept, but look at the official tag: {hint}")


class HerdListPage(ScopedPage):
    """Hand in a herd list."""

    does = Action.KEEP_COWS
    template = "farms/herd_list.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self.show({"farm": self.fetch(Farm, pk), "form": HerdListForm()})

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        farm = self.fetch(Farm, pk)
        form = HerdListForm(request.POST, request.FILES)
        if form.is_valid():
            upload = form.cleaned_data["herd_list"]
            try:
                kept = keep_herd_list(
                    farm=farm, file_name=upload.name, content=upload.read(), at=self.now, by=self.seat.user
                )
            except HerdListUnreadable as fault:
                form.add_error("herd_list", fault.message)
            else:
                return redirect("herd_preview", farm.pk, kept.pk)
        return self.show({"farm": farm, "form": form}, status=400)


class HerdPreviewPage(ScopedPage):
    """What the list would change; only the button changes anything."""

    does = Action.KEEP_COWS
    template = "farms/herd_preview.html"

    def get(self, request: HttpRequest, farm_pk: int, pk: int) -> HttpResponse:
        kept = self._kept(farm_pk, pk)
        rows = herd_list_of(kept)
        hints = [row for row in rows.rows if row.hints]
        plan = herd_plan_of(kept)
        counts = {"new": len(plan.new), "changed": len(plan.changed), "refused": len(plan.refused)}
        return self.show(
            {
                "kept": kept,
                "farm": kept.farm,
                "plan": plan,
                "counts": counts,
                "unknown_headings": rows.unknown_headings,
                "hints": hints,
            }
        )

    def post(self, request: HttpRequest, farm_pk: int, pk: int) -> HttpResponseBase:
        kept = self._kept(farm_pk, pk)
        plan = apply_herd_list(herd_import=kept, at=self.now)
        said = f"{len(plan.new)} new, {len(plan.changed)} changed, {plan.unchanged} as they were"
        messages.success(request, f"The list is applied: {said}, {len(plan.refused)} left out.")
        return redirect("farm", kept.farm_id)

    def _kept(self, farm_pk: int, pk: int) -> HerdImport:
        rows = HerdImport.objects.filter(farm_id=farm_pk).select_related("farm", "business")
        return self.fetch_from(rows, pk)
