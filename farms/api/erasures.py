"""A farm's wish that what is known of it be erased: asked, taken back. Only a page carries it out."""

from rest_framework import serializers

from farms.api.of_farm import FarmRowsApi
from farms.models import Erasure
from farms.services.ask_erasure import ask_erasure
from farms.services.withdraw_erasure import withdraw_erasure
from trimops.accounts.actions import Action
from trimops.api.kinds import StepApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowContent


class ErasureWord(serializers.Serializer):  # type: ignore[type-arg]
    """The wish, with a word to it."""

    note = serializers.CharField(max_length=300, required=False, allow_blank=True)


class ErasureShown(RowContent):
    """A wish, and what became of it."""

    class Meta:
        model = Erasure
        fields = ["id", "farm", "asked_at", "note", "withdrawn_at", "done_at"]


class ErasuresApi(FarmRowsApi[Erasure]):
    """A farm's wishes to be erased. Asking erases nothing yet: the owner of the business carries it out, on a page of
    their own. A farm with an open wish cannot ask again."""

    model = Erasure
    ops = {
        "get": Op(
            Action.TAKE_DATA_OUT,
            "list_erasures",
            "A farm's wishes to be erased",
            shows=ErasureShown,
            lists=True,
            orders={"newest": ("-id",), "id": ("id",)},
        ),
        "post": Op(
            Action.GIVE_OWN_DATA,
            "ask_erasure",
            "Ask that what is known of the farm be erased",
            takes=ErasureWord,
            shows=ErasureShown,
            status=201,
            repeats=True,
        ),
    }

    def address_of(self, row: Erasure) -> str:
        return self.request.path

    def make(self, content: Said) -> Erasure:
        return ask_erasure(farm=self.farm, note=content.get("note", ""), at=self.now, by=self.seat.user)


class ErasureWithdrawnApi(StepApi[Erasure]):
    """The wish is taken back and everything stays. What is erased already cannot be brought back."""

    model = Erasure
    ops = {
        "post": Op(
            Action.GIVE_OWN_DATA,
            "withdraw_erasure",
            "Take the wish to be erased back",
            shows=ErasureShown,
            repeats=True,
        )
    }

    def act(self, row: Erasure, content: Said) -> Erasure:
        return withdraw_erasure(erasure=row, at=self.now)
