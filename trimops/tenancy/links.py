"""The foreign keys by which a row hangs on other rows of its business."""

from typing import Any

from trimops.tenancy.tables import is_tenant_model


def tenant_links(model: Any) -> list[Any]:
    """The foreign keys of `model` that lead to a tenant model."""
    return [field for field in model._meta.concrete_fields if is_tenant_model(field.related_model)]


def stray_links(row: Any) -> list[str]:
    """Names of the foreign keys whose row is at hand and says another business. Reads nothing from the database."""
    return [
        field.name
        for field in tenant_links(type(row))
        if field.is_cached(row) and is_of_another(getattr(row, field.name), row.business_id)
    ]


def links_at_hand(row: Any) -> set[str]:
    """Names of the foreign keys whose row is at hand, lies in the database and is of this business.

    Whether such a row exists was answered when it was read; so was its business, which is this row's business too.
    Should one have gone since, the database itself refuses.
    """
    there = [
        field
        for field in row._meta.concrete_fields
        if field.is_relation and field.is_cached(row) and _lies_there(row, field)
    ]
    names = {field.name for field in there}
    return names | {"business"} if any(is_tenant_model(field.related_model) for field in there) else names


def _lies_there(row: Any, field: Any) -> bool:
    linked = field.get_cached_value(row)
    if linked is None or linked._state.adding:
        return False
    is_the_one = getattr(linked, field.target_field.attname) == getattr(row, field.attname)
    return is_the_one and not is_of_another(linked, row.business_id)


def is_of_another(value: Any, business_id: Any) -> bool:
    """Whether `value` is a row of a business other than `business_id`."""
    return is_tenant_model(type(value)) and value.business_id != business_id
