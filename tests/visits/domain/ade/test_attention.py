"""Who wants attention now, and who does not any more."""

from dataclasses import replace
from datetime import UTC, date, datetime

from farms.domain.cow_status import CowStatus
from tests.visits.domain.ade.herds import BARE, DAISY, UNCUT, herd_of, score_of, trim_of
from visits.domain.ade.attention import wanting_attention


def told(herd):
    return list(wanting_attention(herd, {cow.key: cow for cow in herd.cows}))


def test_a_lame_cow_wants_attention_and_a_very_lame_one_at_once():
    events = told(herd_of(scores=[score_of(DAISY, 2), score_of(BARE, 3, key=2)]))
    assert [event["priority"] for event in events] == ["Normal", "Urgent"]
    assert events[0]["causes"] == ["MobilityScore", "Lameness"]
    assert events[0]["category"] == "Health"


def test_a_sound_cow_does_not():
    assert told(herd_of(scores=[score_of(DAISY, 1)])) == []


def test_her_latest_score_counts():
    better = [score_of(DAISY, 3), score_of(DAISY, 0, key=2, day=date(2026, 3, 1))]
    assert told(herd_of(scores=better)) == []


def test_a_cow_trimmed_since_or_on_that_day_does_not():
    at = datetime(2026, 2, 27, 8, tzinfo=UTC)
    assert told(herd_of(scores=[score_of(DAISY, 3)], trims=[trim_of(DAISY, UNCUT, at=at)])) == []


def test_a_cow_trimmed_before_she_went_lame_does():
    at = datetime(2026, 2, 20, 8, tzinfo=UTC)
    assert len(told(herd_of(scores=[score_of(DAISY, 3)], trims=[trim_of(DAISY, UNCUT, at=at)]))) == 1


def test_a_cow_that_left_the_farm_does_not():
    sold = replace(DAISY, status=CowStatus.SOLD)
    assert told(herd_of(cows=[sold], scores=[score_of(sold, 3)])) == []
