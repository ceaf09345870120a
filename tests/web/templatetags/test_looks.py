import pytest
from django.template import engines

from trimops.web.templatetags.looks import mark, message_kind, message_word


def drawn(text, **context):
    return engines["django"].from_string("{% load looks %}" + text).render(context)


def test_a_mark_always_has_a_word():
    assert mark("due") == '<span class="mark mark-due">Due</span>'
    assert mark("urgent", "2 lame") == '<span class="mark mark-urgent">2 lame</span>'


def test_a_mark_without_a_meaning_is_refused():
    with pytest.raises(ValueError, match="no mark is called 'green'"):
        mark("green")


def test_the_word_of_a_mark_is_escaped():
    assert "<b>" not in drawn("{% mark 'done' word %}", word="<b>")


def test_what_is_kept_can_be_shown_twice_and_stays_escaped_once():
    page = drawn("{% keep as answer %}  {{ name }} \n{% endkeep %}[{{ answer }}][{{ answer }}]", name="A & B")
    assert page == "[A &amp; B][A &amp; B]"


@pytest.mark.parametrize(
    ("tags", "kind", "word"),
    [
        ("error", "urgent", "Stopped"),
        ("extra warning", "due", "Take note"),
        ("success", "done", "Done"),
        ("info", "plain", "Note"),
        ("", "plain", "Note"),
    ],
)
def test_every_message_has_a_mark_and_a_word(tags, kind, word):
    assert (message_kind(tags), message_word(tags)) == (kind, word)
