"""What lies in the database, as monitoring reads it: over all businesses, few queries, nobody named."""

from datetime import timedelta

import pytest

from tests.factories import NOON, make_business
from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.outbox.domain.outgoing_states import Channel, OutgoingState, Topic
from trimops.outbox.models import Outgoing
from trimops.web.figures_read import errands_now, gauges_now, messages_now


def told(gauges):
    return {each.name: each.value for each in gauges}


@pytest.fixture
def businesses(db):
    return [make_business(name) for name in ("First", "Second")]


def test_errands_that_are_due_count_with_the_age_of_the_oldest(businesses):
    for business in businesses:
        for state, minutes in (
            ("WAITING", 7),
            ("WAITING", 2),
            ("WAITING", -5),
            ("UNDER_WAY", 1),
            ("STUCK", 90),
            ("DONE", 99),
        ):
            Errand.objects.create(
                business=business,
                job="visits.plan_week",
                state=ErrandState[state].value,
                due_at=NOON - timedelta(minutes=minutes),
            )
    assert told(errands_now(NOON)) == {
        "trimops_errands_waiting": 4,
        "trimops_errands_oldest_seconds": 7 * 60,
        "trimops_errands_under_way": 2,
        "trimops_errands_stuck": 2,
    }


def test_without_an_errand_nothing_is_old(db):
    assert told(errands_now(NOON))["trimops_errands_oldest_seconds"] == 0


def test_messages_that_wait_and_that_did_not_go_count(businesses):
    for business in businesses:
        for state in OutgoingState:
            Outgoing.objects.create(
                business=business,
                channel=Channel.MAIL.value,
                topic=Topic.VISIT.value,
                address="h@low-croft.example",
                state=state.value,
                written_at=NOON,
            )
    assert told(messages_now()) == {"trimops_messages_waiting": 4, "trimops_messages_failed": 2}


def test_all_of_it_takes_three_questions(businesses, django_assert_num_queries):
    with django_assert_num_queries(3):
        assert told(gauges_now())["trimops_database_up"] == 1
