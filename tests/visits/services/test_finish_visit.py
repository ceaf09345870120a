"""The last cow is done; re-checks and the invoice follow by themselves."""

from decimal import Decimal

import pytest
from django.db import transaction

from invoicing.models import Invoice
from tests.factories import NOON, blocked_foot, finish, make_prices, planned, put_down, trimmed_foot
from trimops.errands.models import Errand
from trimops.jobs import Job
from visits.models import Recheck, Visit
from visits.services.finish_visit import SignOff, finish_visit
from visits.services.visit_change import VisitCannotMove


def test_a_finished_visit_says_who_signed_and_what_was_washed(house, visit):
    sign_off = SignOff("H. Manager", washed_down=True, hygiene_note="Hosed, then disinfected")
    finish_visit(visit=visit, sign_off=sign_off, at=NOON, by=house.trimmer)
    stored = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert (stored.state, stored.finished_at, stored.signed_by) == ("finished", NOON, "H. Manager")
    assert (stored.washed_down, stored.hygiene_note) == (True, "Hosed, then disinfected")


def test_once_committed_its_rechecks_are_wanted_and_its_invoice_is_drafted(
    house, visit, django_capture_on_commit_callbacks
):
    make_prices(house.business)
    put_down(visit, house.cow, blocked_foot())
    with django_capture_on_commit_callbacks(execute=True):
        finish(visit, house.trimmer)
    again = Recheck.objects.within(house.scope).open().get().visit
    assert (again.state, again.reason, again.farm) == ("wanted", "recheck", house.farm)
    invoice = Invoice.objects.within(house.scope).get(visit=visit)
    assert (invoice.state, invoice.net) == ("draft", Decimal("30.00"))  # corrective, block, call-out


def test_nothing_follows_before_the_commit(house, visit, django_capture_on_commit_callbacks):
    make_prices(house.business)
    put_down(visit, house.cow, blocked_foot())
    with django_capture_on_commit_callbacks() as waiting:
        finish(visit, house.trimmer)
    assert len(waiting) == 3
    assert not Invoice.objects.within(house.scope).exists()
    assert Recheck.objects.within(house.scope).open().get().visit is None


def test_nothing_follows_a_finish_that_is_taken_back(house, visit, django_capture_on_commit_callbacks):
    with (
        django_capture_on_commit_callbacks() as waiting,
        pytest.raises(ZeroDivisionError),
        transaction.atomic(),
    ):
        finish(visit, house.trimmer)
        raise ZeroDivisionError
    assert waiting == []
    assert Visit.objects.within(house.scope).get(pk=visit.pk).state == "under_way"


def test_missing_prices_do_not_undo_the_finish_nor_the_rechecks(
    house, visit, django_capture_on_commit_callbacks
):
    put_down(visit, house.cow, blocked_foot())
    with django_capture_on_commit_callbacks(execute=True):
        finish(visit, house.trimmer)
    drafting = Errand.objects.within(house.scope).get(job=Job.DRAFT_INVOICE)
    assert (drafting.state, drafting.is_fault, "price" in drafting.last_words) == ("stuck", False, True)
    assert Visit.objects.within(house.scope).get(pk=visit.pk).state == "finished"
    assert Recheck.objects.within(house.scope).open().get().visit is not None


def test_a_visit_that_has_not_begun_cannot_be_finished(house):
    with pytest.raises(VisitCannotMove):
        finish(planned(house.farm, house.van), house.trimmer)


def test_a_visit_is_finished_once_and_drafted_once(house, visit, django_capture_on_commit_callbacks):
    make_prices(house.business)
    put_down(visit, house.cow, trimmed_foot())
    with django_capture_on_commit_callbacks(execute=True):
        finish(visit, house.trimmer)
        with pytest.raises(VisitCannotMove):
            finish(visit, house.trimmer)
    assert Invoice.objects.within(house.scope).filter(visit=visit).count() == 1
