from datetime import timedelta

from django.core.management import call_command

from tests.factories import NOON, TUESDAY_TEN, finish, put_down, trimmed_foot, under_way
from visits.models import IssuedReport
from visits.services.issue_missing_reports import issue_missing_reports


def two_done(house):
    for days in (0, 7):
        visit = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=days))
        put_down(visit, house.cow, trimmed_foot())
        finish(visit, house.trimmer)


def test_the_newest_are_issued_first_and_the_rest_when_it_is_called_again(
    house, django_capture_on_commit_callbacks
):
    two_done(house)
    under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=14))
    with django_capture_on_commit_callbacks() as told:
        (first,) = issue_missing_reports(scope=house.scope, at=NOON, most=1)
        (second,) = issue_missing_reports(scope=house.scope, at=NOON)
    assert first.visit.finished_at > second.visit.finished_at
    assert issue_missing_reports(scope=house.scope, at=NOON) == []
    assert told == [], "nobody is told of what is no news"


def test_the_command_does_it_for_every_business(house, capsys):
    two_done(house)
    call_command("issue_reports", most=1)
    assert f"{house.business}: 1 reports issued" in capsys.readouterr().out
    assert IssuedReport.objects.within(house.scope).count() == 1
