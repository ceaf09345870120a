"""Which calendar is wanted, and how it is to behave."""

from django import forms
from django.http import QueryDict

from farms.models import Farm
from trimops.accounts.models import User
from trimops.kernel.scope import Scope
from visits.models import Van
from visits.services.make_calendar_address import FeedWish, Shown

RINGS = [
    ("", "Never"),
    (15, "15 minutes"),
    (30, "half an hour"),
    (60, "an hour"),
    (120, "two hours"),
    (720, "12 hours"),
]
ALL = "all"
Choices = list[tuple[str, str]]


class CalendarForm(forms.Form):
    """One choice says whose visits: the business's, a trimmer's, a van's or a farm's."""

    name = forms.CharField(label="Whose calendar is it for", max_length=80)
    shows = forms.ChoiceField(label="Which visits")
    alarm_minutes = forms.TypedChoiceField(
        label="Ring before each visit",
        choices=RINGS,
        coerce=int,
        empty_value=None,
        required=False,
        help_text="Some calendars ring only for what is written in them by hand.",
    )
    shows_wishes = forms.BooleanField(
        label="Also what has no hour yet, on the last day it may be",
        required=False,
        help_text="Wishes of all farms, re-checks among them. A farm's calendar never shows them.",
    )

    def __init__(self, data: QueryDict | None = None, *, scope: Scope, user: User) -> None:
        super().__init__(data)
        vans = list(Van.objects.within(scope).filter(is_active=True).select_related("trimmer"))
        self.shown: dict[str, Shown] = {f"trimmer-{van.trimmer_id}": van.trimmer for van in vans}
        trimmers: Choices = [
            (key, who.name or who.email) for key, who in self.shown.items() if isinstance(who, User)
        ]
        self.shown |= {f"van-{van.pk}": van for van in vans}
        farms = {f"farm-{farm.pk}": farm for farm in Farm.objects.within(scope).active()}
        self.shown |= farms
        field = self.fields["shows"]
        field.choices = [  # type: ignore[attr-defined]
            (ALL, "All visits of the business"),
            ("A trimmer", trimmers),
            ("A van", [(f"van-{van.pk}", van.name) for van in vans]),
            ("A farm", [(key, farm.name) for key, farm in farms.items()]),
        ]
        own = f"trimmer-{user.pk}"
        field.initial = own if own in self.shown else ALL

    def wish(self) -> FeedWish:
        """What was asked for, once the form is valid."""
        data = self.cleaned_data
        return FeedWish(
            name=data["name"],
            shows=self.shown.get(data["shows"]),
            alarm_minutes=data["alarm_minutes"],
            shows_wishes=data["shows_wishes"],
        )
