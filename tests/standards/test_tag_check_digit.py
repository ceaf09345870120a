"""UK tag check digit against published tags (sources in fixtures/standards/tag_check_digits.json)."""

from farms.domain.ear_tag import ear_tag_hint, normalise_ear_tag


def test_published_valid_tags_raise_no_question(published):
    for tag in published("tag_check_digits.json")["valid"]:
        assert ear_tag_hint(tag) == "", tag


def test_a_published_misprint_is_noticed_with_the_digit_that_would_fit(published):
    for case in published("tag_check_digits.json")["invalid"]:
        assert ear_tag_hint(case["tag"]).endswith(f"expected {case['expected']}")


def test_published_tags_keep_every_digit(published):
    for tag in published("tag_check_digits.json")["valid"]:
        assert normalise_ear_tag(tag) == tag.replace(" ", "")
