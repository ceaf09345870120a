from trimops.outside.our_guard import our_guard


def test_our_guard_lets_in_what_the_setting_names_and_nothing_else(settings):
    settings.INNER_ADDRESSES = ["127.0.0.1:8025"]
    assert our_guard().inner == {"127.0.0.1:8025"}
    settings.INNER_ADDRESSES = []
    assert our_guard().inner == frozenset()


def test_the_machines_outside_are_those_of_the_setting(settings):
    assert our_guard().names == frozenset()
    settings.OUTSIDE_NAMES = ["calendar.example"]
    assert our_guard().names == {"calendar.example"}
