"""The business's own figures, to be read."""

from collections.abc import Mapping
from dataclasses import asdict

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.kinds import ToldApi
from trimops.api.op import Op, Shape
from visits.domain.recheck_due import RecheckFigures
from visits.selectors.business_figures import figures_of


def _figures() -> serializers.DictField:
    return serializers.DictField(child=serializers.FloatField())


class DueDays(serializers.Serializer):  # type: ignore[type-arg]
    """First and last day after the trim on which such a foot is due to be looked at again."""

    what = serializers.CharField(help_text="`block wood`, `lesion SU`, `lame trim` …")
    first = serializers.IntegerField()
    last = serializers.IntegerField()


class RechecksTold(serializers.Serializer):  # type: ignore[type-arg]
    """When which foot is due, and after how many days it is said loudly."""

    due = DueDays(many=True)
    overdue_days = serializers.IntegerField()


class TrimFiguresTold(serializers.Serializer):  # type: ignore[type-arg]
    """The business's own marks for the claw."""

    shortest_wall_mm = serializers.IntegerField()
    wall_measured_from = serializers.CharField()
    toe_angle_from = serializers.IntegerField()
    toe_angle_to = serializers.IntegerField()
    belly_band_minutes = serializers.IntegerField()
    feet_lifted = serializers.IntegerField()


class FiguresTold(serializers.Serializer):  # type: ignore[type-arg]
    """The figures by which visits are reckoned, re-checks are due, weeks are planned, trims are judged and kit is
    loaded: the business's own where it has set some, else those that we came with."""

    visit_length = _figures()
    rechecks = RechecksTold()
    planning = _figures()
    trim = TrimFiguresTold()
    kit = _figures()


class FiguresApi(ToldApi):
    """The business's own figures. They are set on their page."""

    ops = {"get": Op(Action.KEEP_FIGURES, "read_figures", "The business's own figures", shows=FiguresTold)}

    def told(self) -> Shape:
        figures = figures_of(self.scope)
        return {
            "visit_length": asdict(figures.length),
            "rechecks": _rechecks(figures.rechecks),
            "planning": asdict(figures.planning),
            "trim": asdict(figures.trim),
            "kit": asdict(figures.kit),
        }


def _rechecks(figures: RecheckFigures) -> dict[str, object]:
    due = [
        *_due("block", figures.block),
        *_due("lesion", figures.lesion),
        *_due("lame", {"trim": figures.lame_trim}),
    ]
    return {"due": due, "overdue_days": figures.overdue_days}


def _due(of: str, days: Mapping[Shape, tuple[int, int]]) -> list[dict[str, object]]:
    return [{"what": f"{of} {kind}", "first": first, "last": last} for kind, (first, last) in days.items()]
