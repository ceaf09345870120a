"""Secret addresses by which phones show visits in their calendars."""

from django.urls import reverse
from rest_framework import serializers

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.accounts.models import Membership, User
from trimops.api.asked import YesOrNo
from trimops.api.kinds import RowApi, RowsApi, StepApi
from trimops.api.op import Filter, Op, Said
from trimops.api.refusals import CannotBeMeant
from trimops.api.rows import MOST_ID, RowContent, RowField
from visits.models import CalendarAddress, Van
from visits.services.make_calendar_address import FeedWish, Shown, make_calendar_address
from visits.services.revoke_calendar_address import revoke_calendar_address

LONGEST_ALARM = 7 * 24 * 60


class CalendarWord(serializers.Serializer):  # type: ignore[type-arg]
    """Whose phone it is for and what it shows: one van's visits, a farm's, those of a trimmer's vans, or all."""

    name = serializers.CharField(max_length=80)
    van = RowField(Van, allow_null=True, default=None)
    farm = RowField(Farm, allow_null=True, default=None)
    trimmer = serializers.IntegerField(
        min_value=1, max_value=MOST_ID, allow_null=True, default=None, help_text="The id of a person."
    )
    alarm_minutes = serializers.IntegerField(
        min_value=1,
        max_value=LONGEST_ALARM,
        allow_null=True,
        default=None,
        help_text="It rings so long before.",
    )
    shows_wishes = serializers.BooleanField(
        default=False, help_text="Also what has no hour, on its last day; a farm's never does."
    )

    def validate(self, attrs: Said) -> Said:
        if sum(attrs[name] is not None for name in ("van", "farm", "trimmer")) > 1:
            raise serializers.ValidationError("It shows one of them: a van, a farm or a trimmer.")
        return attrs


class CalendarShown(RowContent):
    """An address without its secret, which is kept nowhere."""

    class Meta:
        model = CalendarAddress
        fields = [
            "id", "name", "van", "farm", "trimmer", "alarm_minutes", "shows_wishes", "made_at", "revoked_at",
        ]  # fmt: skip


class CalendarMadeShown(CalendarShown):
    """The new address. `address` is told once: a call that is repeated has null there."""

    address = serializers.CharField(allow_null=True, default=None)

    class Meta(CalendarShown.Meta):
        fields = [*CalendarShown.Meta.fields, "address"]


class CalendarsApi(RowsApi[CalendarAddress]):
    """Addresses of calendar feeds. A farm client has those of their own farm, and makes them for nothing else. Whoever
    has the address sees what it shows until it is closed; it is told once and kept as a hash alone, so whoever lost it
    makes another. Refused: a person who is not in the business (no_trimmer_here)."""

    model = CalendarAddress
    cache_when_done = "private, no-store"
    ops = {
        "get": Op(
            Action.GIVE_CALENDARS,
            "list_calendars",
            "The calendar addresses",
            shows=CalendarShown,
            lists=True,
            orders={"name": ("name", "id"), "id": ("id",)},
            filters={"is_open": Filter(YesOrNo(), "revoked_at__isnull")},
        ),
        "post": Op(
            Action.GIVE_CALENDARS,
            "make_calendar",
            "Make a calendar address",
            takes=CalendarWord,
            shows=CalendarMadeShown,
            status=201,
            repeats=True,
        ),
    }

    def make(self, content: Said) -> CalendarAddress:
        wish = FeedWish(
            content["name"], self._shown(content), content["alarm_minutes"], content["shows_wishes"]
        )
        made = make_calendar_address(business=self.seat.business, wish=wish, at=self.now, by=self.seat.user)
        self.tell_once(address=self.request.build_absolute_uri(reverse("calendar_feed", args=[made.secret])))
        return made.row

    def _shown(self, content: Said) -> Shown | None:
        if self.scope.is_farm_client:
            if content["van"] or content["trimmer"]:
                raise CannotBeMeant(faults=[("farm", "Yours shows the visits of your farm.")])
            return self.fetch(Farm, self.scope.farm_id or 0)
        if content["trimmer"]:
            return self._person(content["trimmer"])
        found: Shown | None = content["van"] or content["farm"]
        return found

    def _person(self, key: int) -> User:
        rows = Membership.objects.filter(business=self.seat.business, user_id=key).select_related("user")
        found = rows.first()
        if found is None:
            raise CannotBeMeant(faults=[("trimmer", "There is no such person here.")])
        return found.user


class CalendarApi(RowApi[CalendarAddress]):
    """One address, without its secret."""

    model = CalendarAddress
    ops = {"get": Op(Action.GIVE_CALENDARS, "read_calendar", "One calendar address", shows=CalendarShown)}


class RevokeCalendarApi(StepApi[CalendarAddress]):
    """From now on whoever used it sees nothing any more. Closing it twice changes nothing."""

    model = CalendarAddress
    ops = {
        "post": Op(
            Action.GIVE_CALENDARS, "close_calendar", "Close the address", shows=CalendarShown, repeats=True
        )
    }

    def act(self, row: CalendarAddress, content: Said) -> CalendarAddress:
        return revoke_calendar_address(address=row, at=self.now)
