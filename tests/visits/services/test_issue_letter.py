import hashlib
from datetime import date, timedelta

import pytest
from django.db import connection, transaction
from django.test.utils import CaptureQueriesContext

from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Contact
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    make_house,
    named,
    photo_of,
    put_down,
    trimmed_foot,
    under_way,
)
from tests.visits.documents.letters import jpeg
from visits.documents.referral_letter import referral_letter
from visits.domain.feet import Foot
from visits.domain.mobility import MobilityScale
from visits.models import AskedCow, MobilityScore, MobilityScoring, Referral, ReferralLetter, Trim
from visits.selectors.issued_letters import cows_for_vet, newest_letter, stored_letter
from visits.selectors.letter_content import pictures_of
from visits.services.issue_letter import NothingForVet, issue_letter
from visits.services.issue_report import NothingNew


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
def trim(house):
    """A cow with a photo, a history on the foot, and an earlier visit."""
    before = under_way(house.farm, house.van, TUESDAY_TEN - timedelta(days=60))
    put_down(before, house.cow, blocked_foot())
    finish(before, house.trimmer)
    visit = under_way(house.farm, house.van, cows=[named(house.cow, "Lies a lot")])
    feet = (blocked_foot(drew_blood=True, has_pain=True), trimmed_foot(Foot.RIGHT_HIND))
    scored = {"mobility_scale": MobilityScale.UK, "mobility_score": 3}
    trim = put_down(visit, house.cow, *feet, note="She lay down.", **scored)
    photo_of(trim, jpeg())
    finish(visit, house.trimmer)
    return trim


def issued(trim, by=None, at=NOON):
    return issue_letter(trim=trim, at=at, by=by)


def test_it_is_kept_with_its_hash_and_drawn_again_to_the_same_bytes(house, trim):
    row = ReferralLetter.objects.within(house.scope).get(pk=issued(trim, house.owner).pk)
    assert (row.version, row.made_by, row.changed) == (1, house.owner, "")
    assert row.sha256 == hashlib.sha256(bytes(row.pdf)).hexdigest()
    letter = stored_letter(row)
    assert referral_letter(letter, pictures_of(trim, letter)) == bytes(row.pdf)


def test_it_tells_the_foot_that_is_the_vet_s_and_no_other(house, trim):
    letter = stored_letter(issued(trim))
    (foot,) = letter.feet
    assert foot.foot is Foot.LEFT_HIND
    assert foot.why == ("blood drawn or sensitive tissue open: work on this foot stopped",)
    assert foot.signs == ("pain to the hoof testers", "blood drawn")
    assert foot.done == ("trimmed", "wooden block on")
    assert foot.not_done == ("work on this foot stopped",)
    assert [(earlier.day, earlier.words) for earlier in foot.earlier] == [
        (date(2026, 1, 2), "Sole ulcer, clear: outer claw, where sole meets heel (4)")
    ]
    assert [photo.foot for photo in letter.photos] == [Foot.LEFT_HIND]
    assert letter.note == "She lay down."


def test_it_tells_who_she_is_and_how_she_walks_with_every_scale_named(house, trim):
    cow = house.cow
    cow.identities.create(
        business=house.business, kind=IdentityKind.OFFICIAL_TAG.value, value="UK123456700123"
    )
    cow.identities.create(business=house.business, kind=IdentityKind.COLLAR.value, value="77")
    for day, number in ((date(2025, 1, 1), 2), (date(2026, 2, 1), 3), (date(2027, 1, 1), 4)):
        Calving.objects.create(business=house.business, cow=cow, calved_on=day, lactation=number)
    AskedCow.objects.within(house.scope).update(lame_since=date(2026, 3, 1))
    scoring = MobilityScoring.objects.create(
        business=house.business,
        farm=house.farm,
        scored_on=date(2026, 2, 20),
        scale=MobilityScale.SPRECHER.value,
        noted_at=NOON,
        noted_by=house.owner,
    )
    MobilityScore.objects.create(business=house.business, scoring=scoring, cow=cow, score=4)
    letter = stored_letter(issued(trim))
    assert [(known.name, known.value) for known in letter.of_cow] == [
        ("Number", "101"),
        ("Official ear tag", "UK123456700123"),
        ("Lactation", "3"),
        ("Calved", "1 Feb 2026, 30 days before"),
    ]
    assert letter.walked == (
        "Walked in at 3 (UK 0 to 3).",
        "Asked for: Lies a lot.",
        "Lame since 1 Mar 2026, as the farm tells it.",
        "Scored 4 (Sprecher 1 to 5) on 20 Feb 2026.",
    )


def test_it_is_for_the_vet_whom_the_farm_has_named(house, trim):
    assert stored_letter(issued(trim)).addressed_to == "the vet of the farm"
    Contact.objects.create(business=house.business, farm=house.farm, name="J. Marsden", part="Vet")
    row = issued(trim)
    assert (row.version, row.changed) == (2, "whom it is for")
    assert stored_letter(row).addressed_to == "J. Marsden"


def test_who_was_told_since_makes_a_new_version_and_the_old_one_is_kept(house, trim):
    first = issued(trim)
    Referral.objects.within(house.scope).update(told_whom="J. Marsden", told_at=NOON)
    second = issued(trim)
    assert (second.version, second.changed) == (2, "who was told")
    assert ReferralLetter.objects.within(house.scope).get(pk=first.pk).sha256 == first.sha256
    assert newest_letter(house.scope, trim) == second


def test_the_same_again_is_no_new_version(trim):
    issued(trim)
    with pytest.raises(NothingNew):
        issued(trim, at=NOON + timedelta(days=3))


def test_a_cow_of_whom_nothing_was_left_to_the_vet_has_no_letter(house, trim):
    visit = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=1))
    with pytest.raises(NothingForVet):
        issued(put_down(visit, make_cow(house.farm, "102"), trimmed_foot()))


def test_the_cows_of_a_visit_that_are_the_vet_s_are_listed_with_their_letters(house, trim):
    (line,) = cows_for_vet(house.scope, trim.visit)
    assert (line.trim.pk, line.letter) == (trim.pk, None)
    row = issued(trim)
    (line,) = cows_for_vet(house.scope, trim.visit)
    assert (line.letter, line.since) == (row, ())


def test_a_letter_is_behind_when_what_was_seen_or_who_was_told_has_changed_until_it_is_written_anew(
    house, trim
):
    issued(trim)
    Referral.objects.within(house.scope).update(told_whom="J. Marsden", told_at=NOON)
    trim.feet.within(house.scope).filter(foot=Foot.LEFT_HIND.value).update(has_swelling=True)
    (line,) = cows_for_vet(house.scope, trim.visit)
    assert line.since == ("left hind: signs", "who was told")
    assert issued(trim).changed == "; ".join(line.since)
    assert cows_for_vet(house.scope, trim.visit)[0].since == ()


def test_a_photo_sent_late_puts_the_letter_behind_and_what_lies_round_the_visit_does_not(house, trim):
    issued(trim)
    Contact.objects.create(business=house.business, farm=house.farm, name="J. Marsden", part="Vet")
    Calving.objects.create(business=house.business, cow=house.cow, calved_on=date(2026, 2, 1), lactation=3)
    assert cows_for_vet(house.scope, trim.visit)[0].since == ()
    photo_of(trim, jpeg(32, 32))
    assert cows_for_vet(house.scope, trim.visit)[0].since == ("photos",)


def test_looking_whether_letters_are_behind_takes_as_many_queries_for_two_as_for_one(
    house, trim, django_assert_num_queries
):
    with CaptureQueriesContext(connection) as one:
        issued(trim)
        cows_for_vet(house.scope, trim.visit)  # what a process asks once is asked
        before = len(one)
        assert len(cows_for_vet(house.scope, trim.visit)) == 1
        needed = len(one) - before
    visit = trim.visit
    for number in ("201", "202"):
        other = Trim.objects.create(
            business=house.business,
            visit=visit,
            cow=make_cow(house.farm, number),
            kind="check",
            recorded_at=NOON,
            recorded_by=house.trimmer,
        )
        Referral.objects.create(business=house.business, trim=other, reason="very lame")
        issued(other)
    with django_assert_num_queries(needed):
        assert len(cows_for_vet(house.scope, visit)) == 3
