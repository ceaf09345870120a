"""People are invited, lose their part or leave, tokens are revoked, at the same moment as somebody uses them."""

from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from farms.models import Farm
from tests.factories import make_house, make_member
from tests.services.races.crowd import ROUNDS, Person, by_service, crowd, fault_of
from trimops.accounts.actions import Action
from trimops.accounts.models import ApiToken, Membership, User
from trimops.accounts.roles import Role
from trimops.accounts.services.accept_invitation import accept_invitation
from trimops.accounts.services.change_role import change_role
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.invite_person import Guest, invite_person
from trimops.accounts.services.make_token import MOST_LIVE, TokenWish, make_token
from trimops.accounts.services.revoke_token import revoke_token

pytestmark = pytest.mark.services
NEW_WORD = "quite-another-long-word"


def guest(number):
    return Guest(f"newcomer-{number}@trimming.example", "A Newcomer", Role.OFFICE)


def test_one_address_invited_by_several_at_once_is_one_person_with_one_place(house):
    owners = [Person(house.owner), Person(make_member(house.business, Role.OWNER).user)]
    people = reverse("people")

    def hands(number):
        form = {"email": guest(number).email, "name": guest(number).name, "role": Role.OFFICE.value}
        invite = by_service(
            lambda: invite_person(
                business=house.business, guest=guest(number), at=timezone.now(), by=house.owner
            )
        )
        return [owners[0].page(people, **form), owners[1].page(people, **form), invite, invite]

    told = crowd([hands(number) for number in range(ROUNDS)])
    assert fault_of(told) == []
    assert all(each.is_done for answers in told for each in answers)
    invited = Membership.objects.filter(business=house.business, user__email__startswith="newcomer-")
    assert invited.count() == User.objects.filter(email__startswith="newcomer-").count() == ROUNDS


def test_two_businesses_that_invite_one_address_at_once_make_one_person_with_two_places(house):
    other = make_house("Fell & Beck")

    def hands(number):
        return [
            by_service(
                lambda each=each: invite_person(
                    business=each.business, guest=guest(number), at=timezone.now(), by=each.owner
                )
            )
            for each in (house, other, house, other)
        ]

    told = crowd([hands(number) for number in range(ROUNDS)])
    assert fault_of(told) == []
    assert User.objects.filter(email__startswith="newcomer-").count() == ROUNDS
    assert Membership.objects.filter(user__email__startswith="newcomer-").count() == 2 * ROUNDS


def test_an_invitation_is_taken_up_once_or_withdrawn(house):
    def invited(number):
        return invite_person(business=house.business, guest=guest(number), at=timezone.now(), by=house.owner)

    rows = [invited(number) for number in range(ROUNDS)]

    def hands(row):
        take = by_service(lambda: accept_invitation(membership=row, password=NEW_WORD, at=timezone.now()))
        return [take, take, by_service(lambda: end_membership(membership=row, at=timezone.now()))]

    told = crowd([hands(row) for row in rows])
    assert fault_of(told) == []
    for (first, second, _), row in zip(told, rows, strict=True):
        assert {first.why, second.why} <= {"", "invitation_spent"}
        assert not (first.is_done and second.is_done)
        assert Membership.objects.get(pk=row.pk).ended_at is not None


def test_of_two_owners_who_leave_or_step_down_at_once_one_remains(transactional_db):
    houses = [make_house(f"Two Owners {n}") for n in range(ROUNDS)]
    pairs = [(each.memberships[Role.OWNER], make_member(each.business, Role.OWNER)) for each in houses]
    first = [Person(one.user) for one, _ in pairs]
    second = [Person(two.user) for _, two in pairs]

    def hands(number):
        one, two = pairs[number]
        return [
            first[number].page(reverse("part", args=[one.pk]), role=Role.TRIMMER.value),
            second[number].page(reverse("membership_end", args=[two.pk])),
            by_service(lambda: end_membership(membership=one, at=timezone.now())),
            by_service(lambda: change_role(membership=two, role=Role.OFFICE)),
        ]

    told = crowd([hands(number) for number in range(ROUNDS)])
    assert fault_of(told) == []
    for answers, house in zip(told, houses, strict=True):
        owners = Membership.objects.filter(business=house.business, role=Role.OWNER, ended_at__isnull=True)
        assert owners.count() == 1, [each[:2] for each in answers]
        refused = [each for each in answers if not each.is_done]
        assert refused
        # 400: who left was signed out everywhere while their own page was being made
        assert {each.status for each in refused} <= {400, 403, 404, 409}


def test_a_token_that_is_revoked_while_it_is_used_does_a_thing_or_lets_nobody_in(house):
    wish = TokenWish("A program", {Action.SEE_FARMS, Action.KEEP_FARMS}, timedelta(days=1))
    owners = [make_member(house.business, Role.OWNER) for _ in range(0, ROUNDS, MOST_LIVE)]
    made = [
        make_token(membership=owners[n // MOST_LIVE], wish=wish, at=timezone.now()) for n in range(ROUNDS)
    ]
    word = {"latitude": "54.100000", "longitude": "-2.300000"}

    def hands(number):
        token, text = made[number]
        program = Person(token=text)
        key, sent = f"key-{number}", {**word, "name": f"By program {number}"}
        return [
            program.api("GET", "/farms/"),
            Person(token=text).api("POST", "/farms/", sent, Idempotency_Key=key),
            by_service(lambda: revoke_token(token=token, at=timezone.now(), by=house.owner)),
            by_service(lambda: revoke_token(token=token, at=timezone.now(), by=house.owner)),
        ]

    told = crowd([hands(number) for number in range(ROUNDS)])
    assert fault_of(told) == []
    for read, write, *revoked in told:
        assert read.status in (200, 401)
        assert write.status in (201, 401)
        assert [each.status for each in revoked] == [200, 200]
    by_program = Farm.objects.within(house.scope).filter(name__startswith="By program")
    assert by_program.count() == sum(write.status == 201 for _, write, *_ in told)
    assert not ApiToken.objects.filter(membership__in=owners, revoked_at__isnull=True).exists()
    for _, text in made:
        assert Person(token=text).api("GET", "/farms/")().status == 401
