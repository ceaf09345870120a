"""One document a kind of resource."""

from tests.visits.domain.ade.herds import BLOCKED, DAISY, LATER, UNCUT, herd_of, score_of, trim_of
from visits.domain.ade.documents import ade_documents

HERD = herd_of(trims=[trim_of(DAISY, BLOCKED), trim_of(DAISY, UNCUT, key=2)], scores=[score_of(DAISY, 1)])


def told_of(herd, **asked):
    return {name: list(members) for name, members in ade_documents(herd, LATER, **asked).items()}


def test_each_kind_has_its_document():
    assert {name: len(members) for name, members in told_of(HERD).items()} == {
        "location": 1,
        "animals": 2,
        "lactations": 2,
        "diagnoses": 1,
        "treatments": 1,
        "mobility": 1,
        "attention": 0,
    }


def test_the_same_herd_told_at_the_same_moment_is_the_same():
    assert told_of(HERD) == told_of(HERD)


def test_the_proposed_word_is_handed_on():
    (event,) = told_of(HERD, common_procedure=True)["treatments"]
    assert event["commonProcedure"] == "FootTrimming"
