"""Each message of a watch has a name of its own."""

from visits.domain.lone_watch.call_names import call_name, call_start, well_name


def test_names_begin_with_their_watch_and_their_call():
    assert call_name(7, 1, "sms").startswith(call_start(7, 1))
    assert call_start(7, 1).startswith(call_start(7))
    assert not call_name(7, 11, "sms").startswith(call_start(7, 1)), "the eleventh is not the first"
    assert not call_name(71, 1, "sms").startswith(call_start(7))


def test_the_word_that_all_is_well_is_no_call():
    assert not well_name(7, 1, "mail").startswith(call_start(7))
    assert len({well_name(7, 1, "mail"), well_name(7, 1, "sms"), call_name(7, 1, "mail")}) == 3
