"""Vans: all of them, one more, one mended, a day off, out of action, back."""

from datetime import time

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.asked import YesOrNo
from trimops.api.fields import Day, Moment
from trimops.api.kinds import RowApi, RowsApi, StepApi, set_fields
from trimops.api.op import Filter, Op, Said, Shape
from visits.api.kit.van_content import VanShown, VanWord, details_of, hours_of
from visits.models import OutBecause, ShiftPattern, Van, VanOut
from visits.services.end_van_out import end_van_out
from visits.services.note_what_happened import OutWord, note_what_happened
from visits.services.save_van import VanHours, save_van, set_day_off

NEVER = VanHours([], time(7), time(17, 30), 600, 70, 30, time(11, 30), time(14))
"""Of a van that goes out on no day: its hours are kept on none."""


class VansApi(RowsApi[Van]):
    """The vans. Two of one name are refused."""

    model = Van
    related = ("trimmer",)
    ops = {
        "get": Op(
            Action.SEE_VANS,
            "list_vans",
            "The vans",
            shows=VanShown,
            lists=True,
            orders={"name": ("name",), "id": ("id",)},
            filters={"is_active": Filter(YesOrNo(), "is_active")},
        ),
        "post": Op(
            Action.KEEP_VANS,
            "add_van",
            "One more van",
            takes=VanWord,
            shows=VanShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> Shape:
        return super().rows().prefetch_related(*details_of(self.context))

    def make(self, content: Said) -> Van:
        hours = VanHours(**content.pop("hours"))
        van = Van(business=self.seat.business)
        set_fields(van, content)
        return save_van(van=van, hours=hours, at=self.now)


class VanApi(RowApi[Van]):
    """One van. A change with `hours` says all its hours anew; the next plan goes by them."""

    model = Van
    related = ("trimmer",)
    ops = {
        "get": Op(Action.SEE_VANS, "read_van", "One van", shows=VanShown),
        "patch": Op(
            Action.KEEP_VANS, "change_van", "Change a van", takes=VanWord, shows=VanShown, changes=True
        ),
    }

    def change(self, row: Van, content: Said) -> Van:
        said = content.pop("hours", None)
        hours = VanHours(**said) if said else self._hours(row)
        set_fields(row, content)
        save_van(van=row, hours=hours, at=self.now)
        return self.row()

    def _hours(self, van: Van) -> VanHours:
        rows = ShiftPattern.objects.within(self.scope).filter(van=van).order_by("weekday")
        return hours_of(list(rows)) or NEVER


class DayOffWord(serializers.Serializer):  # type: ignore[type-arg]
    """The van stays in on that day; with `is_off` false it goes out after all."""

    day = Day()
    reason = serializers.CharField(max_length=120, required=False, allow_blank=True)
    is_off = serializers.BooleanField(required=False)


class DayOffApi(StepApi[Van]):
    """A day on which the van stays in, or goes out after all. A week that is planned already is not planned again."""

    model = Van
    related = ("trimmer",)
    ops = {
        "post": Op(
            Action.KEEP_VANS,
            "set_day_off",
            "A van stays in on a day",
            takes=DayOffWord,
            shows=VanShown,
            repeats=True,
        )
    }

    def act(self, row: Van, content: Said) -> Van:
        set_day_off(
            van=row,
            day=content["day"],
            reason=content.get("reason", ""),
            is_off=content.get("is_off", True),
            at=self.now,
        )
        return row


class VanOutWord(serializers.Serializer):  # type: ignore[type-arg]
    """From when to when, and why."""

    because = serializers.ChoiceField(OutBecause.choices)
    since = Moment()
    until = Moment()


class VanOutApi(StepApi[Van]):
    """The van does no work for a while. What is planned for it stays until the week is planned again."""

    model = Van
    related = ("trimmer", "business")
    ops = {
        "post": Op(
            Action.KEEP_VANS,
            "note_van_out",
            "A van is out of action",
            takes=VanOutWord,
            shows=VanShown,
            repeats=True,
        )
    }

    def act(self, row: Van, content: Said) -> Van:
        word = OutWord(row, OutBecause(content["because"]), content["since"], content["until"])
        note_what_happened(happening=word, at=self.now, by=self.seat.user)
        return row


class VanBackApi(StepApi[VanOut]):
    """The van works again from now on. A time that had not begun yet never was."""

    model = VanOut
    related = ("van__trimmer",)
    ops = {"post": Op(Action.KEEP_VANS, "end_van_out", "A van works again", shows=VanShown, repeats=True)}

    def act(self, row: VanOut, content: Said) -> Van:
        end_van_out(van_out=row, at=self.now, by=self.seat.user)
        return row.van
