"""Scores go out on their own score sheet, never as the exchange's 1 to 9."""

from datetime import date

from tests.visits.domain.ade.herds import BARE, DAISY, UNCUT, herd_of, score_of, trim_of
from visits.domain.ade.mobility import scores_of, scores_told
from visits.domain.mobility import MobilityScale

HERD = herd_of(
    trims=[trim_of(DAISY, UNCUT, mobility_scale=MobilityScale.SPRECHER, mobility_score=4)],
    scores=[score_of(DAISY, 0), score_of(BARE, 3, key=2)],
)
COWS = {cow.key: cow for cow in HERD.cows}


def test_a_score_of_nought_is_told_like_any_other():
    told = {event["id"]: event["diagnoses"][0] for event in scores_told(HERD, COWS)}
    assert told["score-1"]["severityScore"] == 0
    assert told["score-1"]["diagnosisCode"] == {"id": "UK0-3", "scheme": "x.trimops.mobility-sheet"}
    assert told["walked-in-1"]["diagnosisCode"]["id"] == "S1-5"
    assert len(told) == 3


def test_no_score_is_sent_as_a_conformation_score():
    kinds = {event["resourceType"] for event in scores_told(HERD, COWS)}
    assert kinds == {"icarDiagnosisEventResource"}
    assert not any("score" in event or "traitScored" in event for event in scores_told(HERD, COWS))


def test_scores_of_rounds_and_of_the_crush_stand_in_order_of_time():
    assert [known.key for known in scores_of(HERD)] == ["score-1", "score-2", "walked-in-1"]


def test_a_round_is_told_on_its_own_day_not_on_the_day_it_was_noted():
    herd = herd_of(scores=[score_of(DAISY, 1, day=date(2026, 1, 5))])
    (event,) = scores_told(herd, COWS)
    assert event["eventDateTime"] == "2026-01-05T12:00:00Z"
