"""A herd list is handed in, and changes nothing yet."""

import pytest

from farms.models import Cow, HerdImport
from farms.services.keep_herd_list import HerdListUnreadable, keep_herd_list
from tests.factories import NOON

LIST = b"number,official tag\n101,UK123450600001\n102,UK123450700002\n"


def keep(house, content=LIST, name="herd.csv"):
    return keep_herd_list(farm=house.farm, file_name=name, content=content, at=NOON, by=house.office)


def test_the_file_is_kept_as_it_came_and_no_cow_changes(house):
    cows = list(Cow.objects.within(house.scope).values())
    kept = HerdImport.objects.within(house.scope).get(pk=keep(house).pk)
    assert (bytes(kept.content), kept.file_name, kept.uploaded_by) == (LIST, "herd.csv", house.office)
    assert (kept.farm, kept.applied_at, kept.outcome) == (house.farm, None, {})
    assert list(Cow.objects.within(house.scope).values()) == cows


UNREADABLE = {
    "nothing in it": b"",
    "headings only": b"number,tag\n",
    "no column of numbers": b"tag,born\nUK123450600001,2020-01-01\n",
    "no list at all": b"\x00\x01\x02\x03",
    "a broken workbook": b"PK\x03\x04 not really",
}


@pytest.mark.parametrize("content", UNREADABLE.values(), ids=UNREADABLE)
def test_what_is_no_herd_list_is_refused_in_words_and_not_kept(house, content):
    with pytest.raises(HerdListUnreadable) as refused:
        keep(house, content)
    assert refused.value.message
    assert not HerdImport.objects.within(house.scope).exists()


def test_a_very_long_file_name_is_cut(house):
    assert len(keep(house, name="x" * 300 + ".csv").file_name) == 200
