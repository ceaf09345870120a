from datetime import datetime
from typing import TYPE_CHECKING, ClassVar

from django.conf import settings
from django.db import models
from django.db.models import QuerySet
from knox.settings import CONSTANTS

from trimops.accounts.actions import Action
from trimops.accounts.models.membership import Membership

if TYPE_CHECKING:
    # The library says no types.
    KnoxToken = models.Model
else:
    from knox.models import AbstractAuthToken as KnoxToken


class ApiTokenManager(models.Manager["ApiToken"]):
    """Tokens come with the place that they are of: who bears one is asked for it at every call."""

    def get_queryset(self) -> "QuerySet[ApiToken]":
        return super().get_queryset().select_related("membership__business")


class ApiToken(KnoxToken):
    """What a program shows to act for one person in one business. Only its hash (SHA-512) is kept.

    `scopes` are values of `Action`; what its person's part does not allow is refused at use. It is never deleted: an
    ended one stays in the list and says so.
    """

    # because: the library makes the hash the key of the row, and lets it live for ever; pages and the trail name rows
    # by a number, and ours end. The names are the library's.
    id = models.BigAutoField(primary_key=True)
    digest = models.CharField(max_length=CONSTANTS.DIGEST_LENGTH, unique=True, editable=False)
    token_key = models.CharField(
        max_length=CONSTANTS.MAXIMUM_TOKEN_PREFIX_LENGTH + CONSTANTS.TOKEN_KEY_LENGTH, db_index=True
    )
    user = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+")
    created = models.DateTimeField(auto_now_add=True)
    expiry = models.DateTimeField()
    membership = models.ForeignKey(Membership, on_delete=models.PROTECT, related_name="+")
    name = models.CharField(max_length=80)
    scopes = models.JSONField(default=list)
    # because: accounts know no farms; a farm client's token sees the one farm that it was made at.
    farm_key = models.PositiveBigIntegerField(null=True, blank=True)
    last_used_at = models.DateTimeField(null=True, blank=True)
    last_used_from = models.GenericIPAddressField(null=True, blank=True)
    revoked_at = models.DateTimeField(null=True, blank=True)
    revoked_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )

    objects: ClassVar[ApiTokenManager] = ApiTokenManager()

    def __str__(self) -> str:
        return self.name

    @property
    def actions(self) -> frozenset[Action]:
        """The actions named; words that are none (any more) name nothing."""
        known = set(Action)
        return frozenset(Action(word) for word in self.scopes if word in known)

    def is_good(self, at: datetime) -> bool:
        """Whether it lets its bearer in: not ended, not revoked, its person still there."""
        is_live = self.revoked_at is None and at < self.expiry
        return is_live and self.membership.is_current and self.user.is_active
