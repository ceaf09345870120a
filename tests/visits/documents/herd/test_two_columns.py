import pytest

from visits.documents.herd.two_columns import fewest_pages


def test_blocks_fill_the_shorter_column_in_the_given_order():
    assert fewest_pages([50, 20, 30], 100, 100) == [([0], [1, 2])]


def test_another_order_is_taken_where_it_saves_a_page():
    heights = [95, 90, 142, 128, 88, 135]
    pages = fewest_pages(heights, 224, 258)
    assert len(pages) == 2
    assert pages[0][0][0] == 0, "the first block stays on top"
    for room, columns in zip((224, 258), pages, strict=True):
        assert all(sum(heights[number] for number in column) <= room for column in columns)
    assert sorted(number for columns in pages for column in columns for number in column) == list(range(6))


def test_the_last_page_ends_as_high_up_as_can_be():
    assert (
        max(
            sum([60, 60, 60, 30][n] for n in column) for column in fewest_pages([60, 60, 60, 30], 70, 100)[-1]
        )
        == 60
    )


def test_a_block_too_high_for_the_first_page_leaves_it_to_the_head():
    assert fewest_pages([90], 50, 100) == [([0], [])]


def test_many_blocks_are_taken_as_they_come():
    pages = fewest_pages([40] * 30, 100, 100)
    assert [number for left, right in pages for number in sorted(left + right)] == list(range(30))


def test_nothing_takes_no_page():
    assert fewest_pages([], 100, 100) == []


def test_a_block_higher_than_a_page_is_refused():
    with pytest.raises(ValueError, match="higher"):
        fewest_pages([50, 101], 100, 100)
