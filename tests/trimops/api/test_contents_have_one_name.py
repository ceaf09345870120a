"""Two contents of one name would be one in the description, and one of them would be wrong."""

from collections import defaultdict
from collections.abc import Iterator

from django.urls import get_resolver
from rest_framework import serializers

PACKAGES = ("trimops", "farms", "visits", "invoicing")


def below(kind: type) -> Iterator[type]:
    for one in kind.__subclasses__():
        yield one
        yield from below(one)


def test_no_two_contents_of_the_api_have_one_name():
    assert get_resolver().url_patterns, "so that all addresses are loaded"
    homes = defaultdict(set)
    for kind in below(serializers.BaseSerializer):
        if kind.__module__.startswith(PACKAGES):
            homes[kind.__name__].add(kind.__module__)
    assert {name: found for name, found in homes.items() if len(found) > 1} == {}
