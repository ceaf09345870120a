"""The problem of a week as a document of its own format; its parts are described in that format, not here."""

from rest_framework import serializers

from trimops.api.op import Said


class ProblemShown(serializers.Serializer):  # type: ignore[type-arg]
    """A document of the format trimops-week-problem/1. Instants with offset, minutes, kilometres, money in minor
    units."""

    format = serializers.CharField()
    timezone = serializers.CharField()
    bases = serializers.ListField(child=serializers.DictField())
    sites = serializers.ListField(child=serializers.DictField())
    travel = serializers.DictField()
    shifts = serializers.ListField(child=serializers.DictField())
    jobs = serializers.ListField(child=serializers.DictField())

    def to_representation(self, instance: Said) -> Said:
        return instance
