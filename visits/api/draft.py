"""The draft list of a visit: which cows to bring and why, and what people change of it."""

from django.http import HttpResponse
from rest_framework import serializers

from farms.models import Cow
from trimops.accounts.actions import Action
from trimops.api.fields import OneOf
from trimops.api.kinds import FileApi, StepApi, ToldApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowContent, RowField
from trimops.kernel.errors import NotFound
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer
from visits.api.visit_shown import DraftLengthShown
from visits.documents.draft_list import draft_list
from visits.domain.draft_order import DraftLine, Need
from visits.domain.mobility import MobilityScale
from visits.models import DraftChange, Visit
from visits.selectors.draft_content import draft_content
from visits.selectors.draft_view import DraftView, draft_view
from visits.services.add_draft_cow import add_draft_cow
from visits.services.strike_cow import strike_cow
from visits.services.take_back_draft_change import take_back_draft_change

AT_HAND = ("farm", "business", "van")
NEEDS = [(need.name.lower(), need.label) for need in Need]


class DraftLineShown(serializers.Serializer):  # type: ignore[type-arg]
    """A cow, why she is wanted (the most pressing need, and all reasons in words), and what to mind of her."""

    cow = serializers.IntegerField()
    number = serializers.CharField()
    need = serializers.ChoiceField(NEEDS)
    reasons = serializers.ListField(child=serializers.CharField())
    warning = serializers.CharField(allow_blank=True)
    mobility_scale = OneOf(MobilityScale, allow_null=True)
    mobility_score = serializers.IntegerField(allow_null=True)
    is_promised = serializers.BooleanField(help_text="She comes even when the list is longer than expected.")


class DraftChangeShown(RowContent):
    """A cow struck from the list or added to it, why, when and by whom."""

    by = serializers.CharField(source="by.name")

    class Meta:
        model = DraftChange
        fields = ["id", "cow", "kind", "why", "at", "by"]


class DraftListShown(serializers.Serializer):  # type: ignore[type-arg]
    """The list for the visit's day. `may_change`: the list may still change, and by you."""

    visit = serializers.IntegerField()
    day = serializers.DateField()
    rule_set = serializers.CharField()
    present = DraftLineShown(many=True)
    left_for_next = DraftLineShown(many=True)
    changes = DraftChangeShown(many=True)
    length = DraftLengthShown()
    free_places = serializers.IntegerField()
    lame_left = serializers.IntegerField(help_text="Lame cows among those left for next time.")
    may_change = serializers.BooleanField()


class DraftCowWord(serializers.Serializer):  # type: ignore[type-arg]
    """Which cow, and why."""

    cow = RowField(Cow)
    why = serializers.CharField(max_length=200, allow_blank=True, default="")


class DraftApi(ToldApi):
    """Which cows to bring, the most pressing first, cut at the number that the visit counts with; whose place is
    taken is left for next time. Lame cows come first, then blocks and re-checks that are due (AHDB, article on the trim
    list). A cow near calving comes only for what presses, with a warning: ask the vet first."""

    ops = {"get": Op(Action.SEE_VISITS, "read_draft_list", "The draft list", shows=DraftListShown)}

    def told(self) -> Said:
        view = draft_view(self.fetch(Visit, self.kwargs["pk"], *AT_HAND), self.now)
        return draft_told(view, may_change=view.can_change and self.seat.allows(Action.KEEP_DRAFT))


class DraftStepApi(StepApi[Visit]):
    """What is done to the list; answered with the list as it is then."""

    model = Visit
    related = AT_HAND

    def again(self, visit: Visit) -> Said:
        """The list after the change."""
        row = self.fetch(Visit, visit.pk, *AT_HAND)
        return draft_told(draft_view(row, self.now), may_change=True)


class AddDraftCowApi(DraftStepApi):
    """She is brought whatever the rules say; a full list gets one cow longer. Refused: she is on it
    (cow_is_on_the_list), is on another farm or has left (cow_cannot_come), the work has begun (draft_is_closed),
    the van may take no more that day (day_is_full)."""

    ops = {
        "post": Op(
            Action.KEEP_DRAFT,
            "add_draft_cow",
            "Bring this cow",
            takes=DraftCowWord,
            shows=DraftListShown,
            repeats=True,
        )
    }

    def act(self, row: Visit, content: Said) -> Said:
        return self.again(add_draft_cow(visit=row, **content, at=self.now, by=self.seat.user))


class StrikeCowApi(DraftStepApi):
    """She is not brought, whatever the rules say; a full list gets one cow shorter."""

    ops = {
        "post": Op(
            Action.KEEP_DRAFT,
            "strike_draft_cow",
            "Leave this cow at home",
            takes=DraftCowWord,
            shows=DraftListShown,
            repeats=True,
        )
    }

    def act(self, row: Visit, content: Said) -> Said:
        return self.again(strike_cow(visit=row, **content, at=self.now, by=self.seat.user))


class TakeBackDraftChangeApi(DraftStepApi):
    """The rules decide about the cow again. The others on the list stay on it."""

    ops = {
        "post": Op(
            Action.KEEP_DRAFT,
            "take_back_draft_change",
            "Take a change of the list back",
            shows=DraftListShown,
            repeats=True,
        )
    }

    def act(self, row: Visit, content: Said) -> Said:
        changes = DraftChange.objects.within(self.scope).filter(visit=row)
        change = changes.filter(pk=self.kwargs["change_pk"]).select_related("visit").first()
        if change is None:
            raise NotFound("There is nothing at this address.")
        return self.again(take_back_draft_change(change=change, at=self.now, by=self.seat.user))


class DraftListPdfApi(FileApi):
    """The list for the wall of the parlour, as a PDF."""

    costs = {"get": Cost.PAPER}
    ops = {
        "get": Op(Action.SEE_VISITS, "print_draft_list", "The draft list, printed", media="application/pdf")
    }

    def file(self) -> HttpResponse:
        visit = self.fetch(Visit, self.kwargs["pk"], *AT_HAND)
        return pdf_answer(draft_list(draft_content(visit, self.now)), f"draft-list-{visit.pk}")


def draft_told(view: DraftView, *, may_change: bool) -> Said:
    """What `DraftListShown` reads."""
    changes = sorted([*view.struck, *view.added.values()], key=lambda row: (row.at, row.pk))
    return {
        "visit": view.visit.pk,
        "day": view.day,
        "rule_set": view.using.rule_set.id,
        "present": list(map(_line, view.order.present)),
        "left_for_next": list(map(_line, view.order.left_for_next)),
        "changes": changes,
        "length": view.time,
        "free_places": view.free_places,
        "lame_left": view.lame_left,
        "may_change": may_change,
    }


def _line(line: DraftLine) -> Said:
    return {
        "cow": line.cow_id,
        "number": line.number,
        "need": line.need.name.lower(),
        "reasons": line.reasons,
        "warning": line.warning,
        "mobility_scale": line.cow.scale,
        "mobility_score": line.cow.score,
        "is_promised": line.is_promised,
    }
