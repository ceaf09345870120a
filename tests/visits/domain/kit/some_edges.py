"""Edges to learn from, written short."""

from datetime import UTC, datetime

from visits.domain.kit.blade_kinds import BladeKind, SharpenMethod
from visits.domain.kit.edge_lives import Edge, EdgeEnd

START = datetime(2026, 3, 2, tzinfo=UTC)


def edges(text, method=SharpenMethod.BELT, blade=1, kind=BladeKind.HOOF_KNIFE, **fields):
    """ "12 30+": an edge that went dull after 12 cows, one that still cut after 30."""
    return [
        Edge(
            blade=blade,
            kind=kind,
            method=method,
            is_new=False,
            is_whole=True,
            begun_at=START,
            end=EdgeEnd.STILL_CUT if word.endswith("+") else EdgeEnd.WENT_DULL,
            cows=int(word.strip("+")),
            **fields,
        )
        for word in text.split()
    ]
