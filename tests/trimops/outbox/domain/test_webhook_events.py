import re

from trimops.outbox.domain.webhook_events import CHOOSABLE, WebhookEvent


def test_every_event_has_a_name_of_the_usual_form_and_words_for_people():
    for event in WebhookEvent:
        assert re.fullmatch(r"[a-z]+(\.[a-z_]+)?", event.value)
        assert event.label[0].isupper()


def test_a_test_message_is_for_everybody_and_chosen_by_nobody():
    assert set(CHOOSABLE) == set(WebhookEvent) - {WebhookEvent.TEST}
