"""What was done, foot by foot."""

from tests.visits.domain.ade.herds import BLOCKED, DAISY, FARM, UNCUT, trim_of
from visits.domain.ade.treatments import work_done


def done_to(*feet, **asked):
    return list(work_done(FARM, DAISY, trim_of(DAISY, *feet), **asked))


def test_a_block_is_told_in_words_on_the_sound_claw_that_bears_it():
    (event,) = done_to(BLOCKED)
    assert event["procedure"] == (
        "Corrective trim: cut to length (inner claw); wooden block on (inner claw); wrapped (foot)"
    )
    assert event["positions"] == [{"position": "InnerToeRearRight"}, {"position": "LegsRearRight"}]
    assert event["comment"] == "look again after 28 days"


def test_a_foot_that_needed_no_cut_was_not_treated():
    assert done_to(UNCUT) == []


def test_each_foot_is_an_event_of_its_own():
    assert [event["id"] for event in done_to(UNCUT, BLOCKED)] == ["trim-1-RH"]


def test_the_proposed_word_for_trimming_is_there_only_when_it_is_asked_for():
    (plain,) = done_to(BLOCKED)
    (asked,) = done_to(BLOCKED, common_procedure=True)
    assert "commonProcedure" not in plain
    assert asked == {**plain, "commonProcedure": "FootTrimming"}
