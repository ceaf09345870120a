"""A herd's feet over the years, as the page tells them, and the paper of a year."""

from django.http import HttpResponse
from rest_framework import serializers

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.api.kinds import FileApi, ToldApi
from trimops.api.op import Op, Said
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer
from visits.documents.herd_year import herd_year
from visits.domain.herd.finding import FindingKind
from visits.selectors.herd_view import HerdView, herd_view, herd_year_story


class HerdFindingShown(serializers.Serializer):  # type: ignore[type-arg]
    """One sentence on one picture; `basis` says what it rests on."""

    title = serializers.CharField()
    sentence = serializers.CharField()
    kind = serializers.ChoiceField([kind.value for kind in FindingKind])
    basis = serializers.CharField(allow_blank=True)


class HerdRowShown(serializers.Serializer):  # type: ignore[type-arg]
    """What, the figure in words, what it rests on, and its source where it is not the business's own."""

    what = serializers.CharField()
    figure = serializers.CharField()
    basis = serializers.CharField(allow_blank=True)
    # because: the library takes a field of that name off its own attribute
    source = serializers.CharField(allow_blank=True)  # type: ignore[assignment]


class HerdTableShown(serializers.Serializer):  # type: ignore[type-arg]
    """A short table."""

    title = serializers.CharField()
    note = serializers.CharField(allow_blank=True)
    rows = HerdRowShown(many=True)


class HerdShown(serializers.Serializer):  # type: ignore[type-arg]
    """What is told of a herd's feet over the twelve months up to today. `facts` is what all of it rests on; of each of
    `years` there is a paper; `cautions` belong beside the figures wherever they are shown."""

    answer = serializers.CharField()
    facts = serializers.CharField()
    findings = HerdFindingShown(many=True)
    tables = HerdTableShown(many=True)
    years = serializers.ListField(child=serializers.IntegerField())
    cautions = serializers.ListField(child=serializers.CharField())


class HerdFiguresApi(ToldApi):
    """The feet of a herd, in findings that an interval supports. What is counted are lesions seen at the trim: no
    diagnosis. A round speaks for a herd only when most of it was seen; the findings say so."""

    ops = {"get": Op(Action.SEE_WORK, "read_herd_figures", "A herd's feet", shows=HerdShown)}

    def told(self) -> Said:
        farm = self.fetch(Farm, self.kwargs["pk"], "business")
        return herd_told_of(herd_view(self.scope, farm, self.now))


class HerdYearApi(FileApi):
    """The paper of one calendar year, or of as much of it as has gone by."""

    costs = {"get": Cost.PAPER}
    ops = {"get": Op(Action.SEE_WORK, "fetch_herd_year", "A herd's year, printed", media="application/pdf")}

    def file(self) -> HttpResponse:
        farm, year = self.fetch(Farm, self.kwargs["pk"], "business"), self.kwargs["year"]
        story = herd_year_story(self.scope, farm, year, self.now)
        return pdf_answer(herd_year(story), f"herd-feet-{farm.pk}-{year}")


def herd_told_of(view: HerdView) -> Said:
    """What `HerdShown` reads."""
    return {
        "answer": view.answer,
        "facts": view.facts,
        "findings": [picture.finding for picture in view.pictures],
        "tables": view.tables,
        "years": view.years,
        "cautions": view.cautions,
    }
