"""Which database tables hold rows of a business.

The lock goes by table, not by class: a second, unmanaged model over the same table, or a hand-made `Query`, meets
the same wall. A table that Django makes by itself to link two sides (many-to-many) counts as soon as one side does.
"""

from django.apps import apps
from django.db.models import Model

_known: tuple[list[type[Model]], dict[str, type[Model]]] = ([], {})


def is_tenant_model(model: object) -> bool:
    """Whether `model` is a class whose rows belong to one business each."""
    return isinstance(model, type) and getattr(model, "holds_rows_of_a_business", False) is True


def tenant_tables() -> dict[str, type[Model]]:
    """Table name -> the model that holds it. Rebuilt when Django's list of models changes, else kept."""
    global _known
    models = apps.get_models(include_auto_created=True)
    if _known[0] is not models:
        # An unmanaged twin of a table must not hide the model that owns it, so owners come last and win.
        held = [model for model in models if _holds(model)]
        held.sort(key=is_tenant_model)
        _known = (models, {model._meta.db_table: model for model in held})
    return _known[1]


def _holds(model: type[Model]) -> bool:
    if is_tenant_model(model):
        return True
    if not model._meta.auto_created:
        return False
    return any(is_tenant_model(field.related_model) for field in model._meta.get_fields())
