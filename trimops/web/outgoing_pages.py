"""What leaves the house: what waits, what went and what did not go, by all ways and about everything."""

from collections.abc import Collection

from django import forms
from django.conf import settings
from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import Outgoing
from trimops.outbox.selectors.outgoing_rows import (
    OutgoingFilter,
    OutgoingRow,
    outgoing_counts,
    outgoing_look,
    outgoing_rows,
    outgoing_story,
)
from trimops.outbox.services.leave_outgoing import leave_outgoing
from trimops.outbox.services.send_again import send_again
from trimops.outbox.services.try_waiting import try_waiting
from trimops.web.scoped_page import ScopedPage

PER_PAGE = 40


class OutgoingPageBase(ScopedPage):
    """The money's messages are for those who see the money."""

    does = Action.KEEP_OUTGOING

    @property
    def topics(self) -> frozenset[Topic]:
        sees_money = self.seat.allows(Action.SEE_MONEY)
        return frozenset(topic for topic in Topic if sees_money or not topic.tells_money)

    def outgoing(self, pk: int) -> Outgoing:
        rows = Outgoing.objects.within(self.scope).select_related("written_by")
        return self.fetch_from(rows.filter(topic__in=[topic.value for topic in self.topics]), pk)


class NarrowForm(forms.Form):
    """Which of them are shown."""

    all_may_stay_empty = True
    show = forms.ChoiceField(label="Which", required=False)
    about = forms.ChoiceField(label="About", required=False)
    by = forms.ChoiceField(
        label="By", required=False, choices=[("", "Any way"), *((each.value, each.label) for each in Channel)]
    )

    def __init__(self, asked: object, *, topics: Collection[Topic], first: OutgoingFilter) -> None:
        super().__init__({"show": first.value, **dict(asked.items())})  # type: ignore[attr-defined]
        self.all_topics = topics
        shows, about = self.fields["show"], self.fields["about"]
        shows.choices = [(each.value, each.label) for each in OutgoingFilter]  # type: ignore[attr-defined]
        named = [(topic.value, topic.label) for topic in Topic if topic in topics]
        about.choices = [("", "Everything"), *named]  # type: ignore[attr-defined]
        self.is_valid()

    @property
    def shown(self) -> OutgoingFilter:
        return OutgoingFilter(self.cleaned_data.get("show") or OutgoingFilter.ALL)

    @property
    def topics(self) -> Collection[Topic]:
        said = self.cleaned_data.get("about")
        return [Topic(said)] if said else self.all_topics

    @property
    def channel(self) -> Channel | None:
        said = self.cleaned_data.get("by")
        return Channel(said) if said else None

    @property
    def query(self) -> str:
        said = {name: self.cleaned_data.get(name) for name in self.fields}
        return "&".join(f"{name}={value}" for name, value in said.items() if value)


class OutgoingListPage(OutgoingPageBase):
    """All messages, those that did not go first of all."""

    template = "web/outgoing_list.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        counts = outgoing_counts(self.scope, self.topics)
        first = OutgoingFilter.NOT_GONE if counts.failed else OutgoingFilter.ALL
        form = NarrowForm(request.GET, topics=self.topics, first=first)
        found = outgoing_rows(self.scope, form.topics, form.shown, form.channel)
        page = Paginator(found, PER_PAGE).get_page(request.GET.get("page"))
        return self.show(
            {
                "counts": counts,
                "form": form,
                "page": page,
                "rows": [OutgoingRow(row, outgoing_look(row)) for row in page],
                "keep_query": form.query,
                "has_mail_server": bool(settings.EMAIL_HOST),
            }
        )


class OutgoingPage(OutgoingPageBase):
    """One message: what it says, and each step of its way."""

    template = "web/outgoing.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        story = outgoing_story(self.outgoing(pk))
        outgoing = story.row.outgoing
        is_money = Topic(outgoing.topic).is_money
        return self.show({"outgoing": outgoing, "story": story, "look": story.row.look, "is_money": is_money})


class OutgoingAgainPage(OutgoingPageBase):
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        outgoing = send_again(outgoing=self.outgoing(pk), at=self.now, by=self.seat.user)
        messages.success(request, f"It is tried again, to {outgoing.address}.")
        return redirect("outgoing", outgoing.pk)


class OutgoingLeavePage(OutgoingPageBase):
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        outgoing = leave_outgoing(outgoing=self.outgoing(pk), at=self.now, by=self.seat.user)
        messages.success(request, f"The message to {outgoing.address} is left: it is tried no more.")
        return redirect("outgoing_list")


class OutgoingNowPage(OutgoingPageBase):
    """Try all that waits, without waiting for its time."""

    def post(self, request: HttpRequest) -> HttpResponseBase:
        begun = try_waiting(scope=self.scope, at=self.now, topics=self.topics)
        if begun:
            messages.success(request, f"Tried now: {begun}. What became of them stands below.")
        else:
            messages.info(request, "Nothing waits to go that may go now.")
        return redirect("outgoing_list")
