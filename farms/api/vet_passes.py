"""The farm's links for its vet: which there are, one more, closing one."""

from django.urls import reverse
from django.views.decorators.debug import sensitive_variables
from rest_framework import serializers

from farms.api.of_farm import FarmRowsApi
from farms.models import VetPass
from farms.selectors.vet_passes import with_standing
from farms.services.close_vet_pass import close_vet_pass
from farms.services.give_vet_pass import MOST_DAYS, SHOWS, VetWord, give_vet_pass, mail_vet_pass
from trimops.accounts.actions import Action
from trimops.api.kinds import StepApi
from trimops.api.op import Op, Said, Shape
from trimops.api.rows import RowContent


class VetPassWord(serializers.Serializer):  # type: ignore[type-arg]
    """For whom, what it shows (at least one thing), and for how many days. With `email` the link is sent there."""

    vet_name = serializers.CharField(max_length=120)
    email = serializers.EmailField(max_length=254, required=False, allow_blank=True)
    days = serializers.IntegerField(min_value=1, max_value=MOST_DAYS)
    shows_letters = serializers.BooleanField(required=False)
    shows_reports = serializers.BooleanField(required=False)
    shows_cows = serializers.BooleanField(required=False)
    shows_photos = serializers.BooleanField(required=False)
    shows_figures = serializers.BooleanField(required=False)


class VetPassShown(RowContent):
    """A link for the vet. `stands`: it opens. The link itself is kept nowhere and cannot be shown again."""

    stands = serializers.BooleanField(read_only=True)

    class Meta:
        model = VetPass
        fields = [
            *("id", "farm", "vet_name", "email", *SHOWS),
            *("made_at", "expires_at", "closed_at", "opened_at", "stands"),
        ]


class VetPassMade(VetPassShown):
    """A link for the vet, shown this once. Asked again under the same Idempotency-Key `link` is null."""

    link = serializers.CharField(read_only=True, allow_null=True)

    class Meta(VetPassShown.Meta):
        fields = [*VetPassShown.Meta.fields, "link"]


class VetPassesApi(FarmRowsApi[VetPass]):
    """A farm's links for its vet, those that are over too. Giving one answers with its address, which whoever holds it
    can open without signing in: hand it on to nobody else. One that would show nothing is refused."""

    model = VetPass
    read_at = "farms"
    ops = {
        "get": Op(
            Action.KEEP_VET_PASSES,
            "list_vet_passes",
            "A farm's links for its vet",
            shows=VetPassShown,
            lists=True,
            orders={"newest": ("-id",), "id": ("id",)},
        ),
        "post": Op(
            Action.KEEP_VET_PASSES,
            "give_vet_pass",
            "Give the vet a link",
            takes=VetPassWord,
            shows=VetPassMade,
            status=201,
            repeats=True,
        ),
    }
    cache_when_done = "no-store"

    def rows(self) -> Shape:
        return with_standing(super().rows(), self.scope, self.now)

    def address_of(self, row: VetPass) -> str:
        # because: a link is read in the list of its farm only
        return self.request.path

    @sensitive_variables("made", "address")
    def make(self, content: Said) -> VetPass:
        shows = [name for name in SHOWS if content.get(name)]
        word = VetWord(content["vet_name"], content.get("email", ""), shows, content["days"])
        made = give_vet_pass(farm=self.farm, word=word, at=self.now, by=self.seat.user)
        address = self.request.build_absolute_uri(reverse("vet_desk", args=[made.secret]))
        mail_vet_pass(vet_pass=made.row, address=address, at=self.now)
        self.tell_once(link=address)
        row = made.row
        row.stands, row.link = True, None  # type: ignore[attr-defined]
        return row


class VetPassClosedApi(StepApi[VetPass]):
    """The link opens nothing any more; closing it twice changes nothing."""

    model = VetPass
    ops = {
        "post": Op(
            Action.KEEP_VET_PASSES,
            "close_vet_pass",
            "Close a link of the vet",
            shows=VetPassShown,
            repeats=True,
        )
    }

    def act(self, row: VetPass, content: Said) -> VetPass:
        closed = close_vet_pass(vet_pass=row, at=self.now)
        closed.stands = False  # type: ignore[attr-defined]
        return closed
