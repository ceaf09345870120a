from datetime import UTC, datetime, timedelta

import pytest

from tests.factories import MONDAY, make_house, make_member, wanted
from trimops.accounts.roles import Role
from trimops.outbox.models import Outgoing
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import WeekPlan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.tell_proposal import tell_proposal
from visits.services.think_week_plan import think_week_plan

EVENING = datetime(2026, 3, 2, 18, 31, tzinfo=UTC)


@pytest.fixture
def house(db):
    return make_house()


def thought(house, by=None) -> WeekPlan:
    wanted(house.farm)
    plan = ask_week_plan(business=house.business, monday=MONDAY, at=EVENING, by=by)
    return think_week_plan(week_plan=plan, limits=SolveLimits(iterations=50), at=EVENING)


def mails(house):
    return list(Outgoing.objects.within(house.scope).order_by("address"))


def test_each_owner_gets_one_mail_however_often_it_is_told(house, settings):
    settings.SITE_ADDRESS = "https://trim.example"
    second = make_member(house.business, Role.OWNER).user
    plan = thought(house)
    for _ in range(2):
        tell_proposal(week_plan=plan, at=EVENING)
    assert [mail.address for mail in mails(house)] == sorted([house.owner.email, second.email])
    mail = mails(house)[0]
    assert mail.subject == "Proposed plan for the week of Mon 2 Mar: 1 visit"
    assert "https://trim.example/week/?week=2026-03-02" in mail.body or "?week=2026-03-02" in mail.body
    assert "Low Croft, 12 cows" in mail.body
    assert mail.worthless_after == datetime(2026, 3, 9, tzinfo=UTC)


def test_what_a_person_asked_for_they_see_on_the_page(house):
    assert tell_proposal(week_plan=thought(house, by=house.owner), at=EVENING) == []


@pytest.mark.parametrize("state", ["failed", "set_aside", "accepted", "thinking"])
def test_what_is_not_open_any_more_is_not_told(house, state):
    plan = thought(house)
    plan.state = state
    assert tell_proposal(week_plan=plan, at=EVENING) == []


def test_an_owner_who_left_is_not_told(house):
    member = house.memberships[Role.OWNER]
    member.ended_at = EVENING - timedelta(days=1)
    member.save()
    assert tell_proposal(week_plan=thought(house), at=EVENING) == []
