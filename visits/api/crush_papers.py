"""The papers of a day at the crush, as phones take them with them."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.kinds import ToldApi
from trimops.api.op import Op, Shape
from visits.models import Visit
from visits.selectors.crush_papers import crush_papers


class CrushPapersShown(serializers.Serializer):  # type: ignore[type-arg]
    """All of it in one answer. `format` names the form of its parts, which follows the crush page: a program goes by it
    and asks its maker anew when it changes."""

    format = serializers.CharField(help_text="`trimops-crush-papers/` and a number.")
    fetched_at = serializers.DateTimeField(help_text="The clock here.")
    seat = serializers.DictField(help_text="For whom it is.")
    visit = serializers.DictField(help_text="The visit: where it stands, its hours, the van.")
    farm = serializers.DictField(help_text="The farm: its name, the ways in, its hygiene.")
    cows = serializers.ListField(child=serializers.DictField(), help_text="What is known of each cow.")
    queue = serializers.ListField(
        child=serializers.IntegerField(), help_text="Ids of the cows of the draft list, in order."
    )
    catalogue = serializers.DictField(
        help_text="Words to choose from (lesions, zones, stages, scales, blocks) and the cautions."
    )
    scale = serializers.CharField(help_text="The scale of mobility scores that the farm goes by.")
    figures = serializers.DictField(help_text="The business's own marks, and when what is due.")
    consumables = serializers.ListField(
        child=serializers.DictField(), help_text="What is used up at the crush."
    )
    is_watched = serializers.BooleanField(help_text="Whether whoever works alone is watched over.")
    blades = serializers.ListField(child=serializers.DictField(), help_text="The knives of the van.")
    written = serializers.ListField(
        child=serializers.DictField(), help_text="What was noted already, as `send_writings` tells it."
    )
    cursor = serializers.IntegerField(help_text="Send it as `seen` with the first writings.")


class CrushPapersApi(ToldApi):
    """What a day at the crush needs, so that a phone can do without a signal until evening: the visit, the farm, each
    cow with her feet and what is due, the words to choose from, the kit, and what was noted already."""

    ops = {
        "get": Op(
            Action.WORK_AT_CRUSH, "read_crush_papers", "The papers for the crush", shows=CrushPapersShown
        )
    }

    def told(self) -> Shape:
        visit = self.fetch(Visit, self.kwargs["pk"], "farm", "business", "van")
        papers = crush_papers(self.scope, visit, by=self.seat.user, now=self.now)
        named = CrushPapersShown().fields
        catalogue = {name: part for name, part in papers.items() if name not in named}
        return {**papers, "catalogue": catalogue}
