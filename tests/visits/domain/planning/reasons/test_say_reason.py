"""Every code has its sentence, and every figure it needs is there."""

import json

import pytest
from hypothesis import given

from tests.visits.domain.planning.reasons.weeks_in_hand import MANY, InHand
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.reasons.making_room.limits import LIMITS, PROMISE_LIMITS
from visits.domain.planning.reasons.reason import Reason
from visits.domain.planning.reasons.say_reason import SAYINGS, say_reason
from visits.domain.planning.reasons.week_reasons import week_reasons


@MANY
@given(small_weeks(most_jobs=5))
def test_every_reason_of_every_week_can_be_said_in_a_sentence(problem):
    in_hand = InHand(problem)
    plan = plan_to_json(build_plan(in_hand.board, in_hand.week, engine="e", seed=0, seconds=0, proven=True))
    said = json.loads(json.dumps(week_reasons(json.dumps(problem), plan, seconds=60)))
    lists = [*said["stops"].values(), *said["left_out"].values(), *said["promises"].values(), said["rules"]]
    sentences = [say_reason(Reason.of_document(each)) for reasons in lists for each in reasons]
    assert len(sentences) >= 3
    for sentence in sentences:
        assert sentence[0].isupper() or sentence[0].isdigit(), sentence
        assert sentence.endswith("."), sentence
        assert not {"None", "nan", "inf"} & set(sentence.replace(".", " ").replace(",", " ").split()), (
            sentence
        )


def test_every_limit_has_its_sentence():
    assert {limit.code for limit in (*LIMITS, *PROMISE_LIMITS)} <= SAYINGS.keys()


def test_an_unknown_code_is_not_passed_over():
    with pytest.raises(KeyError):
        say_reason(Reason("because", {}))
