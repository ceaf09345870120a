import json

from visits.domain.planning.reasons.reason import Reason


def test_a_reason_comes_back_from_its_document_as_it_was():
    reason = Reason("next-best", {"shift": "mon", "more": 12.5, "days_late": 0, "start": None})
    assert Reason.of_document(json.loads(json.dumps(reason.document()))) == reason
