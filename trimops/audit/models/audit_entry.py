from typing import ClassVar

from django.db import models

from trimops.accounts.models import User
from trimops.audit.domain.digests import Content, Facts
from trimops.audit.domain.entry_kinds import EntryKind
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel


class AuditEntry(TenantModel):
    """One row was added, changed or taken away, or a farm's data handed out: who, when, from where, before and after.

    It is written once; the database refuses to change it (`audit_locks.py`), but to blot what it held.
    """

    at = models.DateTimeField()
    by = models.ForeignKey(
        User,
        on_delete=models.PROTECT,
        related_name="+",
        null=True,
        help_text="Who did it, or had it done; empty: the program by itself.",
    )
    via = models.CharField(max_length=120, blank=True, help_text="Which page, address, job or command.")
    seen_from = models.CharField(max_length=45, blank=True, help_text="The address that it came from.")
    session = models.CharField(
        max_length=16, blank=True, help_text="Marks the sign-in; the beginning of a hash."
    )
    request = models.CharField(
        max_length=64, blank=True, help_text="Number of the request, as the log has it."
    )
    kind = models.CharField(max_length=10, choices=choices_of(EntryKind))
    what = models.CharField(max_length=60, help_text="app.model in small letters.")
    row_id = models.BigIntegerField()
    under = models.CharField(max_length=80, blank=True, help_text="The row it hangs on, as app.model:id.")
    beside = models.CharField(max_length=80, blank=True, help_text="Another row that it is about as well.")
    before = models.TextField(blank=True)
    after = models.TextField(blank=True)
    salt = models.CharField(max_length=32, blank=True)
    content = models.CharField(max_length=64)
    digest = models.CharField(max_length=64)
    blotted_at = models.DateTimeField(null=True, help_text="What it held was erased then; its hashes stay.")

    farm_path: ClassVar[str | None] = None

    class Meta:
        verbose_name_plural = "audit entries"
        indexes = [
            models.Index(fields=["business", "what", "row_id"], name="audit_of_row"),
            models.Index(fields=["business", "under"], name="audit_under"),
            models.Index(fields=["business", "beside"], condition=~models.Q(beside=""), name="audit_beside"),
            models.Index(fields=["business", "at"], name="audit_by_time"),
        ]
        ordering = ["-at", "-id"]

    def __str__(self) -> str:
        return f"{self.what} {self.row_id} {self.kind}"

    @property
    def held(self) -> Content:
        return Content(self.before, self.after, self.salt, self.seen_from, self.session)

    @property
    def facts(self) -> Facts:
        return Facts(
            self.business_id, self.at, self.by_id, self.via, self.request, self.kind, self.what,
            self.row_id, self.under, self.beside, self.content,
        )  # fmt: skip
