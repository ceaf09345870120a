"""How a business keeps its money, and what is different for one farm."""

from typing import ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from farms.models import Farm
from invoicing.domain.amounts import RoundingRule
from invoicing.domain.billing_rhythm import BillingRhythm
from invoicing.domain.late_interest import RateRule
from invoicing.domain.travel_charge import DistanceUnit
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel


class MoneyRules(TenantModel):
    """One row per business: numbers, rounding, bank, terms, reminders. Issued papers keep what held then."""

    rounding_rule = models.CharField(
        max_length=12, choices=choices_of(RoundingRule), default=RoundingRule.PER_RATE.value
    )
    tax_name = models.CharField(max_length=20, default="VAT", help_text="What the tax is called on papers.")
    registration_name = models.CharField(max_length=40, blank=True, help_text="Company number, say.")
    registration_number = models.CharField(max_length=40, blank=True)

    invoice_prefix = models.CharField(max_length=12, default="INV")
    credit_prefix = models.CharField(
        max_length=12, default="CN", help_text="The same as for invoices: one series for both."
    )
    series_by_year = models.BooleanField("each year begins at 1", default=True)

    account_name = models.CharField(max_length=70, blank=True)
    iban = models.CharField("IBAN", max_length=34, blank=True)
    bic = models.CharField("BIC", max_length=11, blank=True)
    credit_terms = models.TextField(blank=True, help_text="Printed on invoices under how to pay.")
    cash_discount_percent = models.DecimalField(
        max_digits=5, decimal_places=2, default=0, validators=[MinValueValidator(0), MaxValueValidator(100)]
    )
    cash_discount_days = models.PositiveSmallIntegerField(default=0)
    logo = models.BinaryField(null=True, blank=True)

    reminder_days = models.JSONField(
        default=list, blank=True, help_text="Days after the due day of each step, such as 7, 21, 35."
    )
    charges_interest = models.BooleanField("charge statutory interest", default=False)
    interest_margin = models.DecimalField(
        max_digits=5, decimal_places=2, default=8, help_text="Points above the reference rate."
    )
    interest_days_in_year = models.PositiveSmallIntegerField(default=365)
    rate_rule = models.CharField(
        "which reference rate holds",
        max_length=14,
        choices=choices_of(RateRule),
        default=RateRule.LAST_HALF.value,
    )
    fixed_sums = models.JSONField(
        default=list, blank=True, help_text="Pairs: from this debt on, this sum is claimed once."
    )
    distance_unit = models.CharField(
        max_length=3, choices=choices_of(DistanceUnit), default=DistanceUnit.KILOMETRE.value
    )
    bills_from = models.DateField(
        "bill visits from",
        null=True,
        blank=True,
        help_text="Visits finished before that day were billed elsewhere. Empty: every visit.",
    )
    books_begin_month = models.PositiveSmallIntegerField(
        "month the books begin",
        default=1,
        validators=[MinValueValidator(1), MaxValueValidator(12)],
        help_text="Years and quarters count from it: 2 makes quarters of Feb, May, Aug and Nov.",
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business"], name="one_row_of_money_rules")]
        verbose_name_plural = "money rules"

    def __str__(self) -> str:
        return f"money rules of business {self.business_id}"


class FarmTerms(TenantModel):
    """What is different for one farm: how often it is billed, its tax, its order number, where papers go."""

    farm = models.OneToOneField(Farm, on_delete=models.CASCADE, related_name="terms")
    rhythm = models.CharField(
        max_length=8, choices=choices_of(BillingRhythm), default=BillingRhythm.VISIT.value
    )
    tax_code = models.CharField(max_length=20, blank=True, help_text="Instead of the tax of the price list.")
    order_number = models.CharField(max_length=40, blank=True)
    buyer_reference = models.CharField(max_length=60, blank=True)
    send_to = models.JSONField(default=list, blank=True, help_text="Addresses that get its papers.")
    sends_xml = models.BooleanField("the XML goes with the mail", default=False)
    payment_days = models.PositiveSmallIntegerField(null=True, blank=True)
    gets_reminders = models.BooleanField(default=True)
    note = models.TextField(blank=True, help_text="For the office only.")

    farm_path: ClassVar[str | None] = None

    def __str__(self) -> str:
        return f"terms of farm {self.farm_id}"
