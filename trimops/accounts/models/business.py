from functools import cache
from zoneinfo import ZoneInfo, available_timezones

from django.core.exceptions import ValidationError
from django.core.validators import RegexValidator
from django.db import models

COUNTRY_CODE = RegexValidator(r"^[A-Z]{2}$", "Two letters of ISO 3166-1.")


@cache
def known_zones() -> frozenset[str]:
    """Names of the IANA database, read from the disk once: some hundred folders and files each time else."""
    return frozenset(available_timezones())


def require_known_zone(name: str) -> None:
    """Refuse a time zone name that the IANA database does not hold."""
    if name not in known_zones():
        raise ValidationError(f"“{name}” is not a time zone name such as Europe/London.")


class Business(models.Model):
    """The tenant root: one trimming business, its zone, its currency and what its papers say of it."""

    name = models.CharField(max_length=120)
    timezone = models.CharField(max_length=64, default="Europe/London", validators=[require_known_zone])
    currency = models.CharField(
        max_length=3, default="GBP", validators=[RegexValidator(r"^[A-Z]{3}$", "Three letters of ISO 4217.")]
    )
    country = models.CharField(max_length=2, default="GB", validators=[COUNTRY_CODE])
    region = models.CharField(
        max_length=10,
        blank=True,
        help_text="The part of the country whose public holidays count, if it has parts.",
    )
    works_holidays = models.BooleanField("goes out on public holidays", default=True)
    address = models.TextField(blank=True)
    email = models.EmailField(blank=True)
    phone = models.CharField(max_length=40, blank=True)
    vat_number = models.CharField(max_length=32, blank=True)
    bank_details = models.TextField(blank=True, help_text="Printed on invoices as the way to pay.")
    payment_days = models.PositiveSmallIntegerField(default=30)
    proposes_weeks = models.BooleanField("has the coming days planned each evening", default=False)
    needs_second_step = models.BooleanField("asks a second step of who works here", default=False)
    created_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        verbose_name_plural = "businesses"

    def __str__(self) -> str:
        return self.name

    @property
    def zone(self) -> ZoneInfo:
        return ZoneInfo(self.timezone)
