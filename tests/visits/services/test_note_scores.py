from datetime import timedelta

import pytest

from tests.factories import MONDAY, NOON, make_cow, make_farm
from visits.domain.mobility import MobilityScale
from visits.models import MobilityScore, MobilityScoring
from visits.services.note_scores import CowScore, ScoresMakeNoSense, ScoringWord, note_scores

UK = MobilityScale.UK


def note(house, *scores, **said):
    given = [CowScore(cow.pk, score) for cow, score in scores]
    word = ScoringWord(**{"scored_on": MONDAY, "scale": UK, "scores": given, "scored_by": "Robin", **said})
    return note_scores(farm=house.farm, word=word, at=NOON, by=house.client)


def scores_of(row):
    rows = MobilityScore.objects.within(row.scope).filter(scoring=row).order_by("cow__number")
    return list(rows.values_list("cow__number", "score"))


def test_a_round_is_kept_with_its_sheet_its_day_and_who_scored(house):
    row = note(house, (house.cow, 2), (make_cow(house.farm, "7"), 0), whole_herd=True)
    assert (row.scale, row.scored_on, row.scored_by, row.whole_herd) == ("UK0-3", MONDAY, "Robin", True)
    assert (row.noted_by, row.noted_at) == (house.client, NOON)
    assert scores_of(row) == [("101", 2), ("7", 0)]


def test_scores_of_one_day_and_sheet_are_one_round_and_a_score_sent_again_is_mended(house):
    other = make_cow(house.farm, "7")
    first = note(house, (house.cow, 2), (other, 1), whole_herd=True)
    again = note(house, (house.cow, 3), scored_by="")
    assert again == first
    assert scores_of(first) == [("101", 3), ("7", 1)]
    assert (again.whole_herd, again.scored_by) == (True, "Robin")


def test_another_sheet_is_another_round_and_never_turned_into_the_first(house):
    note(house, (house.cow, 2))
    note(house, (house.cow, 4), scale=MobilityScale.SPRECHER)
    assert MobilityScoring.objects.within(house.scope).count() == 2


@pytest.mark.parametrize(
    ("score", "said", "words"),
    [
        (4, {}, "UK 0 to 3 runs from 0 to 3, not 4"),
        (2, {"scored_on": MONDAY + timedelta(days=1)}, "still to come"),
        (2, {"scores": []}, "No cow was scored"),
    ],
)
def test_what_cannot_be_is_refused_and_nothing_is_noted(house, score, said, words):
    with pytest.raises(ScoresMakeNoSense, match=words):
        note(house, (house.cow, score), **said)
    assert not MobilityScoring.objects.within(house.scope).exists()


def test_a_cow_of_another_farm_is_refused(house):
    there = make_farm(house.business, "High Croft", by=house.owner)
    with pytest.raises(ScoresMakeNoSense, match="on another farm"):
        note(house, (make_cow(there, "9"), 2))
