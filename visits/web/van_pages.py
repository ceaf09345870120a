"""Vans: where they stand, who drives, when they go out, and days off."""

from datetime import timedelta
from typing import TYPE_CHECKING

from django import forms
from django.contrib import messages
from django.db import transaction
from django.db.models import Prefetch
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from farms.models import WEEKDAYS
from trimops.accounts.actions import Action
from trimops.accounts.models import User
from trimops.accounts.roles import Role
from trimops.kernel.clock import local_day
from trimops.web.day_input import DAY
from trimops.web.scoped_page import ScopedPage
from trimops.web.seen_form import SeenForm
from visits.models import DayOff, ShiftPattern, Van, VanOut
from visits.selectors.van_absences import own_appointments
from visits.services.end_van_out import end_van_out
from visits.services.save_van import VanHours, save_van, set_day_off

if TYPE_CHECKING:
    VanModelForm = forms.ModelForm[Van]
else:
    # Django's form classes take no type argument at run time.
    VanModelForm = forms.ModelForm

LOOKED_AHEAD = timedelta(days=28)


def clock() -> forms.TimeInput:
    return forms.TimeInput(attrs={"type": "time"}, format="%H:%M")


class VanForm(SeenForm, VanModelForm):
    weekdays = forms.TypedMultipleChoiceField(
        label="Goes out on", choices=WEEKDAYS, coerce=int, widget=forms.CheckboxSelectMultiple
    )
    starts = forms.TimeField(label="Leaves from", widget=clock(), initial="07:00")
    ends = forms.TimeField(label="Home by", widget=clock(), initial="17:30")
    max_work_minutes = forms.IntegerField(
        label="Longest day, minutes", min_value=60, max_value=960, initial=600
    )
    max_cows = forms.IntegerField(label="Most cows a day", min_value=1, max_value=300, initial=70)
    meal_minutes = forms.IntegerField(label="Meal, minutes", min_value=0, max_value=120, initial=30)
    meal_earliest = forms.TimeField(label="Meal begins from", widget=clock(), initial="11:30")
    meal_latest = forms.TimeField(label="Meal begins by", widget=clock(), initial="14:00")

    class Meta:
        model = Van
        fields = [
            "name",
            "trimmer",
            "base_name",
            "base_latitude",
            "base_longitude",
            "cost_per_day",
            "cost_per_work_hour",
            "cost_per_km",
            "is_active",
        ]

    def __init__(
        self, data: QueryDict | None = None, *, instance: Van, initial: dict[str, object] | None = None
    ) -> None:
        super().__init__(data, instance=instance, initial=initial)
        drivers = User.objects.filter(
            memberships__business_id=instance.business_id,
            memberships__role__in=[Role.OWNER, Role.TRIMMER],
            memberships__ended_at__isnull=True,
        )
        self.fields["trimmer"].queryset = drivers  # type: ignore[attr-defined]

    def clean(self) -> dict[str, object]:
        super().clean()
        data = self.cleaned_data
        for first, last in (("starts", "ends"), ("meal_earliest", "meal_latest")):
            if data.get(first) and data.get(last) and data[last] <= data[first]:
                self.add_error(last, "This is not after the time before it: give a later one.")
        return data

    def hours(self) -> VanHours:
        """When it goes out, once the form is valid."""
        return VanHours(**{name: self.cleaned_data[name] for name in VanHours.__dataclass_fields__})


class VansPage(ScopedPage):
    does = Action.SEE_VANS
    template = "visits/vans.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        today = local_day(self.now, self.seat.business.zone)
        shifts = Prefetch("shift_patterns", queryset=ShiftPattern.objects.within(self.scope))
        off = Prefetch("days_off", queryset=DayOff.objects.within(self.scope).filter(day__gte=today))
        outs = Prefetch("outs", queryset=VanOut.objects.within(self.scope).filter(until__gt=self.now))
        vans = Van.objects.within(self.scope).select_related("trimmer").prefetch_related(shifts, off, outs)
        own = own_appointments(self.seat.business, today, today + LOOKED_AHEAD)
        return self.show(
            {
                "vans": [(van, own.get(van.pk, [])) for van in vans],
                "may_mend": self.seat.allows(Action.KEEP_VANS),
                "now": self.now,
            }
        )


class VanEditPage(ScopedPage):
    """A new van, or a known one."""

    does = Action.KEEP_VANS
    template = "visits/van_edit.html"

    def get(self, request: HttpRequest, pk: int | None = None) -> HttpResponse:
        van = self._van(pk)
        return self.show({"van": van, "form": VanForm(instance=van, initial=self._hours(van))})

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int | None = None) -> HttpResponseBase:
        van = self._van(pk)
        van = van.locked() if van.pk else van
        form = VanForm(request.POST, instance=van, initial=self._hours(van))
        if not form.is_valid():
            return self.show({"van": van, "form": form}, status=form.refused_as)
        save_van(van=form.instance, hours=form.hours(), at=self.now)
        messages.success(request, f"{van.name} is kept; the next plan goes by it.")
        return redirect("vans")

    def _van(self, pk: int | None) -> Van:
        return self.fetch(Van, pk) if pk else Van(business=self.seat.business)

    def _hours(self, van: Van) -> dict[str, object]:
        rows = list(ShiftPattern.objects.within(self.scope).filter(van_id=van.pk or 0))
        if not rows:
            return {"weekdays": [0, 1, 2, 3, 4]}
        names = [name for name in VanHours.__dataclass_fields__ if name != "weekdays"]
        return {"weekdays": [row.weekday for row in rows], **{name: getattr(rows[0], name) for name in names}}


class DayOffForm(forms.Form):
    day = forms.DateField(widget=DAY)
    reason = forms.CharField(max_length=120, required=False)


class DayOffPage(ScopedPage):
    """A day on which the van stays in, or goes out after all."""

    does = Action.KEEP_VANS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        van = self.fetch(Van, pk)
        form = DayOffForm(request.POST)
        if form.is_valid():
            data = form.cleaned_data
            is_off = request.POST.get("after_all") != "yes"
            set_day_off(van=van, day=data["day"], reason=data["reason"], is_off=is_off, at=self.now)
            messages.success(request, "Noted. Plan the week again if it is planned already.")
        else:
            messages.error(request, "Give the day, for instance 2026-03-02.")
        return redirect("vans")


class VanBackPage(ScopedPage):
    """The van that was out of action works again."""

    does = Action.KEEP_VANS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        out = self.fetch(VanOut, pk, "van")
        end_van_out(van_out=out, at=self.now, by=self.seat.user)
        messages.success(request, f"{out.van.name} goes out again. Plan the week again to use it.")
        return redirect("vans")
