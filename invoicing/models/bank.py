"""What the bank says."""

from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet


class BankMapping(TenantModel):
    """Which column of a bank's CSV holds what, and how it writes days and amounts."""

    name = models.CharField(max_length=60)
    columns = models.JSONField(default=dict)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "name"], name="one_bank_mapping_per_name")]
        ordering = ["name"]

    def __str__(self) -> str:
        return self.name


class BankFile(TenantModel):
    """A file of the bank as it came, kept for good: the same file again is known by its hash."""

    file_name = models.CharField(max_length=200)
    sha256 = models.CharField(max_length=64)
    content = models.BinaryField()
    kept_at = models.DateTimeField()
    kept_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    read_at = models.DateTimeField(null=True, blank=True, help_text="Empty: its columns are not told yet.")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "sha256"], name="a_bank_file_is_kept_once")
        ]
        ordering = ["-kept_at", "-id"]

    def __str__(self) -> str:
        return self.file_name


class BankStatement(TenantModel):
    """One statement out of a bank's file; a file may hold several."""

    file = models.ForeignKey(BankFile, on_delete=models.PROTECT, related_name="statements")
    form = models.CharField(max_length=8, choices=[("camt053", "CAMT.053"), ("csv", "CSV")])
    name = models.CharField(max_length=60, blank=True, help_text="What the bank calls it.")
    account = models.CharField(max_length=40, blank=True)
    currency = models.CharField(max_length=3, blank=True)
    first_day = models.DateField(null=True, blank=True)
    last_day = models.DateField(null=True, blank=True)
    opening = models.DecimalField(max_digits=16, decimal_places=4, null=True, blank=True)
    closing = models.DecimalField(max_digits=16, decimal_places=4, null=True, blank=True)
    known_before = models.PositiveIntegerField(default=0, help_text="Entries that had come already.")
    warnings = models.JSONField(default=list, blank=True)
    read_at = models.DateTimeField()
    read_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["-read_at", "-id"]

    def __str__(self) -> str:
        return self.name or f"statement {self.pk}"


class BankEntryQuerySet(TenantQuerySet["BankEntry"]):
    def to_match(self) -> "BankEntryQuerySet":
        """Neither booked as a payment that stands nor set aside."""
        standing = models.Q(payments__isnull=False, payments__taken_back_at__isnull=True)
        booked = self.filter(standing).values("pk")
        return self.filter(set_aside_at__isnull=True).exclude(pk__in=booked)


class BankEntry(TenantModel):
    """One booking on the account. `key` names it for good, so that statements which overlap bring it once."""

    statement = models.ForeignKey(BankStatement, on_delete=models.PROTECT, related_name="entries")
    key = models.CharField(max_length=100)
    booked_on = models.DateField()
    amount = models.DecimalField(max_digits=16, decimal_places=4, help_text="Negative: it left the account.")
    currency = models.CharField(max_length=3)
    party_name = models.CharField(max_length=140, blank=True)
    party_account = models.CharField(max_length=40, blank=True)
    reference = models.CharField(max_length=140, blank=True)
    text = models.TextField(blank=True)
    charges = models.DecimalField(
        max_digits=16, decimal_places=4, default=0, help_text="Kept back by banks before it was booked."
    )
    is_reversal = models.BooleanField(default=False, help_text="It takes an earlier booking back.")
    set_aside_at = models.DateTimeField(null=True, blank=True)
    set_aside_because = models.CharField(max_length=200, blank=True)

    farm_path: ClassVar[str | None] = None
    objects: ClassVar = BankEntryQuerySet.as_manager()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "key"], name="a_bank_entry_comes_once"),
        ]
        indexes = [models.Index(fields=["business", "booked_on"], name="bank_entries_by_day")]
        ordering = ["-booked_on", "-id"]
        verbose_name_plural = "bank entries"

    def __str__(self) -> str:
        return f"{self.booked_on}: {self.amount}"
