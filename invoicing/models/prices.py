from datetime import date
from typing import ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from invoicing.domain.pricing import PriceItem
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
    category = models.CharField(
        max_length=2,
        choices=TAX_CATEGORIES,
    )
    percent = models.DecimalField(
        max_digits=5, decimal_places=2, validators=[MinValueValidator(0), MaxValueValidator(100)]
    )
    reason = models.CharField(max_length=200, blank=True)
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
    """Prices from a day on, until the next list begins."""

    name = models.CharField(max_length=60)
    valid_from = models.DateField()

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
    """The price of one item of a list, without tax."""

    price_list = models.ForeignKey(PriceList, on_delete=models.CASCADE, related_name="prices")
    item = models.CharField(max_length=12, choices=choices_of(PriceItem))
    unit_price = models.DecimalField(max_digits=10, decimal_places=2, validators=[MinValueValidator(0)])
    tax_code = models.CharField(max_length=20)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["price_list", "item"], name="one_price_per_item_and_list")
        ]

    def __str__(self) -> str:
        return f"{self.item} {self.unit_price}"
