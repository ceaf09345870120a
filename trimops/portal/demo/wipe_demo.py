"""The old demo business goes; a database that holds anybody else's business is not touched."""

from django.apps import apps
from django.db import connection, models, transaction

from trimops.accounts.models import Business, Membership, User
from trimops.audit.models.audit_locks import deleting_allowed
from trimops.kernel.errors import RuleBroken
from trimops.portal.demo.demo_people import cast
from trimops.tenancy.models import TenantModel
from trimops.tenancy.unscoped import unscoped


class NotADemoDatabase(RuleBroken):
    """There is a business here that the demo did not make."""

    code = "not_a_demo_database"


def demo_business() -> Business | None:
    """The demo's business if it is here."""
    return Business.objects.filter(name=cast().business["name"]).first()


def refuse_other_businesses() -> None:
    """NotADemoDatabase when anybody else's business is in the database."""
    other = Business.objects.exclude(name=cast().business["name"]).first()
    if other is not None:
        raise NotADemoDatabase(
            f"This database holds “{other}”, which is not the demo: nothing was touched. "
            "Point TRIMOPS_DATA_DIR or DATABASE_URL to an empty one and run the demo again."
        )


@transaction.atomic
def wipe_demo() -> None:
    """Everything of the demo business, its people and the business itself."""
    refuse_other_businesses()
    business = demo_business()
    with unscoped("nothing of the demo's rows is left when its people and the business itself go"):
        if business is not None:
            _empty_tables(business)
            Membership.objects.filter(business=business).delete()
        User.objects.filter(email__in=[person.email for person in cast().people]).delete()
        if business is not None:
            business.delete()


def _empty_tables(business: Business) -> None:
    """Straight SQL: history is some hundred thousand rows, whose links are only checked at the commit."""
    with deleting_allowed(connection), connection.cursor() as cursor:
        for model in tenant_models():
            table = connection.ops.quote_name(model._meta.db_table)
            cursor.execute(f"DELETE FROM {table} WHERE business_id = %s", [business.pk])


def tenant_models() -> list[type[models.Model]]:
    """Every model whose rows belong to a business, the youngest first."""
    return [model for model in reversed(apps.get_models()) if issubclass(model, TenantModel)]
