from datetime import date
from typing import ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from farms.models import Farm
from invoicing.domain.agreed_prices import AgreementKind
from invoicing.domain.price_steps import StepRule
from invoicing.domain.pricing import PriceItem
from invoicing.domain.travel_charge import DistanceUnit, TravelRule
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet

TAX_CATEGORIES = [
    ("S", "Standard or reduced"),
    ("Z", "Zero rated"),
    ("E", "Exempt"),
    ("AE", "Reverse charge"),
    ("O", "Outside"),
]
"""Codes of UNCL 5305, as EN 16931 uses them."""


class TaxRate(TenantModel):
    """A rate that holds from a day on, with its category of UNCL 5305 and, where no tax is due, the reason."""

    code = models.CharField(max_length=20)
    name = models.CharField(max_length=60, blank=True, help_text="What people call it: standard, reduced.")
    category = models.CharField(
        max_length=2,
        choices=TAX_CATEGORIES,
    )
    percent = models.DecimalField(
        max_digits=5, decimal_places=2, validators=[MinValueValidator(0), MaxValueValidator(100)]
    )
    reason = models.CharField(max_length=200, blank=True)
    reason_code = models.CharField(max_length=30, blank=True, help_text="Of the VATEX list, if one fits.")
    valid_from = models.DateField()

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["business", "code", "valid_from"], name="one_tax_rate_per_code_and_day"
            )
        ]
        ordering = ["code", "-valid_from"]

    def __str__(self) -> str:
        return f"{self.code} {self.percent} %"


class PriceListQuerySet(TenantQuerySet["PriceList"]):
    def held_on(self, day: date) -> "PriceListQuerySet":
        """Lists in force on that day, the latest first."""
        return self.filter(valid_from__lte=day).order_by("-valid_from")


class PriceList(TenantModel):
    """Prices from a day on, until the next list begins, with the rules that hold beside them."""

    name = models.CharField(max_length=60)
    valid_from = models.DateField()
    step_rule = models.CharField(
        max_length=8, choices=choices_of(StepRule), default=StepRule.WHOLE.value, help_text="How steps count."
    )
    travel_rule = models.CharField(
        max_length=8, choices=choices_of(TravelRule), default=TravelRule.NONE.value
    )
    travel_unit = models.CharField(
        max_length=3, choices=choices_of(DistanceUnit), default=DistanceUnit.KILOMETRE.value
    )
    minimum_charge = models.DecimalField(
        max_digits=14,
        decimal_places=4,
        default=0,
        validators=[MinValueValidator(0)],
        help_text="A visit is not charged less, before tax.",
    )
    guarantee_days = models.PositiveSmallIntegerField(
        default=0, help_text="A re-check of a foot within so many days of its trim is free; 0: none is."
    )
    usual_from = models.TimeField(null=True, blank=True, help_text="Before it a visit is out of hours.")
    usual_until = models.TimeField(null=True, blank=True, help_text="After it a visit is out of hours.")
    usual_weekdays = models.CharField(
        max_length=7, default="12345", help_text="Monday is 1; on the others a visit is out of hours."
    )

    farm_path: ClassVar[str | None] = None
    objects: ClassVar = PriceListQuerySet.as_manager()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "valid_from"], name="one_price_list_per_day")
        ]
        ordering = ["-valid_from"]

    def __str__(self) -> str:
        return self.name


class Price(TenantModel):
    """The price of one item of a list, without tax, from that many on."""

    price_list = models.ForeignKey(PriceList, on_delete=models.CASCADE, related_name="prices")
    item = models.CharField(max_length=12, choices=choices_of(PriceItem))
    from_quantity = models.PositiveIntegerField(default=1, validators=[MinValueValidator(1)])
    unit_price = models.DecimalField(max_digits=14, decimal_places=4, validators=[MinValueValidator(0)])
    tax_code = models.CharField(max_length=20)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["price_list", "item", "from_quantity"], name="one_price_per_item_step_and_list"
            )
        ]
        ordering = ["from_quantity"]

    def __str__(self) -> str:
        return f"{self.item} {self.unit_price}"


class TravelBand(TenantModel):
    """What travel costs up to a distance from the base; null: beyond all others."""

    price_list = models.ForeignKey(PriceList, on_delete=models.CASCADE, related_name="travel_bands")
    up_to = models.DecimalField(max_digits=8, decimal_places=1, null=True, blank=True)
    price = models.DecimalField(max_digits=14, decimal_places=4, validators=[MinValueValidator(0)])

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["price_list", "up_to"], name="one_travel_band_per_distance")
        ]
        ordering = [models.F("up_to").asc(nulls_last=True)]

    def __str__(self) -> str:
        return f"up to {self.up_to}: {self.price}"


class AgreementQuerySet(TenantQuerySet["Agreement"]):
    def held_on(self, day: date) -> "AgreementQuerySet":
        """Agreements in force on that day, the latest first."""
        open_end = models.Q(valid_until__isnull=True) | models.Q(valid_until__gte=day)
        return self.filter(open_end, valid_from__lte=day).order_by("-valid_from", "-id")


class Agreement(TenantModel):
    """What was agreed with one farm: percent off, or a price of its own; for one item or (blank) for all."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="agreements")
    item = models.CharField(max_length=12, choices=choices_of(PriceItem), blank=True)
    kind = models.CharField(max_length=8, choices=choices_of(AgreementKind))
    amount = models.DecimalField(
        max_digits=14,
        decimal_places=4,
        validators=[MinValueValidator(0)],
        help_text="Percent off, or the price.",
    )
    why = models.CharField(max_length=200, help_text="Printed beside the line.")
    valid_from = models.DateField()
    valid_until = models.DateField(null=True, blank=True)

    farm_path: ClassVar[str | None] = None
    objects: ClassVar = AgreementQuerySet.as_manager()

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(valid_until__isnull=True)
                | models.Q(valid_until__gte=models.F("valid_from")),
                name="agreement_ends_after_it_begins",
            )
        ]
        ordering = ["-valid_from", "-id"]

    def __str__(self) -> str:
        return f"{self.kind} {self.amount} for farm {self.farm_id}"
