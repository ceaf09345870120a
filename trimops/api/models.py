"""What was answered to a call that its caller may repeat."""

from django.conf import settings
from django.db import models

from trimops.tenancy.models import TenantModel


class RepeatableCall(TenantModel):
    """One call under its caller's Idempotency-Key, with the answer that it had.

    After draft-ietf-httpapi-idempotency-key-header: the same key with the same content has the same answer again and
    does nothing a second time; with other content it is refused.
    """

    user = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.CASCADE, related_name="+")
    key = models.CharField(max_length=128)
    fingerprint = models.CharField(max_length=64, help_text="SHA-256 of method, address and body, in hex.")
    status = models.PositiveSmallIntegerField(default=0)
    headers = models.JSONField(default=dict)
    body = models.JSONField(null=True)
    called_at = models.DateTimeField(db_index=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "user", "key"], name="one_call_per_key"),
        ]

    def __str__(self) -> str:
        return f"{self.key}: {self.status}"
