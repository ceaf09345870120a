from datetime import timedelta

import pytest

from tests.factories import NOON, make_house
from tests.trimops.outbox.messages import in_state, put
from trimops.outbox.domain.outgoing_states import ONLY_IN_THE_FOLDER, Channel, Topic
from trimops.outbox.models import Outgoing
from trimops.outbox.selectors.outgoing_rows import (
    OutgoingFilter,
    outgoing_counts,
    outgoing_look,
    outgoing_rows,
    outgoing_story,
    why_not_again,
)

LATER = NOON + timedelta(hours=1)


@pytest.mark.parametrize(
    ("state", "columns", "mark", "words", "waits"),
    [
        ("waiting", {}, "planned", "Waiting to go", True),
        ("waiting", {"next_try_at": LATER}, "due", "Did not go yet", True),
        ("going", {}, "planned", "Going now", True),
        ("went", {}, "done", "Went", False),
        ("went", {"may_have_gone": True}, "done", "Went", False),
        ("went", {"last_words": ONLY_IN_THE_FOLDER}, "due", "Only in the mail folder", False),
        ("failed", {}, "urgent", "Did not go", False),
        ("failed", {"may_have_gone": True}, "urgent", "Not known whether it went", False),
        ("lapsed", {}, "plain", "Came too late", False),
        ("left", {"may_have_gone": True}, "plain", "Left", False),
    ],
)
def test_only_what_was_taken_wears_the_mark_of_what_is_done(house, state, columns, mark, words, waits):
    look = outgoing_look(in_state(house, state, **columns))
    assert (look.mark, look.words, look.waits) == (mark, words, waits)


def test_each_stands_in_the_list_of_its_state_way_and_topic(house):
    waits, going, went = (in_state(house, state) for state in ("waiting", "going", "went"))
    failed, lapsed, left = (in_state(house, state) for state in ("failed", "lapsed", "left"))
    text = put(house, channel=Channel.SMS, topic=Topic.REPORT)
    bill = put(house, topic=Topic.INVOICE)
    in_state(make_house("Far Side"), "failed")

    def found(shown, topics=frozenset(Topic), channel=None):
        return set(outgoing_rows(house.scope, topics, shown, channel))

    assert found(OutgoingFilter.WAITING) == {waits, going, text, bill}
    assert found(OutgoingFilter.NOT_GONE) == {failed, lapsed}
    assert found(OutgoingFilter.WENT) == {went}
    assert found(OutgoingFilter.ALL) == {waits, going, went, failed, lapsed, left, text, bill}
    assert found(OutgoingFilter.ALL, channel=Channel.SMS) == {text}
    assert found(OutgoingFilter.ALL, [Topic.REPORT, Topic.INVOICE]) == {text, bill}
    counts = outgoing_counts(house.scope, frozenset(Topic) - {Topic.INVOICE})
    assert (counts.waiting, counts.failed) == (3, 1)


def test_the_list_is_read_without_texts_and_secrets(house, django_assert_num_queries):
    put(house, body="{secret}", secret="s")
    with django_assert_num_queries(1) as asked:
        assert len(outgoing_rows(house.scope, Topic)) == 1
    assert '"secret"' not in asked.captured_queries[0]["sql"]


def test_nothing_secret_is_told_of_one_message(house, django_assert_num_queries):
    row = put(house, body="Open {secret} today.", secret="https://s")
    with django_assert_num_queries(2):
        story = outgoing_story(row)
    assert (story.text, story.has_link) == ("Open … today.", True)
    assert (story.may_go_again, story.may_be_left, story.why_not_again) == (False, True, "")


@pytest.mark.parametrize(
    ("columns", "because"),
    [({}, ""), ({"body": ""}, "not kept any more"), ({"body": "{secret}"}, "kept nowhere")],
)
def test_what_cannot_go_again_says_why(house, columns, because):
    row = in_state(house, "failed", **columns)
    assert because in why_not_again(row)
    assert outgoing_story(row).may_go_again == (because == "")


def test_a_bill_gets_a_new_link_so_it_may_go_again(house):
    row = put(house, topic=Topic.INVOICE, body="{secret}", secret="s")
    Outgoing.objects.within(house.scope).filter(pk=row.pk).update(state="failed", secret="")
    assert why_not_again(row) == ""
