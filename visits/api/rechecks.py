"""Feet that are to be looked at again, and blocks that stand on claws."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.asked import YesOrNo
from trimops.api.fields import OneOf
from trimops.api.kinds import RowApi, RowsApi
from trimops.api.op import Filter, Op
from trimops.api.rows import RowContent
from visits.api.visits import day_word, id_filter
from visits.domain.feet import Foot
from visits.models import Block, Recheck


class RecheckShown(RowContent):
    """A foot that must be looked at again. `closed_on` null: it is still to be done."""

    number = serializers.CharField(source="cow.number", help_text="The cow's.")

    class Meta:
        model = Recheck
        fields = [
            "id", "farm", "cow", "number", "foot", "cause", "what", "due_from", "due_until", "from_trim", "visit",
            "closed_on", "closed_by_trim", "closed_because",
        ]  # fmt: skip


class BlockShown(RowContent):
    """A block on a claw. `off_on` null: it is still on."""

    number = serializers.CharField(source="cow.number", help_text="The cow's.")

    class Meta:
        model = Block
        fields = [
            "id", "cow", "number", "foot", "claw", "kind", "put_on", "put_on_by", "off_due", "off_on", "off_by",
        ]  # fmt: skip


class RechecksApi(RowsApi[Recheck]):
    """Re-checks, due and done. They are booked by what is noted at the crush, gathered into visits by themselves, and
    closed by the next look at that foot; nobody writes them by hand."""

    model = Recheck
    related = ("cow",)
    ops = {
        "get": Op(
            Action.SEE_COWS,
            "list_rechecks",
            "The re-checks",
            shows=RecheckShown,
            lists=True,
            orders={"due_until": ("due_until", "id"), "id": ("id",)},
            filters={
                "farm": id_filter("farm_id"),
                "cow": id_filter("cow_id"),
                "visit": id_filter("visit_id"),
                "foot": Filter(OneOf(Foot), "foot"),
                "is_open": Filter(YesOrNo(), "closed_on__isnull"),
                "due_by": Filter(day_word("Due from this day or before."), "due_from__lte"),
                "late_on": Filter(day_word("Its last day is before this day."), "due_until__lt"),
            },
        )
    }


class RecheckApi(RowApi[Recheck]):
    """A foot to be looked at again, from when until when, and what closed it."""

    model = Recheck
    related = ("cow",)
    ops = {"get": Op(Action.SEE_COWS, "read_recheck", "One re-check", shows=RecheckShown)}


class BlocksApi(RowsApi[Block]):
    """Blocks put on at the crush. One that is left on too long harms the sound claw: `off_by_day` finds those that are
    to come off by then."""

    model = Block
    related = ("cow",)
    ops = {
        "get": Op(
            Action.SEE_COWS,
            "list_blocks",
            "The blocks",
            shows=BlockShown,
            lists=True,
            orders={"off_due": ("off_due", "id"), "id": ("id",)},
            filters={
                "farm": id_filter("cow__farm_id"),
                "cow": id_filter("cow_id"),
                "is_on": Filter(YesOrNo(), "off_on__isnull"),
                "off_by_day": Filter(day_word("To come off on this day or before."), "off_due__lte"),
            },
        )
    }
