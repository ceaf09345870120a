import json

import pytest

from tests.visits.domain.visit_lengths.made_history import BROUGHT, made_history
from visits.domain.visit_length import LengthFigures
from visits.domain.visit_lengths.finished_visit import Asked
from visits.domain.visit_lengths.learn_lengths import learn_lengths
from visits.domain.visit_lengths.learned_rule import likely_length
from visits.domain.visit_lengths.rule_document import NotALearnedRule, rule_document, rule_of_document


@pytest.fixture(scope="module")
def rule():
    return learn_lengths(made_history(visits=80)[0], LengthFigures()).rule


def test_a_rule_comes_back_from_json_and_tells_the_same(rule):
    again = rule_of_document(json.loads(json.dumps(rule_document(rule))))
    for farm in (1, 5, 99):
        for van in (1, 2, None):
            asked = Asked(farm, van, BROUGHT, 24, 3)
            before, after = likely_length(rule, asked), likely_length(again, asked)
            assert after.minutes == pytest.approx(before.minutes, rel=1e-4)
            assert after.spread == pytest.approx(before.spread, rel=1e-3)
            assert (after.visits_here, after.visits_in_all) == (before.visits_here, before.visits_in_all)


def test_once_written_it_is_written_the_same_again(rule):
    document = rule_document(rule)
    assert rule_document(rule_of_document(document)) == document


@pytest.mark.parametrize(
    "change",
    [
        {"format": "another/1"},
        {"parts": ["set_up"]},
        {"mean": "none"},
        {"visits": True},
        {"covariance": 3},
        {"farms": []},
    ],
)
def test_what_is_no_learned_rule_is_refused(rule, change):
    with pytest.raises(NotALearnedRule):
        rule_of_document({**rule_document(rule), **change})
