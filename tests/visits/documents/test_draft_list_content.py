def test_the_count_is_that_of_all_groups(make_draft):
    assert make_draft(28).count == 28
    assert make_draft(28, groups=()).count == 0
