"""Ways to forget the scope of one side: subqueries, combinations, related rows, joins from shared tables, cascades."""

from contextlib import suppress

import pytest
from django.db import models
from django.db.models import Count, Exists, F, OuterRef, Prefetch, Q, Subquery
from django.db.models.deletion import Collector, ProtectedError
from django.db.models.expressions import RawSQL
from django.db.models.sql import DeleteQuery, Query, UpdateQuery

from farms.models import Contact, Cow, CowIdentity, Farm
from trimops.accounts.models import Business, User
from trimops.tenancy.errors import ScopeRequired
from trimops.tenancy.marks import WithinBusiness
from visits.models import Trim, Visit

V = Visit.objects


def mine(world, model=Visit):
    return model.objects.within(world.mine.scope).order_by()


def theirs(world, model=Visit):
    return model.objects.within(world.theirs.scope)


WAYS = {
    "in a subquery": lambda w: list(mine(w, Farm).filter(pk__in=V.values("farm_id"))),
    "in a related subquery": lambda w: list(mine(w, Farm).filter(visits__in=V.all())),
    "excluded subquery": lambda w: list(mine(w, Farm).exclude(pk__in=V.values("farm_id"))),
    "Subquery": lambda w: list(mine(w, Farm).annotate(x=Subquery(V.values("note")[:1]))),
    "Subquery to the outer row": lambda w: list(
        mine(w, Farm).annotate(x=Subquery(V.filter(farm=OuterRef("pk")).values("note")[:1]))
    ),
    "Exists": lambda w: list(mine(w, Farm).filter(Exists(V.all()))),
    "not Exists": lambda w: list(mine(w, Farm).filter(~Exists(V.all()))),
    "Exists from a shared table": lambda w: list(User.objects.filter(Exists(V.all()))),
    "in from a shared table": lambda w: list(User.objects.filter(pk__in=Trim.objects.values("recorded_by"))),
    "value of an update": lambda w: mine(w).update(note=Subquery(V.values("note")[:1])),
    "value of an insert": lambda w: Contact.objects.create(
        business=w.mine.business, farm=w.mine.farm, part="x", name=Subquery(V.values("pk")[:1])
    ),
    "subquery of a delete": lambda w: mine(w, CowIdentity).filter(cow__in=Cow.objects.all()).delete(),
    "inner of a scoped subquery": lambda w: list(
        mine(w, Farm).filter(pk__in=mine(w).filter(cows_asked(V.all())).values("farm"))
    ),
    "union, second side": lambda w: list(mine(w).union(V.order_by())),
    "union, first side": lambda w: list(V.order_by().union(mine(w))),
    "union, counted": lambda w: mine(w).union(V.order_by()).count(),
    "union, exists": lambda w: mine(w).union(V.order_by()).exists(),
    "union, ordered": lambda w: list(mine(w).union(V.order_by()).order_by("note")),
    "intersection": lambda w: list(mine(w).intersection(V.order_by())),
    "difference": lambda w: list(mine(w).difference(V.order_by())),
    "union with a shared table": lambda w: list(
        User.objects.values_list("pk").union(Trim.objects.order_by().values_list("pk"))
    ),
    "or": lambda w: list(mine(w) | V.all()),
    "or, other way round": lambda w: list(V.all() | mine(w)),
    "or by query": lambda w: list(_combined(mine(w), V.all(), "OR")),
    "xor": lambda w: list(mine(w) ^ V.all()),
    "or of two businesses": lambda w: list(mine(w) | theirs(w)),
    "and of two unscoped": lambda w: list(V.filter(note="") & V.filter(state="wanted")),
    "the filter cleared": lambda w: list(_without_where(mine(w))),
    "the filter negated": lambda w: list(_negated(mine(w))),
    "nothing negated is everything": lambda w: list(_negated(V.none())),
    "nothing as one of three": lambda w: list(
        _combined(_combined(V.filter(note=""), V.filter(state="wanted"), "OR"), V.none(), "OR")
    ),
    "the filter on another copy of the table": lambda w: list(
        V.filter(WithinBusiness(F("farm__visits__business_id"), w.mine.business.pk, w.mine.scope))
    ),
    "the filter of another model": lambda w: list(_with_where(Cow.objects.order_by(), mine(w))),
    "reverse relation": lambda w: list(w.theirs.farm.visits.all()),
    "reverse relation counted": lambda w: w.theirs.farm.visits.count(),
    "reverse relation filtered": lambda w: w.theirs.farm.visits.filter(note="").exists(),
    "reverse relation updated": lambda w: w.theirs.farm.visits.update(note="x"),
    "reverse relation added to": lambda w: w.mine.farm.visits.add(w.mine.other_visit),
    "prefetch": lambda w: list(mine(w, Farm).prefetch_related("visits")),
    "prefetch of a parent": lambda w: list(mine(w).prefetch_related("farm")),
    "Prefetch without scope": lambda w: list(mine(w, Farm).prefetch_related(Prefetch("visits", V.all()))),
    "prefetch_related_objects": lambda w: models.prefetch_related_objects([w.mine.farm], "visits"),
    "prefetch at the second step": lambda w: list(
        mine(w, Farm).prefetch_related(Prefetch("visits", mine(w)), "visits__trims")
    ),
    "join from a shared table": lambda w: list(Business.objects.filter(**{"+__pk__gt": 0})),
    "join counted from a shared table": lambda w: list(Business.objects.annotate(n=Count("+"))),
    "join by order from a shared table": lambda w: list(Business.objects.order_by("+__pk")),
    "join by values from a shared table": lambda w: list(Business.objects.values("+__pk")),
    "join excluded from a shared table": lambda w: list(Business.objects.exclude(**{"+__pk": 0})),
    "back through a shared table": lambda w: list(mine(w).filter(**{"business__+__pk__gt": 0})),
    "excluded back through a shared table": lambda w: list(mine(w).exclude(**{"business__+__pk": 0})),
    "extra on a tenant table": lambda w: list(mine(w).extra(where=["1=1) OR (1=1"])),
    "extra tables": lambda w: list(mine(w, Contact).extra(tables=["visits_visit"])),
    "extra tables from a shared table": lambda w: list(User.objects.extra(tables=["visits_visit"])),
    "extra from a shared table": lambda w: list(
        User.objects.extra(where=["id IN (SELECT id FROM visits_visit)"])
    ),
    "extra select": lambda w: list(User.objects.extra(select={"n": "SELECT count(*) FROM visits_visit"})),
    "RawSQL": lambda w: list(mine(w).annotate(x=RawSQL("SELECT max(note) FROM visits_visit", ()))),
    "RawSQL from a shared table": lambda w: list(
        User.objects.annotate(x=RawSQL("SELECT max(note) FROM visits_visit", ()))
    ),
    "deleting the business": lambda w: Collector("default").collect([w.theirs.business]),
    "deleting a person": lambda w: Collector("default").collect([w.trimmer]),
    "hand-made query": lambda w: list(_of(Query(Visit))),
    "hand-made update": lambda w: UpdateQuery(Visit).update_batch(
        [w.theirs.visit.pk], {"note": "x"}, "default"
    ),
    "hand-made delete": lambda w: DeleteQuery(CowIdentity).delete_batch([0], "default"),
    "manager of Django's own": lambda w: list(_plain_manager().all()),
    "upsert on a key without business": lambda w: Visit.objects.bulk_create(
        [_twin(w.mine.visit)], update_conflicts=True, unique_fields=["uid"], update_fields=["note"]
    ),
}


def cows_asked(visits):
    return Q(asked_cows__visit__in=visits) | Q(note=F("note"))


def _combined(left, right, connector):
    left.query.combine(right.query, connector)
    return left


def _without_where(rows):
    rows.query.clear_where()
    return rows


def _negated(rows):
    rows.query.where.negate()
    return rows


def _with_where(rows, other):
    for query in (rows.query, other.query):
        query.get_initial_alias()
        query.change_aliases({query.base_table: "U0"})
        del query.base_table
    rows.query.where = other.query.where
    return rows


def _of(query):
    return models.QuerySet(model=query.model, query=query)


def _plain_manager():
    manager = models.Manager()
    manager.model = Visit
    return manager


def _twin(visit):
    fields = {field.attname: getattr(visit, field.attname) for field in Visit._meta.fields}
    return Visit(**fields | {"id": None})


def test_forgetting_the_scope_of_one_side_raises(world, way):
    with pytest.raises(ScopeRequired):
        way(world)


def test_the_same_call_reaches_the_rows_when_the_lock_is_taken_out(world, way, no_lock):
    # PROTECT speaks only of rows it has found, so it too shows that they were read.
    with suppress(ProtectedError):
        way(world)
