"""How long a business keeps what it need not keep for good."""

from typing import ClassVar

from django.core.exceptions import ValidationError
from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from trimops.audit.domain.cut_line import LEAST_YEARS
from trimops.tenancy.models import TenantModel

MONTHS_IN_YEAR = 12


def _period(
    words: str, usual: int, least: int, most: int, says: str
) -> "models.PositiveSmallIntegerField[int, int]":
    limits = [MinValueValidator(least), MaxValueValidator(most)]
    return models.PositiveSmallIntegerField(words, default=usual, validators=limits, help_text=says)


class RetentionRules(TenantModel):
    """Periods after which the nightly clean-up takes things away. A business without a row has the usual ones.

    The usual periods are common practice, no source; how long books must be kept is a matter of each country's law, so
    the owner gives that number. Nothing of the books is taken away by the program, however old.
    """

    books_years = _period(
        "years that the law wants books kept",
        7,
        3,
        30,
        "Ask your accountant. Nothing of them goes by itself.",
    )
    trail_years = _period(
        "years for who changed what",
        10,
        LEAST_YEARS,
        30,
        "What is older is cut from the trail, and a seal says so. Never shorter than the books.",
    )
    photos_months = _period("months for photos of feet", 60, 6, 360, "Reports keep what was printed on them.")
    crush_months = _period(
        "months for what phones wrote at the crush",
        36,
        6,
        360,
        "What counted in the end stays. A visit whose earlier versions went takes no more cows.",
    )
    messages_months = _period(
        "months for what went out",
        14,
        1,
        120,
        "Mails, text messages, news to other programs. Their words go after 30 days.",
    )
    watches_months = _period(
        "months for watches over lone work", 36, 3, 120, "When somebody was asked, told, and was well."
    )
    herd_lists_months = _period("months for herd lists as handed in", 12, 1, 120, "The cows in them stay.")
    links_months = _period(
        "months for links that have ended", 24, 1, 120, "The vet's, and those to invoices: who was let in."
    )
    errands_days = _period(
        "days for the log of what ran by itself", 14, 2, 365, "What got stuck stays half a year."
    )
    bank_files_months = _period(
        "months for files of the bank", 120, 36, 360, "Their bookings stay. Never shorter than the books."
    )
    changed_at = models.DateTimeField()
    changed_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business"], name="one_set_of_retention_rules")]
        verbose_name_plural = "retention rules"

    def __str__(self) -> str:
        return f"retention rules of business {self.business_id}"

    def clean(self) -> None:
        """A file of the bank is a voucher of the books, and the trail says who wrote in them."""
        years = self.books_years or 0
        least = {"bank_files_months": years * MONTHS_IN_YEAR, "trail_years": years}
        short = {name: least[name] for name in least if (getattr(self, name) or 0) < least[name]}
        if short:
            says = "as long as the law wants the books kept."
            raise ValidationError({name: f"At least {number}: {says}" for name, number in short.items()})
