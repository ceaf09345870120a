"""What Django does must go on working once the scope is given, and must give this business's rows alone.

Each entry yields rows, keys or counts; the second item is what it must be, worked out from the world by hand.
"""

import copy
import pickle

import pytest
from asgiref.sync import async_to_sync
from django.db.models import Count, Exists, F, FilteredRelation, Max, OuterRef, Prefetch, Q, Subquery, Window
from django.db.models.functions import RowNumber

from farms.models import Cow, Farm
from trimops.accounts.models import User
from visits.models import Trim, Visit


def mine(world, model=Visit):
    return model.objects.within(world.mine.scope)


def keys(*rows):
    return {row.pk for row in rows}


def found(rows):
    return {row.pk for row in rows}


@async_to_sync
async def gathered(rows):
    return [row async for row in rows]


@async_to_sync
async def wait_for(call):
    return await call()


# What both of my visits are, whatever road leads to them. Theirs must be in none.
WAYS = {
    "all": lambda w: mine(w).all(),
    "filter, exclude": lambda w: mine(w).filter(state="wanted").exclude(note="x"),
    "scope given last": lambda w: Visit.objects.filter(state="wanted").order_by("pk").within(w.mine.scope),
    "scope given twice": lambda w: mine(w).within(w.mine.scope),
    "iterator": lambda w: mine(w).iterator(chunk_size=1),
    "async for": lambda w: gathered(mine(w)),
    "in_bulk": lambda w: mine(w).in_bulk().values(),
    "slice": lambda w: mine(w)[:50],
    "distinct": lambda w: mine(w).filter(trims__kind="functional").distinct(),
    "select_related": lambda w: mine(w).select_related("farm__payer", "business", "van__trimmer"),
    "select_for_update": lambda w: mine(w).select_for_update(),
    "only": lambda w: mine(w).only("note"),
    "defer": lambda w: mine(w).defer("note", "business"),
    "using": lambda w: mine(w).using("default"),
    "join ordered": lambda w: mine(w).order_by("farm__name", "van__trimmer__name"),
    "join to many": lambda w: mine(w).filter(trims__cow__identities__value__in=["101", "202"]),
    "exclude over many": lambda w: mine(w).exclude(trims__kind="corrective"),
    "exclude over two to-many steps": lambda w: mine(w).exclude(trims__cow__identities__value="999"),
    "exclude over a parent's many": lambda w: mine(w).exclude(farm__cows__number="999"),
    "exclude over a nullable step": lambda w: mine(w).exclude(trims__referrals__reason="x"),
    "exclude, then scope": lambda w: Visit.objects.exclude(trims__kind="corrective").within(w.mine.scope),
    "exclude with a column": lambda w: mine(w).exclude(trims__note=F("state")),
    "negated Q": lambda w: mine(w).filter(~Q(trims__kind="corrective") & ~Q(farm__contacts__name="x")),
    "filtered relation": lambda w: (
        mine(w)
        .annotate(t=FilteredRelation("trims", condition=Q(trims__kind="functional")))
        .filter(t__isnull=False)
    ),
    "or": lambda w: mine(w).filter(farm=w.mine.farm) | mine(w).filter(farm=w.mine.other_farm),
    "and": lambda w: mine(w).filter(state="wanted") & mine(w).filter(note=""),
    "xor": lambda w: mine(w).filter(farm=w.mine.farm) ^ mine(w).filter(farm=w.mine.other_farm),
    "Q or": lambda w: mine(w).filter(Q(farm=w.mine.farm) | Q(trims__cow__farm=w.mine.other_farm)),
    "union": lambda w: mine(w).order_by().union(mine(w).order_by().filter(note="x")).order_by("pk"),
    "intersection": lambda w: mine(w).order_by().intersection(mine(w).order_by()),
    "difference": lambda w: mine(w).order_by().difference(mine(w).order_by().filter(note="x")),
    "in a subquery": lambda w: mine(w).filter(farm__in=mine(w, Farm), pk__in=mine(w, Trim).values("visit")),
    "nested subqueries": lambda w: mine(w).filter(
        farm__in=mine(w, Farm).filter(pk__in=mine(w, Cow).values("farm"))
    ),
    "Exists": lambda w: mine(w).filter(Exists(mine(w, Trim).filter(visit=OuterRef("pk")))),
    "Subquery": lambda w: (
        mine(w)
        .annotate(cow=Subquery(mine(w, Trim).filter(visit=OuterRef("pk")).values("cow__number")[:1]))
        .filter(cow__in=["101", "202"])
    ),
    "annotate": lambda w: mine(w).annotate(n=Count("trims")).filter(n=1),
    "window": lambda w: mine(w).annotate(n=Window(RowNumber(), order_by="pk")).filter(n__lte=9),
    "reverse relation": lambda w: [
        visit for farm in (w.mine.farm, w.mine.other_farm) for visit in farm.visits.within(w.mine.scope)
    ],
    "prefetch": lambda w: [
        visit
        for farm in mine(w, Farm).prefetch_related(Prefetch("visits", mine(w)))
        for visit in farm.visits.all()
    ],
    "prefetch, two steps": lambda w: [
        trim.visit
        for farm in mine(w, Farm).prefetch_related(
            Prefetch("visits", mine(w)), Prefetch("visits__trims", mine(w, Trim))
        )
        for visit in farm.visits.all()
        for trim in visit.trims.all()
    ],
    "prefetch of a parent": lambda w: [
        visit for visit in mine(w).prefetch_related(Prefetch("farm", mine(w, Farm))) if visit.farm.pk
    ],
    "copy": lambda w: copy.copy(mine(w)),
    "deepcopy": lambda w: copy.deepcopy(mine(w)),
    "pickled rows": lambda w: pickle.loads(pickle.dumps(mine(w))),
    "pickled query": lambda w: _with_query(pickle.loads(pickle.dumps(mine(w).query))),
    "none or mine": lambda w: Visit.objects.none() | mine(w),
    "raw alias": lambda w: mine(w).alias(n=Count("trims")).filter(n__gt=0),
}


def _with_query(query):
    rows = Visit.objects.all()
    rows.query = query
    return rows


def test_my_rows_come_out_and_theirs_never(world, way):
    assert found(way(world)) == keys(world.mine.visit, world.mine.other_visit)


# Values instead of rows.
FIGURES = {
    "count": (lambda w: mine(w).count(), 2),
    "exists": (lambda w: mine(w).exists(), True),
    "aggregate": (lambda w: mine(w).aggregate(n=Count("pk"), m=Max("head_count")), {"n": 2, "m": 20}),
    "aggregate over many": (lambda w: mine(w).aggregate(n=Count("trims__cow", distinct=True)), {"n": 2}),
    "aggregate of a slice": (lambda w: mine(w)[:1].aggregate(n=Count("pk")), {"n": 1}),
    "aggregate of groups": (
        lambda w: mine(w).values("farm").annotate(n=Count("trims")).aggregate(Max("n")),
        {"n__max": 1},
    ),
    "count of a union": (lambda w: mine(w).order_by().union(mine(w).order_by()).count(), 2),
    "groups": (
        lambda w: list(mine(w).order_by().values("state").annotate(n=Count("pk"))),
        [{"state": "wanted", "n": 2}],
    ),
    "values_list": (lambda w: set(mine(w).values_list("farm__name", flat=True)), {"Low Croft", "High Croft"}),
    "dates": (lambda w: [str(day) for day in mine(w).dates("due_from", "month")], ["2026-03-01"]),
    "contains": (lambda w: mine(w).contains(w.mine.visit), True),
    "contains theirs": (lambda w: mine(w).contains(w.theirs.visit), False),
    "explain": (lambda w: bool(mine(w).explain()), True),
    "update": (lambda w: mine(w).update(note="x"), 2),
    "update over a join": (lambda w: mine(w).filter(farm__name="Low Croft").update(note="x"), 1),
    "update from a subquery": (
        lambda w: mine(w).update(note=Subquery(mine(w, Farm).filter(pk=OuterRef("farm")).values("name")[:1])),
        2,
    ),
    "bulk_update": (lambda w: mine(w).bulk_update(list(mine(w)), ["note"]), 2),
    "none": (lambda w: list(Visit.objects.none()), []),
    "none counted": (lambda w: Visit.objects.none().count(), 0),
    "acount": (lambda w: wait_for(lambda: mine(w).acount()), 2),
    "afirst": (lambda w: wait_for(lambda: mine(w).order_by("pk").afirst()).pk > 0, True),
    "shared table by my rows": (
        lambda w: User.objects.filter(pk__in=mine(w, Trim).values("recorded_by")).count(),
        1,
    ),
}


@pytest.mark.parametrize("name", FIGURES)
def test_my_figures_count_my_rows_alone(world, name):
    call, expected = FIGURES[name]
    assert call(world) == expected
