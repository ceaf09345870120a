from typing import ClassVar

from django.core.exceptions import ValidationError
from django.db import models

from farms.domain.told_by import FALLBACK, LANGUAGES, ToldBy
from farms.models.farm import Farm
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel


class Contact(TenantModel):
    """A person at a farm, or its vet: whom to ring and who gets the papers."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="contacts")
    name = models.CharField(max_length=120)
    part = models.CharField("part", max_length=60, help_text="Herd manager, owner, vet, office …")
    phone = models.CharField(max_length=40, blank=True)
    email = models.EmailField(blank=True)
    gets_reports = models.BooleanField(default=False)
    gets_invitations = models.BooleanField(
        "gets visits as calendar invitations",
        default=False,
        help_text="They come from the e-mail address of the business, which must have one.",
    )
    told_by = models.CharField(
        "told of visits", max_length=4, choices=choices_of(ToldBy), default="", blank=True
    )
    language = models.CharField(max_length=8, choices=list(LANGUAGES.items()), default=FALLBACK)
    opted_out_at = models.DateTimeField(
        null=True, blank=True, editable=False, help_text="Since when the person wants no such messages."
    )

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        ordering = ["name"]

    def __str__(self) -> str:
        return f"{self.name} ({self.part})"

    def clean(self) -> None:
        """Whoever is told needs an address for it."""
        if self.told_by == ToldBy.MAIL and not self.email:
            raise ValidationError({"email": "To be told by e-mail an address is needed."})
        if self.told_by == ToldBy.SMS and not self.phone:
            raise ValidationError({"phone": "To be told by SMS a number is needed."})

    @property
    def address_told(self) -> str:
        """Where messages about visits go; empty for whoever is not told, or wants none."""
        if self.opted_out_at is not None:
            return ""
        return {ToldBy.MAIL: self.email, ToldBy.SMS: self.phone}.get(ToldBy(self.told_by), "")
