"""The demo's herds as rows: calvings, cows that left, heifers that came, and scores."""

from datetime import date

import pytest
from django.db.models import F

from farms.models import Calving, Cow, Farm
from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from trimops.portal.demo.build_demo import DemoWishes, build_demo
from visits.models import MobilityScore, MobilityScoring, Trim

WISHES = DemoWishes(date(2026, 11, 23), farms=2, months=4)


@pytest.fixture
def scope(db):
    build_demo(WISHES, lambda words, share: None)
    return Scope(Business.objects.get().pk)


def test_every_cow_that_calved_has_her_calvings_and_no_cow_is_seen_after_she_left(scope):
    cows = Cow.objects.within(scope)
    assert Calving.objects.within(scope).filter(lactation__gte=3).exists()
    last = {row.cow_id: row.calved_on for row in Calving.objects.within(scope).order_by("calved_on")}
    assert last == {cow.pk: cow.calved_on for cow in cows.filter(calved_on__isnull=False)}
    gone = cows.filter(left_on__isnull=False)
    assert set(gone.values_list("status", flat=True)) == {"sold", "dead"}
    assert Trim.objects.within(scope).filter(cow__in=gone).exists()
    assert not Trim.objects.within(scope).filter(cow__left_on__lte=F("recorded_at__date")).exists()
    for farm in Farm.objects.within(scope):
        here = cows.filter(farm=farm, entered_on__isnull=False, left_on__isnull=True)
        assert here.count() == farm.herd_size
    scored = MobilityScoring.objects.within(scope)
    assert set(scored.values_list("farm__name", flat=True)) == {"Quillbeck House"}
    assert MobilityScore.objects.within(scope).count() >= 60 * scored.count()
