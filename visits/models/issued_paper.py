"""Papers as they left the house: rendered once, kept with their hash, replaced only by a later version."""

from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel
from visits.models.trim import Trim
from visits.models.visit import Visit


class IssuedPaper(TenantModel):
    """One version: its content as values, the PDF, its SHA-256, and what it changes against the one before."""

    version = models.PositiveSmallIntegerField(default=1)
    content = models.JSONField()
    pdf = models.BinaryField()
    sha256 = models.CharField(max_length=64)
    made_at = models.DateTimeField()
    made_by = models.ForeignKey(
        "accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )
    changed = models.TextField(
        blank=True, help_text="What this version changes, in words; empty for the first."
    )
    mailed_to = models.JSONField(default=list, blank=True, help_text="Addresses that were told of it.")

    class Meta:
        abstract = True


class IssuedReport(IssuedPaper):
    """A version of a visit's report."""

    visit = models.ForeignKey(Visit, on_delete=models.CASCADE, related_name="issued_reports")

    farm_path: ClassVar[str | None] = "visit__farm_id"

    class Meta:
        constraints = [models.UniqueConstraint(fields=["visit", "version"], name="each_report_version_once")]
        ordering = ["visit", "version"]

    def __str__(self) -> str:
        return f"report of visit {self.visit_id}, version {self.version}"


class ReferralLetter(IssuedPaper):
    """A version of the letter that hands one cow to the vet."""

    trim = models.ForeignKey(Trim, on_delete=models.CASCADE, related_name="letters")

    farm_path: ClassVar[str | None] = "trim__visit__farm_id"

    class Meta:
        constraints = [models.UniqueConstraint(fields=["trim", "version"], name="each_letter_version_once")]
        ordering = ["trim", "version"]

    def __str__(self) -> str:
        return f"letter for trim {self.trim_id}, version {self.version}"
