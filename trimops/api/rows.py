"""Serializers of rows of a business: they ask no database but within the scope."""

from decimal import Decimal
from typing import Any

from django.core.validators import RegexValidator
from django.db import models
from rest_framework import serializers
from rest_framework.validators import UniqueValidator

from trimops.api.fields import Day, Moment
from trimops.kernel.scope import Scope
from trimops.tenancy.models import TenantModel

MOST_ID = 999_999_999_999_999_999
# The largest that PostgreSQL holds; what SQLite would hold besides is not described, so that both take the same.
MOST_OF: dict[Any, int] = {
    models.PositiveSmallIntegerField: 32_767,
    models.PositiveIntegerField: 2_147_483_647,
}


class RowField(serializers.Field):  # type: ignore[type-arg]
    """Another row by its id; one that is not within the caller's scope is not there."""

    default_error_messages = {"absent": "There is no such {what} here.", "kind": "Must be a whole number."}

    def __init__(self, model: type[TenantModel], **options: Any) -> None:
        self.model = model
        super().__init__(**options)

    def use_pk_only_optimization(self) -> bool:
        return True

    def get_attribute(self, instance: Any) -> Any:
        # because: the key stands in the row itself; following it would read the other row
        return getattr(instance, f"{self.source}_id", None)

    def to_representation(self, value: Any) -> int:
        return int(getattr(value, "pk", value))

    def to_internal_value(self, data: Any) -> Any:
        if isinstance(data, float) and data.is_integer():
            data = int(data)  # because: JSON knows one kind of number, and 4.0 is 4
        if not isinstance(data, int) or isinstance(data, bool) or not 0 < data <= MOST_ID:
            self.fail("kind")
        scope: Scope = self.context["scope"]
        row = self.model._default_manager.all().within(scope).filter(pk=data).first()
        if row is None:
            self.fail("absent", what=self.model._meta.verbose_name)
        return row


class RowContent(serializers.ModelSerializer):  # type: ignore[type-arg]
    """A row, or what may be said of one. Whether it is unique the service asks, within the business."""

    serializer_field_mapping = {
        **serializers.ModelSerializer.serializer_field_mapping,
        models.DateField: Day,
        models.DateTimeField: Moment,
    }

    def get_validators(self) -> list[Any]:
        return []

    def get_unique_together_validators(self) -> list[Any]:
        return []

    def build_standard_field(self, field_name: str, model_field: Any) -> Any:
        kind, options = super().build_standard_field(field_name, model_field)
        if "validators" in options:
            kept = [each for each in options["validators"] if not isinstance(each, UniqueValidator)]
            options["validators"] = kept
        for name in ("min_value", "max_value"):
            # because: a row's own limit may be a float, which is none of a decimal
            if isinstance(limit := options.get(name), float):
                options[name] = Decimal(str(limit))
        if (most := MOST_OF.get(type(model_field))) is not None and "choices" not in options:
            options["max_value"] = min(most, options.get("max_value", most))
        if any(isinstance(each, RegexValidator) for each in options.get("validators", [])):
            # because: what is described by a pattern is of it with all its signs
            options["trim_whitespace"] = False
        return kind, options

    def build_relational_field(self, field_name: str, relation_info: Any) -> Any:
        model_field = relation_info.model_field
        options: dict[str, Any] = {"model": relation_info.related_model}
        if model_field.null:
            options |= {"allow_null": True, "required": False}
        return RowField, options
