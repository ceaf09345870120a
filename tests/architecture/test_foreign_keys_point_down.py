"""A model may lean on its own app and those below; a foreign key written as a string cannot hide the way up."""

import pytest
from django.apps import apps

# From the ground upwards. A label that is not here is a library's: anyone may lean on it.
ORDER = ["tenancy", "accounts", "trimops", "web", "farms", "visits", "invoicing", "portal"]
GROUND = {"tenancy", "accounts", "trimops", "web"}


def ranks_up(from_label: str, to_label: str) -> bool:
    """True where a key from one app to the other points up. The ground's own apps count as one."""
    if from_label not in ORDER or to_label not in ORDER or {from_label, to_label} <= GROUND:
        return False
    return ORDER.index(to_label) > ORDER.index(from_label)


def keys() -> list[tuple[str, str, str]]:
    found = []
    for model in apps.get_models(include_auto_created=True):
        for field in model._meta.get_fields():
            if field.is_relation and field.related_model and not field.auto_created:
                meta = field.related_model._meta
                found.append((model._meta.app_label, f"{model.__name__}.{field.name}", meta.app_label))
    return found


def test_no_foreign_key_points_up():
    up = [f"{label}.{name} -> {to}" for label, name, to in keys() if ranks_up(label, to)]
    assert not up


def test_the_keys_of_the_product_were_looked_at():
    assert {label for label, _, _ in keys()} >= {"farms", "visits", "invoicing"}


@pytest.mark.parametrize(
    ("from_label", "to_label", "expected"),
    [
        ("farms", "visits", True),
        ("visits", "farms", False),
        ("accounts", "farms", True),
        ("tenancy", "accounts", False),
    ],
)
def test_up_is_told_from_down(from_label, to_label, expected):
    assert ranks_up(from_label, to_label) is expected
