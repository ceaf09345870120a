"""Mobility scores of a herd, by rounds."""

from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.api.fields import Day, OneOf
from trimops.api.kinds import RowApi, RowsApi
from trimops.api.op import Op, Said
from trimops.api.rows import MOST_ID, RowContent
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.mobility import MobilityScale
from visits.models import MobilityScore, MobilityScoring
from visits.services.note_scores import CowScore, ScoringWord, note_scores

MOST_SCORES = 2000


class CowScoreWord(serializers.Serializer):  # type: ignore[type-arg]
    """How one cow walks."""

    cow = serializers.IntegerField(min_value=1, max_value=MOST_ID)
    score = serializers.IntegerField(min_value=0, max_value=5)


class RoundWord(serializers.Serializer):  # type: ignore[type-arg]
    """One round behind the herd."""

    scored_on = Day()
    scale = OneOf(MobilityScale)
    scored_by = serializers.CharField(max_length=120, allow_blank=True, default="")
    whole_herd = serializers.BooleanField(
        default=False, help_text="Every cow in milk was looked at, lame or not."
    )
    scores: "serializers.ListSerializer[Said]" = serializers.ListSerializer(
        child=CowScoreWord(), min_length=1, max_length=MOST_SCORES
    )


class RoundShown(RowContent):
    """One round, without its scores."""

    class Meta:
        model = MobilityScoring
        fields = ["id", "farm", "scored_on", "scale", "scored_by", "whole_herd", "noted_at"]


class ScoreShown(RowContent):
    """One cow's score."""

    number = serializers.CharField(source="cow.number")

    class Meta:
        model = MobilityScore
        fields = ["cow", "number", "score"]


class WholeRoundShown(RoundShown):
    """One round with the scores of its cows."""

    scores = serializers.SerializerMethodField()

    class Meta(RoundShown.Meta):
        fields = [*RoundShown.Meta.fields, "scores"]

    @extend_schema_field(ScoreShown(many=True))
    def get_scores(self, row: MobilityScoring) -> object:
        """In the order in which they were noted."""
        rows = MobilityScore.objects.within(self.context["scope"]).filter(scoring=row)
        rows = rows.select_related("cow").order_by("id")
        return ScoreShown(rows, many=True, context=self.context).data


class RoundsApi(RowsApi[MobilityScoring]):
    """Rounds of scoring of one farm. A score is kept on its own scale and never turned into another's. Scores of the
    same day and scale belong to one round: a cow given again has the later score. Refused (scores_make_no_sense): a day
    to come, a score that the scale does not have, a cow of another farm."""

    model = MobilityScoring
    ops = {
        "get": Op(
            Action.KEEP_DRAFT,
            "list_scorings",
            "A farm's rounds of mobility scores",
            shows=RoundShown,
            lists=True,
            orders={"scored_on": ("scored_on", "id")},
        ),
        "post": Op(
            Action.KEEP_DRAFT,
            "note_scores",
            "Note a round of scores",
            takes=RoundWord,
            shows=WholeRoundShown,
            status=201,
            repeats=True,
        ),
    }

    def farm(self) -> Farm:
        """That the address means."""
        return self.fetch(Farm, self.kwargs["pk"], "business")

    def rows(self) -> TenantQuerySet[MobilityScoring]:
        return super().rows().filter(farm=self.farm())

    def make(self, content: Said) -> MobilityScoring:
        scores = tuple(CowScore(each["cow"], each["score"]) for each in content.pop("scores"))
        word = ScoringWord(scores=scores, **content)
        return note_scores(farm=self.farm(), word=word, at=self.now, by=self.seat.user)

    def address_of(self, row: MobilityScoring) -> str:
        return f"/api/v1/scorings/{row.pk}/"


class RoundApi(RowApi[MobilityScoring]):
    """One round of mobility scores: each cow's, on the scale of that day."""

    model = MobilityScoring
    ops = {
        "get": Op(Action.KEEP_DRAFT, "read_scoring", "One round of mobility scores", shows=WholeRoundShown)
    }
