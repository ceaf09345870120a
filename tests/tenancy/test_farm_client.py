"""A farm client sees one farm, and nothing of what belongs to the business as a whole."""

import pytest
from django.apps import apps
from django.db.models import Count

from farms.models import Contact, Cow, CowIdentity, Farm, Payer
from trimops.kernel.scope import Scope
from trimops.tenancy.errors import ScopeRequired
from trimops.tenancy.tables import is_tenant_model
from visits.models import Trim, Van, Visit, VisitEvent

TENANT_MODELS = [model for model in apps.get_models() if is_tenant_model(model)]


def seen(world, model=Visit):
    return model.objects.within(world.mine.farm_scope)


@pytest.mark.parametrize(
    "model", [Farm, Visit, VisitEvent, Cow, CowIdentity, Contact, Trim], ids=lambda m: m.__name__
)
def test_one_of_the_two_farms_is_seen(world, model):
    assert seen(world, model).count() == 1
    assert model.objects.within(world.mine.scope).count() == 2


@pytest.mark.parametrize("model", [Van, Payer], ids=lambda model: model.__name__)
def test_what_leads_to_no_farm_is_not_seen(world, model):
    assert list(seen(world, model)) == []
    assert seen(world, model).count() == 0
    assert model.objects.within(world.mine.scope).count() == 1


@pytest.mark.parametrize("model", TENANT_MODELS, ids=lambda model: model.__name__)
def test_every_model_can_be_asked_by_either_scope(world, model):
    assert (
        model.objects.within(world.mine.farm_scope).count() <= model.objects.within(world.mine.scope).count()
    )


@pytest.mark.parametrize("model", TENANT_MODELS, ids=lambda model: model.__name__)
def test_another_businesss_farm_shows_nothing(world, model):
    crossed = Scope(world.mine.business.pk, world.theirs.farm.pk)
    assert not model.objects.within(crossed).exists()


def test_changes_touch_that_farm_alone(world):
    assert seen(world).update(note="x") == 1
    assert seen(world, VisitEvent).update(note="x") == 1
    assert seen(world, CowIdentity).delete() == (1, {"farms.CowIdentity": 1})


def test_hidden_rows_cannot_be_changed(world):
    assert seen(world, Van).update(name="x") == 0
    assert seen(world, Payer).delete() == (0, {})


# From the client's own row up to something hidden and down again to the other farm: never.
WAYS = {
    "filter": lambda w: list(seen(w).filter(van__visits__farm__name="High Croft")),
    "values": lambda w: list(seen(w).values("van__visits__farm__name")),
    "order_by": lambda w: list(seen(w).order_by("farm__payer__farms__name")),
    "annotate": lambda w: list(seen(w).annotate(n=Count("van__visits"))),
    "aggregate": lambda w: seen(w, Farm).aggregate(n=Count("payer__farms__visits")),
    "exclude": lambda w: list(seen(w).exclude(van__visits__farm__name="High Croft")),
    "exclude inside a subquery": lambda w: list(
        seen(w, Farm).filter(pk__in=seen(w).exclude(van__visits__note="x").values("farm"))
    ),
    "exclude given before the scope": lambda w: list(
        Visit.objects.exclude(van__visits__note="x").within(w.mine.farm_scope)
    ),
}


def test_no_way_leads_over_a_hidden_row_to_another_farm(world, way):
    with pytest.raises(ScopeRequired):
        way(world)


def test_what_hangs_on_the_farms_own_rows_may_be_joined(world):
    rows = seen(world).filter(trims__cow__identities__value="101").exclude(farm__contacts__name="x")
    assert [visit.pk for visit in rows.select_related("farm__payer", "van")] == [world.mine.visit.pk]


def test_the_scope_of_a_farm_is_not_mixed_with_the_scope_of_the_house(world):
    with pytest.raises(ScopeRequired):
        list(seen(world) | Visit.objects.within(world.mine.scope))
