import pytest

from visits.domain.herd.lesion_families import LesionFamily
from visits.domain.herd.published_rates import (
    AFONSO,
    GRIFFITHS,
    PUBLISHED_RATES,
    SOLANO_2015,
    Per,
    Source,
    published_for,
)
from visits.domain.lesions import LesionCode


def test_lesions_are_only_set_beside_figures_counted_over_the_same():
    found = published_for(LesionCode.DD, Per.COWS_TRIMMED)
    assert {rate.per_100 for rate in found} == {15.0, 22.7, 9.3, 29.6}
    assert published_for(LesionCode.DD, Per.COWS_SCORED) == ()
    assert published_for(LesionFamily.INFECTIOUS, Per.COWS_TRIMMED) == ()


def test_any_lesion_is_not_the_same_as_any_figure():
    assert {rate.per_100 for rate in published_for(None, Per.COWS_TRIMMED)} == {46.4, 25.7, 72.0}


def test_figures_of_the_herds_own_country_come_first():
    assert [r.source for r in published_for(None, Per.COWS_SCORED, "GB")] == [GRIFFITHS, AFONSO, SOLANO_2015]
    assert published_for(None, Per.COWS_SCORED, "CA")[0].source is SOLANO_2015


def test_lameness_is_named_as_lameness_and_never_as_any_lesion():
    assert {rate.what for rate in published_for(None, Per.COWS_SCORED)} == {"lame cows"}
    assert [rate.what for rate in published_for(None, Per.LAMENESS_COW_YEARS)] == ["cases of lameness"]
    assert {rate.what for rate in published_for(None, Per.COWS_TRIMMED)} == {"any lesion"}
    assert published_for(LesionCode.U, Per.COWS_TRIMMED)[0].what == "ulcer"


@pytest.mark.parametrize("rate", PUBLISHED_RATES, ids=lambda rate: f"{rate.source.key} {rate.per_100}")
def test_every_figure_says_where_it_is_from_and_what_its_spread_is(rate):
    assert rate.source.cited
    assert rate.source.population
    assert rate.source.years
    assert (rate.low is None) == (rate.high is None) == (rate.spread == "")
    assert rate.low is None or rate.low <= rate.per_100 <= rate.high


@pytest.mark.parametrize("rate", PUBLISHED_RATES, ids=lambda rate: f"{rate.source.key} {rate.per_100}")
def test_readers_are_never_sent_to_our_own_notes(rate):
    words = f"{rate.source.cited} {rate.source.population} {rate.source.years}"
    assert not [ours for ours in ("trade-facts", "not noted", ".md", ".py") if ours in words]


def test_a_source_tells_whether_it_was_read():
    assert (GRIFFITHS.tag, Source("k", "c", "GB", "p", "y", opened=False).tag) == (
        "excerpt read",
        "from memory",
    )
