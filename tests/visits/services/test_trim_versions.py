"""What a trim said before it is changed, kept for good."""

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, blocked_foot, put_down
from visits.models import TrimVersion
from visits.services.trim_versions import keep_earlier_version


def test_every_word_of_the_trim_is_in_the_version(house, visit):
    trim = put_down(visit, house.cow, blocked_foot(wall_mm=80), note="Quiet")
    keep_earlier_version(trim, at=NOON, by=house.owner)
    row = TrimVersion.objects.within(house.scope).get()
    assert (row.version, row.replaced_at, row.replaced_by) == (1, NOON, house.owner)
    (foot,) = row.content["feet"]
    assert (row.content["note"], foot["foot"], foot["wall_mm"]) == ("Quiet", "LH", 80)
    assert [finding["lesion"] for finding in foot["findings"]] == ["SU"]
    assert foot["actions"][-1] == {"kind": "block", "claw": "medial", "block_kind": "wood"}


def test_each_version_is_kept_once(house, visit):
    trim = put_down(visit, house.cow, blocked_foot())
    keep_earlier_version(trim, at=NOON, by=house.owner)
    with pytest.raises(ValidationError):
        keep_earlier_version(trim, at=NOON, by=house.owner)
