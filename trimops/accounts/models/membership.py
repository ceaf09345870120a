from django.conf import settings
from django.db import models

from trimops.accounts.models.business import Business
from trimops.accounts.roles import Role


class Membership(models.Model):
    """A person's place in a business. Without `joined_at` it is an invitation not yet taken up."""

    business = models.ForeignKey(Business, on_delete=models.PROTECT, related_name="memberships")
    user = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="memberships")
    role = models.CharField(max_length=8, choices=Role.choices)
    invited_at = models.DateTimeField()
    invited_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )
    joined_at = models.DateTimeField(null=True, blank=True)
    ended_at = models.DateTimeField(null=True, blank=True)
    evening_mail = models.BooleanField("tomorrow's round by mail each evening", default=False)
    phone = models.CharField(max_length=40, blank=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "user"], name="one_membership_per_business"),
        ]

    def __str__(self) -> str:
        return f"{self.user} ({self.get_role_display()})"

    @property
    def is_current(self) -> bool:
        return self.joined_at is not None and self.ended_at is None
