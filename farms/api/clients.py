"""People of a farm who see it: who they are, what each may do, one more, one less."""

from django.urls import reverse
from rest_framework import serializers

from farms.api.of_farm import FarmRowsApi
from farms.models import FarmAccess
from farms.selectors.seat import rights_of
from farms.services.close_farm_access import close_farm_access
from farms.services.give_farm_rights import give_farm_rights
from farms.services.invite_farm_client import FarmGuest, invite_farm_client
from trimops.accounts.actions import Action
from trimops.accounts.roles import FarmRight
from trimops.accounts.services.invite_person import invitation_token, mail_invitation
from trimops.api.fields import Moment, OneOf
from trimops.api.kinds import RowApi
from trimops.api.op import Op, Said, Shape
from trimops.api.rows import RowContent

RELATED = ("membership__user", "farm")


class RightsField(serializers.ListField):
    """What somebody may do at a farm, each right once; everybody let in sees its cows and the visits to come."""

    def __init__(self, **options: Shape) -> None:
        super().__init__(child=OneOf(FarmRight), max_length=len(FarmRight), **options)

    def to_internal_value(self, data: Shape) -> frozenset[FarmRight]:  # type: ignore[override]
        return frozenset(super().to_internal_value(data))


class ClientWord(serializers.Serializer):  # type: ignore[type-arg]
    """Who of the farm is asked in, and with which rights; without `rights`: the usual ones, or as they were."""

    name = serializers.CharField(max_length=120)
    email = serializers.EmailField(max_length=254)
    rights = RightsField(required=False)


class RightsWord(serializers.Serializer):  # type: ignore[type-arg]
    """These rights and no others."""

    rights = RightsField()


class ClientShown(RowContent):
    """Somebody of a farm who sees it. `joined_at` null: asked in by mail, and not come yet."""

    name = serializers.CharField(source="membership.user.name", read_only=True)
    email = serializers.CharField(source="membership.user.email", read_only=True)
    joined_at = Moment(source="membership.joined_at", allow_null=True, read_only=True)
    rights = serializers.ListField(child=OneOf(FarmRight), read_only=True)

    class Meta:
        model = FarmAccess
        fields = ["id", "farm", "name", "email", "joined_at", "rights"]

    def to_representation(self, instance: FarmAccess) -> Said:
        instance.rights = sorted(rights_of(instance))  # type: ignore[attr-defined]
        return super().to_representation(instance)


class ClientsApi(FarmRowsApi[FarmAccess]):
    """The people of a farm who see it. Asking in somebody new sends them a mail with a link; whoever sees another farm
    of the business already sees this one at once. People who work for the business are refused."""

    model = FarmAccess
    related = RELATED
    read_at = "clients"
    ops = {
        "get": Op(
            Action.LET_IN_CLIENTS, "list_clients", "Who of a farm sees it", shows=ClientShown, lists=True
        ),
        "post": Op(
            Action.LET_IN_CLIENTS,
            "invite_client",
            "Ask somebody of a farm in",
            takes=ClientWord,
            shows=ClientShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> Shape:
        return super().rows().filter(membership__ended_at__isnull=True)

    def make(self, content: Said) -> FarmAccess:
        farm = self.farm
        member = invite_farm_client(farm=farm, guest=FarmGuest(**content), at=self.now, by=self.seat.user)
        if member.joined_at is None:
            path = reverse("invitation", args=[invitation_token(member)])
            mail_invitation(membership=member, address=self.request.build_absolute_uri(path), at=self.now)
        found: FarmAccess = self.rows().get(membership=member)
        return found


class ClientApi(RowApi[FarmAccess]):
    """One of the people of a farm who see it. Taken away, they see this farm no more; without any farm left they leave
    the business."""

    model = FarmAccess
    related = RELATED
    ops = {
        "get": Op(Action.LET_IN_CLIENTS, "read_client", "Somebody of a farm who sees it", shows=ClientShown),
        "patch": Op(
            Action.LET_IN_CLIENTS,
            "give_client_rights",
            "Say what somebody of a farm may do",
            takes=RightsWord,
            shows=ClientShown,
            changes=True,
        ),
        "delete": Op(
            Action.LET_IN_CLIENTS,
            "close_client",
            "Let somebody of a farm see it no more",
            status=204,
            changes=True,
        ),
    }

    def change(self, row: FarmAccess, content: Said) -> FarmAccess:
        if "rights" in content:
            return give_farm_rights(access=row, rights=content["rights"])
        return row

    def remove(self, row: FarmAccess) -> None:
        close_farm_access(access=row, at=self.now)
