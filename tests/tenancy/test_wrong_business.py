"""Within my scope, a key of theirs is a key of nothing: it is not found, counted, changed or deleted."""

import pytest
from django.core.exceptions import ObjectDoesNotExist
from django.db.models import OuterRef, Prefetch, Subquery
from django.http import Http404
from django.shortcuts import get_object_or_404

from farms.models import Contact, Cow, CowIdentity, Farm
from trimops.kernel.scope import Scope
from trimops.tenancy.errors import MixedBusinesses
from trimops.tenancy.same_business import require_same_business, same_business
from trimops.tenancy.unscoped import unscoped
from visits.models import Trim, Visit


def mine(world, model=Visit):
    return model.objects.within(world.mine.scope).order_by()


def their_key(world):
    return world.theirs.visit.pk


# Each must give an empty answer.
WAYS = {
    "filter": lambda w: list(mine(w).filter(pk=their_key(w))),
    "filter by their business": lambda w: list(mine(w).filter(business=w.theirs.business)),
    "filter by their farm": lambda w: list(mine(w).filter(farm=w.theirs.farm)),
    "filter by a row over a join": lambda w: list(mine(w).filter(trims__cow=w.theirs.cow)),
    "within theirs, within mine": lambda w: list(mine(w).within(w.theirs.scope)),
    "mine and theirs": lambda w: list(mine(w) & Visit.objects.within(w.theirs.scope)),
    "in_bulk": lambda w: mine(w).in_bulk([their_key(w)]),
    "exists": lambda w: mine(w).filter(pk=their_key(w)).exists(),
    "contains": lambda w: mine(w).contains(w.theirs.visit),
    "first": lambda w: mine(w).filter(pk=their_key(w)).first(),
    "update": lambda w: mine(w).filter(pk=their_key(w)).update(note="x"),
    "bulk_update": lambda w: mine(w).bulk_update([w.theirs.visit], ["note"]),
    "delete": lambda w: mine(w, CowIdentity).filter(cow=w.theirs.cow).delete()[0],
    "union": lambda w: list(mine(w).filter(pk=their_key(w)).union(mine(w).filter(farm=w.theirs.farm))),
    "in a subquery": lambda w: list(mine(w).filter(pk__in=mine(w).filter(pk=their_key(w)))),
    "their scope in a subquery": lambda w: list(
        mine(w, Farm).filter(pk__in=Visit.objects.within(w.theirs.scope).values("farm"))
    ),
    "Subquery": lambda w: (
        mine(w, Farm)
        .annotate(x=Subquery(mine(w).filter(farm=w.theirs.farm, note=OuterRef("name")).values("note")))
        .exclude(x=None)
        .count()
    ),
    "their row's relation": lambda w: list(w.theirs.farm.visits.within(w.mine.scope)),
    "prefetched onto their row": lambda w: [
        visit
        for farm in Farm.objects.within(w.theirs.scope).prefetch_related(Prefetch("visits", mine(w)))
        for visit in farm.visits.all()
    ],
    "a business that is not": lambda w: list(Visit.objects.within(Scope(0))),
}


def test_their_key_is_a_key_of_nothing(world, way):
    assert not way(world)


def test_nothing_of_theirs_was_changed_by_trying(world, way):
    way(world)
    with unscoped("to see that their rows are whole"):
        assert Visit.objects.filter(business=world.theirs.business, note="").count() == 2
        assert CowIdentity.objects.filter(business=world.theirs.business).count() == 2


@pytest.mark.parametrize("model", [Visit, Farm, Cow, Contact, Trim], ids=lambda model: model.__name__)
def test_asking_for_their_key_finds_nothing(world, model):
    key = model.objects.within(world.theirs.scope).first().pk
    with pytest.raises(ObjectDoesNotExist):
        mine(world, model).get(pk=key)
    with pytest.raises(Http404):
        get_object_or_404(mine(world, model), pk=key)


def test_rows_of_one_business_may_meet(world):
    assert same_business(world.mine.farm, world.mine.visit, None)
    require_same_business(world.mine.farm, None, world.mine.visit)


def test_rows_of_two_businesses_may_not_meet(world):
    assert not same_business(world.mine.farm, world.theirs.visit)
    with pytest.raises(MixedBusinesses):
        require_same_business(world.mine.farm, world.theirs.visit)


def test_a_scope_is_a_scope_and_not_a_number(world):
    with pytest.raises(TypeError):
        Visit.objects.within(world.mine.business.pk)
    with pytest.raises(TypeError):
        Visit.objects.within(Scope(None))
