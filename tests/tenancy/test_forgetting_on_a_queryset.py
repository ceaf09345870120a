"""Ways to forget the scope on a model's own manager and queryset. Each must raise; none may raise for other causes."""

import copy
import pickle

import pytest
from asgiref.sync import async_to_sync
from django.db.models import Count, F, Max

from farms.models import CowIdentity
from trimops.tenancy.errors import ScopeRequired
from trimops.tenancy.unscoped import unscoped
from visits.models import Visit

V = Visit.objects


async def read_all(rows):
    return [row async for row in rows]


@async_to_sync
async def wait_for(call):
    return await call()


WAYS = {
    "all": lambda w: list(V.all()),
    "manager iterated": lambda w: list(V.get_queryset()),
    "repr": lambda w: repr(V.all()),
    "bool": lambda w: bool(V.all()),
    "len": lambda w: len(V.all()),
    "in": lambda w: w.mine.visit in V.all(),
    "index": lambda w: V.all()[0],
    "slice": lambda w: list(V.all()[:1]),
    "filter": lambda w: list(V.filter(state="wanted")),
    "filter by the business itself": lambda w: list(V.filter(business_id=w.mine.business.pk)),
    "filter by key": lambda w: list(V.filter(pk=w.theirs.visit.pk)),
    "exclude": lambda w: list(V.exclude(state="finished")),
    "exclude over many": lambda w: list(V.exclude(trims__kind="corrective")),
    "complex_filter": lambda w: list(V.complex_filter({"state": "wanted"})),
    "get": lambda w: V.get(pk=w.theirs.visit.pk),
    "first": lambda w: V.first(),
    "last": lambda w: V.last(),
    "earliest": lambda w: V.earliest("asked_at"),
    "latest": lambda w: V.latest("asked_at"),
    "count": lambda w: V.count(),
    "exists": lambda w: V.exists(),
    "contains": lambda w: V.contains(w.theirs.visit),
    "aggregate": lambda w: V.aggregate(Max("pk")),
    "aggregate of a slice": lambda w: V.all()[:3].aggregate(Max("pk")),
    "annotate": lambda w: list(V.annotate(n=Count("trims"))),
    "alias": lambda w: list(V.alias(n=F("pk")).filter(n__gt=0)),
    "values": lambda w: list(V.values("note")),
    "values_list": lambda w: list(V.values_list("note", flat=True)),
    "dates": lambda w: list(V.dates("due_from", "month")),
    "datetimes": lambda w: list(V.datetimes("asked_at", "month")),
    "distinct": lambda w: list(V.distinct()),
    "order_by": lambda w: list(V.order_by("farm__name")),
    "reverse": lambda w: list(V.order_by("pk").reverse()),
    "only": lambda w: list(V.only("note")),
    "defer": lambda w: list(V.defer("note")),
    "select_related": lambda w: list(V.select_related("farm")),
    "select_for_update": lambda w: list(V.select_for_update()),
    "iterator": lambda w: list(V.iterator()),
    "in_bulk": lambda w: V.in_bulk([w.theirs.visit.pk]),
    "using": lambda w: list(V.using("default")),
    "explain": lambda w: V.all().explain(),
    "update": lambda w: V.update(note="x"),
    "delete": lambda w: CowIdentity.objects.all().delete(),
    "raw delete": lambda w: CowIdentity.objects.all()._raw_delete("default"),
    "bulk_update": lambda w: V.bulk_update([w.theirs.visit], ["note"]),
    "get_or_create": lambda w: V.get_or_create(pk=w.theirs.visit.pk),
    "update_or_create": lambda w: V.update_or_create(pk=w.theirs.visit.pk, defaults={"note": "x"}),
    "default manager": lambda w: list(Visit._default_manager.all()),
    "base manager": lambda w: list(Visit._base_manager.all()),
    "base manager by key": lambda w: Visit._base_manager.get(pk=w.theirs.visit.pk),
    "a named filter of the model": lambda w: list(V.due_by(w.mine.visit.due_from)),
    "copy": lambda w: list(copy.copy(V.all())),
    "deepcopy": lambda w: list(copy.deepcopy(V.all())),
    "pickled": lambda w: pickle.loads(pickle.dumps(V.all().query)).get_compiler("default").execute_sql(),
    "sql text": lambda w: str(V.all().query),
    "query handed on": lambda w: list(_with_query(V.all().query)),
    "aget": lambda w: wait_for(lambda: V.aget(pk=w.theirs.visit.pk)),
    "afirst": lambda w: wait_for(lambda: V.afirst()),
    "acount": lambda w: wait_for(lambda: V.acount()),
    "aexists": lambda w: wait_for(lambda: V.aexists()),
    "async for": lambda w: async_to_sync(read_all)(V.all()),
    "aiterator": lambda w: async_to_sync(read_all)(V.aiterator()),
    "aupdate": lambda w: wait_for(lambda: V.aupdate(note="x")),
    "adelete": lambda w: wait_for(lambda: CowIdentity.objects.all().adelete()),
    "ain_bulk": lambda w: wait_for(lambda: V.ain_bulk([w.theirs.visit.pk])),
}


def _with_query(query):
    rows = V.none()
    rows.query = query
    return rows


def test_forgetting_the_scope_raises(world, way):
    with pytest.raises(ScopeRequired):
        way(world)


def test_the_same_call_runs_when_unscoped_so_the_table_is_not_empty_talk(world, way):
    with unscoped("to see that only the lock stops the call"):
        way(world)


def test_the_same_call_leaks_when_the_lock_is_taken_out(world, way, no_lock):
    way(world)
