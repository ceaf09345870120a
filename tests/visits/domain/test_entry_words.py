from tests.factories import blocked_foot, trimmed_foot
from visits.domain.actions import ActionKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry
from visits.domain.entry_words import done_words, entry_words, found_words
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale


def test_what_was_seen_is_told_with_its_place_stage_and_how_bad():
    sore = FindingEntry(LesionCode.DD, Claw.SKIN, 10, 2, DDStage.M2)
    assert found_words(Foot.LEFT_HIND, sore) == "left hind skin, zone 10: digital dermatitis M2, 2"
    crack = FindingEntry(LesionCode.WLF, Claw.LATERAL)
    assert found_words(Foot.RIGHT_FORE, crack) == "right fore outer: white line crack, 1"


def test_what_was_done_to_the_whole_foot_names_no_claw():
    assert done_words(Foot.LEFT_HIND, ActionEntry(ActionKind.WRAP)) == "left hind: wrapped"


def test_a_cow_is_told_line_by_line_without_the_usual_steps():
    entry = CowEntry(
        (blocked_foot(), trimmed_foot(Foot.RIGHT_HIND, for_vet="warm above the horn")),
        MobilityScale.UK,
        2,
        note="keep her near",
        for_vet="eats little",
    )
    assert entry_words(entry) == [
        "corrective trim: left hind, right hind; walked in 2 (UK 0 to 3)",
        "left hind outer, zone 4: sole ulcer, 2",
        "left hind inner: wooden block",
        "right hind, for the vet: warm above the horn",
        "for the vet: eats little",
        "keep her near",
    ]


def test_a_cow_only_looked_at_has_a_line_of_her_own():
    assert entry_words(CowEntry()) == ["looked at"]
