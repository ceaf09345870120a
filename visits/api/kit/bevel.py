"""How wide the bevel of a knife is: reckoned, nothing is kept."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.asked import Measure
from trimops.api.kinds import ToldApi
from trimops.api.op import Op, Shape
from visits.domain.kit.bevel import FLATTEST, STEEPEST, THICKEST, THINNEST, bevel_table, bevel_width

USUAL_STEEL, USUAL_ANGLE = 2.2, 20.0


class BevelLineTold(serializers.Serializer):  # type: ignore[type-arg]
    """The same steel at a usual angle; `times` is the width in thicknesses of the steel."""

    angle = serializers.FloatField()
    width = serializers.FloatField()
    times = serializers.FloatField()


class BevelTold(serializers.Serializer):  # type: ignore[type-arg]
    """The bevel for what was asked, and for the usual angles."""

    thickness = serializers.FloatField()
    angle = serializers.FloatField()
    width = serializers.FloatField()
    lines = BevelLineTold(many=True)


class BevelApi(ToldApi):
    """How wide the bevel of an edge that is ground on one side is, for a thickness of steel and an angle: the
    thickness divided by the sine of the angle. Published rule of thumb: 4, 3 or 2 times the steel is an edge of about
    15, 20 or 30 degrees (T. Jubb 2010, slides on sharpening hoof knives)."""

    ops = {
        "get": Op(
            Action.SEE_KNIVES,
            "read_bevel",
            "How wide a bevel is",
            shows=BevelTold,
            query={
                "thickness": Measure(
                    min_value=THINNEST,
                    max_value=THICKEST,
                    help_text=f"Of the steel, in mm; {USUAL_STEEL}, if nothing is said.",
                ),
                "angle": Measure(
                    min_value=FLATTEST,
                    max_value=STEEPEST,
                    help_text=f"Of the edge, in degrees; {USUAL_ANGLE:g}, if nothing is said.",
                ),
            },
        )
    }

    def told(self) -> Shape:
        thickness, angle = self.asked.get("thickness", USUAL_STEEL), self.asked.get("angle", USUAL_ANGLE)
        return {
            "thickness": thickness,
            "angle": angle,
            "width": bevel_width(thickness, angle),
            "lines": bevel_table(thickness),
        }
