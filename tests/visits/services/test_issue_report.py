import hashlib
from datetime import timedelta
from uuid import UUID

import pytest
from django.db import transaction

from tests.factories import (
    NOON,
    blocked_foot,
    finish,
    make_cow,
    make_house,
    put_down,
    trimmed_foot,
    under_way,
)
from tests.visits.api.phone import cow_content
from trimops.kernel.scope import Scope
from visits.documents.stored_content import from_stored
from visits.documents.visit_report import visit_report
from visits.documents.visit_report_content import VisitReport
from visits.domain.crush_entry import FindingEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.models import CrushWriting, IssuedReport, Referral, Trim
from visits.selectors.issued_reports import newest_report, report_of_version, report_state, stored_report
from visits.services.issue_report import NothingNew, VisitNotFinished, issue_first_report, issue_report
from visits.services.keep_writings import keep_writings


@pytest.fixture(scope="module")
def house(django_db_setup, django_db_blocker):
    """Made once for the file; what a test adds goes with the test."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield make_house()
        transaction.set_rollback(True)


@pytest.fixture(autouse=True)
def _each_by_itself(db):
    """Every test ends where it began."""


@pytest.fixture(scope="module")
def done(house):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot(for_vet="hot above the horn"))
    return finish(visit, house.trimmer)


def issued(visit, by=None, at=NOON):
    return issue_report(visit=visit, at=at, by=by)


def a_late_cow(house, visit, number="777"):
    """As a phone that lay in the van brings her."""
    trim = Trim.objects.create(
        business=house.business,
        visit=visit,
        cow=make_cow(house.farm, number),
        kind="functional",
        recorded_at=visit.finished_at,
        recorded_by=house.trimmer,
    )
    return trim.cow


def test_it_is_kept_with_the_hash_of_its_bytes(house, done):
    row = issued(done, house.owner)
    assert (row.version, row.changed, row.made_by, row.made_at) == (1, "", house.owner, NOON)
    assert row.sha256 == hashlib.sha256(bytes(row.pdf)).hexdigest()
    assert bytes(row.pdf).startswith(b"%PDF")


def test_what_is_kept_draws_the_same_bytes_again(done):
    row = IssuedReport.objects.within(done.scope).get(pk=issued(done).pk)
    assert visit_report(from_stored(VisitReport, row.content)) == bytes(row.pdf)


def test_the_row_of_a_cow_tells_why_her_foot_is_the_vet_s_even_without_a_lesion(house):
    visit = under_way(house.farm, house.van)
    sore = FindingEntry(LesionCode.DD, Claw.SKIN, zone=10, severity=3, dd_stage=DDStage.M2)
    feet = (
        trimmed_foot(Foot.LEFT_HIND, swelling_above_dewclaw=True),
        trimmed_foot(Foot.RIGHT_HIND, findings=(sore,)),
    )
    put_down(visit, house.cow, *feet)
    (cow,) = stored_report(issued(finish(visit, house.trimmer))).cows
    assert [(foot.foot, foot.vet, foot.found) for foot in cow.feet] == [
        (Foot.LEFT_HIND, ("swelling above the dew claws",), ()),
        (Foot.RIGHT_HIND, (), cow.feet[1].found),
    ]
    assert [(found.lesion, found.stage) for found in cow.feet[1].found] == [
        ("digital dermatitis", "raw sore, over 2 cm")
    ]


def test_the_job_done_twice_issues_once(done):
    first = issue_first_report(visit=done, at=NOON)
    again = issue_first_report(visit=done, at=NOON + timedelta(days=1))
    assert (again.pk, again.made_at) == (first.pk, NOON)


def test_at_the_finish_the_report_is_issued_and_people_are_told(house, django_capture_on_commit_callbacks):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, trimmed_foot())
    with django_capture_on_commit_callbacks(execute=True):
        finish(visit, house.trimmer)
    row = IssuedReport.objects.within(house.scope).get(visit=visit)
    assert (row.version, row.made_by) == (1, None)


def test_who_is_not_to_be_told_is_not(done, django_capture_on_commit_callbacks):
    with django_capture_on_commit_callbacks() as told:
        issue_first_report(visit=done, at=NOON)
    assert len(told) == 1
    IssuedReport.objects.within(done.scope).get().delete()
    with django_capture_on_commit_callbacks() as told:
        issue_first_report(visit=done, at=NOON, tell=False)
    assert told == []


@pytest.mark.parametrize("issue", [issued, lambda visit: issue_first_report(visit=visit, at=NOON)])
def test_a_visit_that_nobody_signed_has_no_report(house, issue):
    with pytest.raises(VisitNotFinished):
        issue(under_way(house.farm, house.van))


def test_the_same_again_is_no_new_version(done):
    issued(done)
    with pytest.raises(NothingNew):
        issued(done)
    assert not report_state(done.scope, done).is_behind


def test_a_late_cow_makes_the_report_behind_and_a_new_version_says_what_changed(house, done):
    first = issued(done)
    before = bytes(first.pdf)
    a_late_cow(house, done)
    state = report_state(done.scope, done)
    assert (state.is_behind, state.since, state.next_version) == (True, ("cow 777 added",), 2)
    second = issued(done, house.owner)
    assert (second.version, second.changed) == (2, "cow 777 added")
    assert from_stored(VisitReport, second.content).change_note == "cow 777 added"
    kept = report_of_version(done.scope, done, 1)
    assert bytes(kept.pdf) == before
    assert newest_report(done.scope, done) == second
    assert report_of_version(done.scope, done, 3) is None


def test_what_a_phone_sends_after_the_finish_is_told(house, done):
    issued(done)
    cow = make_cow(house.farm, "888")
    uid, at = UUID(int=1), done.finished_at
    times = {"made_at": at, "placed_at": at, "received_at": at + timedelta(hours=9)}
    writing = CrushWriting(
        business=house.business,
        uid=uid,
        record=uid,
        phone=uid,
        visit=done,
        kind="cow",
        cow=cow,
        content=cow_content(cow.pk, note="from the van"),
        by=house.trimmer,
        **times,
    )
    keep_writings(visit=done.locked(), rows=[writing])
    assert report_state(done.scope, done).since == ("cow 888 added",)


def test_the_vet_told_since_is_a_change(house, done):
    issued(done)
    Referral.objects.within(done.scope).update(told_whom="J. Marsden", told_at=NOON)
    assert report_state(done.scope, done).since == ("cow 101: told J. Marsden 12:00",)


def test_a_block_that_has_come_off_at_a_later_visit_changes_nothing(house, done):
    issued(done)
    block = house.cow.blocks.within(house.scope).get()
    block.off_on = block.put_on + timedelta(days=28)
    block.save()
    later = under_way(house.farm, house.van, done.started_at + timedelta(days=28))
    put_down(later, house.cow, trimmed_foot())
    assert not report_state(done.scope, done).is_behind


def test_a_visit_without_a_report_has_nothing_to_be_behind(done):
    state = report_state(done.scope, done)
    assert (state.newest, state.is_behind, state.next_version) == (None, False, 1)
    assert newest_report(Scope(done.business_id), done) is None
