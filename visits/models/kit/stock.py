import uuid
from typing import ClassVar

from django.core.validators import MinValueValidator
from django.db import models

from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from visits.domain.kit.stock_kinds import MovementKind, UseOf, WriteOffReason
from visits.models.kit.consumable import Consumable
from visits.models.trim import Trim
from visits.models.van import Van
from visits.models.visit import Visit


class StockPlace(TenantModel):
    """Where stock lies: the store at the yard (no van), or one van, whose name it bears."""

    name = models.CharField(max_length=60)
    van = models.OneToOneField(
        Van, on_delete=models.PROTECT, related_name="stock_place", null=True, blank=True
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["business"], condition=models.Q(van__isnull=True), name="one_store_per_business"
            ),
        ]
        ordering = [models.F("van_id").asc(nulls_first=True)]

    def __str__(self) -> str:
        return self.name


class StockLot(TenantModel):
    """What was bought at one time: its number on the label, its date, what it cost is on its movement."""

    consumable = models.ForeignKey(Consumable, on_delete=models.PROTECT, related_name="lots")
    code = models.CharField(max_length=60, blank=True, help_text="As on the label.")
    expires_on = models.DateField(null=True, blank=True)
    bought_on = models.DateField()
    supplier = models.CharField(max_length=120, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = [models.F("expires_on").asc(nulls_last=True), "bought_on", "id"]

    def __str__(self) -> str:
        return self.code or f"lot of {self.bought_on}"


class StockCount(TenantModel):
    """Somebody counted: at that moment so much lay there, whatever the ledger says then or later."""

    consumable = models.ForeignKey(Consumable, on_delete=models.PROTECT, related_name="counts")
    place = models.ForeignKey(StockPlace, on_delete=models.PROTECT, related_name="counts")
    counted = models.DecimalField(max_digits=10, decimal_places=2, validators=[MinValueValidator(0)])
    at = models.DateTimeField()
    note = models.CharField(max_length=200, blank=True)
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    noted_at = models.DateTimeField()
    uid = models.UUIDField(
        default=uuid.uuid4, help_text="Made by the form, so that sending it twice counts once."
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "uid", "consumable"], name="count_arrives_once"),
            models.CheckConstraint(condition=models.Q(counted__gte=0), name="nobody_counts_below_nought"),
        ]
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return f"{self.counted} of {self.consumable_id} at {self.at}"


class StockMovement(TenantModel):
    """One line of the stock ledger; never changed, only followed by another. Quantity is signed, in the unit.

    Of what is bought the line names its lot and its whole cost. What is moved is two lines with one `uid`. A use names
    what it was learned from. A count writes the difference it found, and again when something older is heard of late.
    """

    consumable = models.ForeignKey(Consumable, on_delete=models.PROTECT, related_name="movements")
    place = models.ForeignKey(StockPlace, on_delete=models.PROTECT, related_name="movements")
    kind = models.CharField(max_length=12, choices=choices_of(MovementKind))
    quantity = models.DecimalField(max_digits=10, decimal_places=2)
    at = models.DateTimeField(db_index=True)
    lot = models.ForeignKey(
        StockLot, on_delete=models.PROTECT, related_name="movements", null=True, blank=True
    )
    cost = models.DecimalField(
        max_digits=10,
        decimal_places=2,
        null=True,
        blank=True,
        help_text="Of the whole quantity bought, without tax.",
    )
    use_of = models.CharField(max_length=8, choices=choices_of(UseOf), blank=True)
    trim = models.ForeignKey(
        Trim, on_delete=models.PROTECT, related_name="consumables_used", null=True, blank=True
    )
    visit = models.ForeignKey(
        Visit, on_delete=models.PROTECT, related_name="consumables_used", null=True, blank=True
    )
    count = models.ForeignKey(
        StockCount, on_delete=models.PROTECT, related_name="movements", null=True, blank=True
    )
    because = models.CharField(max_length=8, choices=choices_of(WriteOffReason), blank=True)
    note = models.CharField(max_length=200, blank=True)
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True)
    noted_at = models.DateTimeField()
    uid = models.UUIDField(
        null=True, blank=True, help_text="Made by the form, so that sending it twice books once."
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["business", "uid", "consumable", "place", "lot"],
                condition=models.Q(uid__isnull=False, lot__isnull=False),
                name="movement_of_a_lot_arrives_once",
            ),
            models.UniqueConstraint(
                fields=["business", "uid", "consumable", "place"],
                condition=models.Q(uid__isnull=False, lot__isnull=True),
                name="movement_arrives_once",
            ),
            models.CheckConstraint(
                condition=models.Q(kind="bought", quantity__gt=0, lot__isnull=False)
                | models.Q(kind="used", lot__isnull=True, use_of__gt="")
                | models.Q(kind="counted", count__isnull=False)
                | models.Q(kind="moved", uid__isnull=False)
                | models.Q(kind="written_off", quantity__lt=0, because__gt=""),
                name="movement_says_what_it_is",
            ),
            models.CheckConstraint(
                condition=models.Q(cost__isnull=True) | models.Q(kind="bought", cost__gte=0),
                name="only_what_is_bought_has_a_cost",
            ),
            models.CheckConstraint(condition=~models.Q(quantity=0), name="movement_moves_something"),
        ]
        indexes = [models.Index(fields=["consumable", "at", "id"], name="ledger_in_its_order")]
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return f"{self.kind} {self.quantity} of {self.consumable_id}"


class SupplyOrder(TenantModel):
    """What was ordered from one supplier at one time."""

    supplier = models.CharField(max_length=120, blank=True)
    ordered_at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    mailed_to = models.EmailField(blank=True)
    note = models.CharField(max_length=300, blank=True)
    called_off_at = models.DateTimeField(null=True, blank=True)
    uid = models.UUIDField(default=uuid.uuid4)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "uid"], name="order_is_placed_once")]
        ordering = ["-ordered_at", "-id"]

    def __str__(self) -> str:
        return f"order of {self.ordered_at:%Y-%m-%d}"


class SupplyLine(TenantModel):
    """So much of a consumable on an order, when it should come, and how much of it has come."""

    order = models.ForeignKey(SupplyOrder, on_delete=models.CASCADE, related_name="lines")
    consumable = models.ForeignKey(Consumable, on_delete=models.PROTECT, related_name="supply_lines")
    quantity = models.DecimalField(max_digits=10, decimal_places=2)
    arrived = models.DecimalField(max_digits=10, decimal_places=2, default=0)
    expected_on = models.DateField()
    closed_at = models.DateTimeField(null=True, blank=True, help_text="All came, or the rest will not.")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["order", "consumable"], name="one_line_per_order_and_consumable"),
            models.CheckConstraint(condition=models.Q(quantity__gt=0), name="something_is_ordered"),
        ]

    def __str__(self) -> str:
        return f"{self.quantity} of {self.consumable_id}"


class TypedWeather(TenantModel):
    """How cold and how warm a day is said to become, typed from whatever forecast the trimmer trusts."""

    day = models.DateField()
    lowest_celsius = models.DecimalField(max_digits=4, decimal_places=1)
    highest_celsius = models.DecimalField(max_digits=4, decimal_places=1, null=True, blank=True)
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    noted_at = models.DateTimeField()

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "day"], name="one_typed_weather_per_day"),
            models.CheckConstraint(
                condition=models.Q(highest_celsius__isnull=True)
                | models.Q(highest_celsius__gte=models.F("lowest_celsius")),
                name="highest_is_not_below_lowest",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.day}: {self.lowest_celsius} °C"
