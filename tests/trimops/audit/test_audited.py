"""Every model is in the trail or says why not; the table names columns that exist and that can be written down."""

from django.apps import apps
from django.db import models

from tests.architecture.source_tree import name_of, product_files
from trimops.audit.audited import AUDITED, NOT_AUDITED, NOT_AUDITED_APPS

KNOWN = (
    *(models.CharField, models.TextField, models.BooleanField, models.IntegerField, models.BigIntegerField),
    *(models.DecimalField, models.DateField, models.TimeField, models.UUIDField, models.JSONField),
    *(models.FloatField, models.ForeignKey, models.GenericIPAddressField),
)
SECRET = {"secret", "secret_hash", "digest", "token_key", "password", "key_hash"}


def labels() -> set[str]:
    """Migrations and tests make models of their own; these are the product's and the libraries'."""
    return {model._meta.label_lower for model in apps.get_models(include_auto_created=True)}


def test_a_new_model_is_kept_in_the_trail_or_says_why_not():
    unnamed = {
        label
        for label in labels() - AUDITED.keys() - NOT_AUDITED.keys()
        if label.partition(".")[0] not in NOT_AUDITED_APPS
    }
    assert not unnamed, "name them in trimops/audit/audited.py: kept, or not and why"


def test_no_model_is_named_twice_and_none_that_is_gone():
    assert not AUDITED.keys() & NOT_AUDITED.keys()
    assert not (AUDITED.keys() | NOT_AUDITED.keys()) - labels()
    assert all(reason.strip() for reason in (*NOT_AUDITED.values(), *NOT_AUDITED_APPS.values()))


def test_the_columns_that_are_named_are_there():
    for label, kept in AUDITED.items():
        there = {field.attname for field in apps.get_model(label)._meta.concrete_fields}
        named = {kept.business, *kept.under, *kept.beside, *kept.masked, *kept.unread, *kept.quiet}
        assert named <= there, label


def test_bytes_and_secrets_are_never_written_down():
    for label, kept in AUDITED.items():
        for field in apps.get_model(label)._meta.concrete_fields:
            hidden = field.attname in kept.masked | kept.unread
            if isinstance(field, models.BinaryField) or field.attname in SECRET:
                assert hidden, f"{label}.{field.attname}"
            assert hidden or isinstance(field, KNOWN), f"{label}.{field.attname} has no canonical text"


def test_the_way_round_the_trail_is_taken_by_the_demo_alone_and_says_why():
    texts = {name_of(path): path.read_text(encoding="utf-8") for path in product_files()}
    users = {name: text for name, text in texts.items() if "import unaudited" in text}
    assert users.keys() == {"trimops/portal/demo/run_demo.py"}
    assert 'with unaudited("' in users["trimops/portal/demo/run_demo.py"]
