"""The business hears of what a farm did by itself."""

from django.core import mail

from tests.factories import confirmed
from trimops.portal.services.tell_business import tell_business


def test_an_hour_that_was_taken_is_told_with_day_and_hour_in_the_zone_of_the_business(
    house, django_capture_on_commit_callbacks
):
    house.business.email = "office@trimmers.example"
    house.business.save()
    visit = confirmed(house.farm, house.van)
    with django_capture_on_commit_callbacks(execute=True):
        tell_business(visit=visit)
    assert mail.outbox[0].subject == "Low Croft has taken an hour"
    assert "Low Croft has taken Tuesday 3 March, 10:00" in mail.outbox[0].body


def test_a_mail_that_cannot_be_sent_does_no_harm(
    house, monkeypatch, caplog, django_capture_on_commit_callbacks
):
    house.business.email = "office@trimmers.example"
    house.business.save()

    def broken(*args, **kwargs):
        raise OSError("no such host")

    monkeypatch.setattr(mail.EmailMessage, "send", broken)
    with django_capture_on_commit_callbacks(execute=True):
        tell_business(visit=confirmed(house.farm, house.van))
    assert "no such host" in caplog.text
