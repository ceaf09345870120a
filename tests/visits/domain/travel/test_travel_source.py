from visits.domain.travel.travel_source import TravelSource


def test_each_source_has_its_own_mark_and_words():
    assert [source.mark for source in TravelSource] == ["e", "s", "l"]
    assert len({source.label for source in TravelSource}) == len(TravelSource)
