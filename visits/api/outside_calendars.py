"""Calendars of the trimmer's own, kept elsewhere, whose busy times keep a van in."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.kinds import RowApi, RowsApi, StepApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowContent
from trimops.tenancy.querysets import TenantQuerySet
from visits.documents.busy_times import LARGEST
from visits.models import OutsideBusy, OutsideCalendar, Van
from visits.services.add_outside_calendar import CalendarWish, add_outside_calendar
from visits.services.look_at_calendars import ask_for_fetch
from visits.services.remove_outside_calendar import remove_outside_calendar


class OutsideWord(serializers.Serializer):  # type: ignore[type-arg]
    """A calendar by its secret address, or as the text of an iCalendar file: one of the two."""

    name = serializers.CharField(max_length=60)
    url = serializers.CharField(max_length=500, allow_blank=True, default="")
    file = serializers.CharField(
        max_length=LARGEST, allow_null=True, default=None, trim_whitespace=False, help_text="Read once."
    )
    only_whole_days = serializers.BooleanField(
        default=False, help_text="Appointments by the hour keep no van in."
    )
    keeps_titles = serializers.BooleanField(
        default=False, help_text="What an entry is called is kept; else only that one is busy."
    )


class OutsideShown(RowContent):
    """A calendar without its address, which is a secret that reads it. `last_words`: why it was not read last time."""

    is_file = serializers.SerializerMethodField()

    class Meta:
        model = OutsideCalendar
        fields = [
            "id", "van", "name", "is_file", "only_whole_days", "keeps_titles", "asked_at", "fetched_at", "read_at",
            "read_until", "left_out", "last_words", "made_at",
        ]  # fmt: skip

    def get_is_file(self, row: OutsideCalendar) -> bool:
        return not row.url


class BusyShown(RowContent):
    """A stretch in which somebody is busy. Whole days run from midnight to midnight."""

    class Meta:
        model = OutsideBusy
        fields = ["id", "starts", "ends", "is_all_day", "summary"]


class OutsideCalendarsApi(RowsApi[OutsideCalendar]):
    """The outside calendars of a van. One by address is read soon after it is added, and every hour then; one from a
    file once. Refused (calendar_refused): neither or both of the two, an address that may not be asked or is on the
    list, a file that is no calendar, more than five. Plan the week again if it is planned already."""

    model = OutsideCalendar
    ops = {
        "get": Op(
            Action.KEEP_VANS, "list_outside_calendars", "A van's calendars", shows=OutsideShown, lists=True
        ),
        "post": Op(
            Action.KEEP_VANS,
            "add_outside_calendar",
            "One more calendar",
            takes=OutsideWord,
            shows=OutsideShown,
            status=201,
            repeats=True,
        ),
    }

    def van(self) -> Van:
        """That the address means."""
        return self.fetch(Van, self.kwargs["pk"], "business")

    def rows(self) -> TenantQuerySet[OutsideCalendar]:
        return super().rows().filter(van=self.van())

    def make(self, content: Said) -> OutsideCalendar:
        file = content["file"]
        wish = CalendarWish(
            content["name"],
            content["url"],
            None if file is None else file.encode(),
            content["only_whole_days"],
            content["keeps_titles"],
        )
        return add_outside_calendar(van=self.van(), wish=wish, at=self.now, by=self.seat.user)

    def address_of(self, row: OutsideCalendar) -> str:
        return f"/api/v1/outside-calendars/{row.pk}/"


class OutsideCalendarApi(RowApi[OutsideCalendar]):
    """One outside calendar. Taken off the list it keeps the van in no more."""

    model = OutsideCalendar
    ops = {
        "get": Op(Action.KEEP_VANS, "read_outside_calendar", "One calendar of a van", shows=OutsideShown),
        "delete": Op(
            Action.KEEP_VANS, "remove_outside_calendar", "Take it off the list", status=204, changes=True
        ),
    }

    def remove(self, row: OutsideCalendar) -> None:
        remove_outside_calendar(calendar=row)


class OutsideBusyApi(RowsApi[OutsideBusy]):
    """The times that are still to come, as they were read last."""

    model = OutsideBusy
    ops = {
        "get": Op(
            Action.KEEP_VANS,
            "list_busy_times",
            "When it keeps the van in",
            shows=BusyShown,
            lists=True,
            orders={"starts": ("starts", "id")},
        )
    }

    def rows(self) -> TenantQuerySet[OutsideBusy]:
        calendar = self.fetch(OutsideCalendar, self.kwargs["pk"])
        return super().rows().filter(calendar=calendar, ends__gt=self.now)


class ReadOutsideCalendarApi(StepApi[OutsideCalendar]):
    """It is read again soon, without waiting for the hour."""

    model = OutsideCalendar
    ops = {
        "post": Op(
            Action.KEEP_VANS, "fetch_outside_calendar", "Read it again", shows=OutsideShown, repeats=True
        )
    }

    def act(self, row: OutsideCalendar, content: Said) -> OutsideCalendar:
        ask_for_fetch(business_id=row.business_id, calendar_id=row.pk)
        return row
