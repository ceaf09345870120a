"""A farm leaves its wish with the business, and the business hears of it."""

from django.core import mail

from tests.factories import NOON
from tests.visits.services.offers import urgent
from trimops.portal.services.leave_wish import leave_wish
from visits.domain.mobility import MobilityScale


def leave(house, **changes):
    wish = urgent(asked_by="Edda", **changes)
    return leave_wish(farm=house.farm, wish=wish, at=NOON, by=house.client)


def test_it_is_wanted_and_the_business_is_told_how_bad_it_is(house, django_capture_on_commit_callbacks):
    house.business.email = "office@trimmers.example"
    house.business.save()
    with django_capture_on_commit_callbacks(execute=True):
        visit = leave(house, mobility_scale=MobilityScale.UK, mobility_score=3, note="By the gate.")
    assert (visit.state, visit.farm, visit.asked_by) == ("wanted", house.farm, "Edda")
    (message,) = mail.outbox
    assert message.to == ["office@trimmers.example"]
    for words in ("no hour yet", "2 cows, worst score 3 (UK 0 to 3)", "By the gate.", f"/visits/{visit.pk}/"):
        assert words in message.body


def test_a_business_without_an_address_finds_it_on_its_list(house, django_capture_on_commit_callbacks):
    house.farm.business.email = ""
    house.farm.business.save()
    with django_capture_on_commit_callbacks(execute=True):
        assert leave(house).state == "wanted"
    assert mail.outbox == []
