from trimops.outside.our_guard import our_guard


def test_our_guard_lets_in_what_the_setting_names_and_nothing_else(settings):
    settings.INNER_ADDRESSES = ["127.0.0.1:8025"]
    assert our_guard().inner == {"127.0.0.1:8025"}
    settings.INNER_ADDRESSES = []
    assert our_guard().inner == frozenset()
