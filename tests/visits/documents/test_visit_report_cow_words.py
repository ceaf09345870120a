from visits.documents.visit_report_content import CowLine, FootLine, Found
from visits.documents.visit_report_cow_words import cow_words, found_words, plain_cow_words, sole_of
from visits.domain.feet import Claw, Foot

ULCER = Found("sole ulcer", Claw.LATERAL, 4, "where sole meets heel", 2, for_vet=True)


def test_a_lesion_is_told_with_how_bad_and_where():
    said = found_words(ULCER)
    assert f"{said.lesion}{said.rest}" == "Sole ulcer, clear: outer claw, where sole meets heel (4)"
    assert said.vet == "Vet advised"
    sore = found_words(Found("digital dermatitis", Claw.SKIN, severity=3, stage="raw sore, over 2 cm"))
    assert (sore.lesion, sore.rest) == ("Digital dermatitis", ", raw sore, over 2 cm, severe: skin")


def test_the_drawing_marks_what_is_told():
    view = sole_of(FootLine(Foot.LEFT_HIND, (ULCER,), block_on=Claw.MEDIAL))
    assert [(mark.claw, mark.zone, mark.for_vet) for mark in view.marks] == [(Claw.LATERAL, 4, True)]
    assert view.block_on is Claw.MEDIAL


def test_why_a_foot_is_the_vet_s_stands_in_her_row_once_with_a_diamond():
    (cow,) = cow_words(
        [CowLine("419", "looked at", (FootLine(Foot.LEFT_HIND, (ULCER,), vet=("hot", "dead toe")),))]
    )
    (foot,) = cow.feet
    assert (foot.vet, foot.found[0].vet, foot.sole.for_vet) == ("hot; dead toe", "", True)


def test_a_foot_without_a_lesion_that_is_the_vet_s_is_not_left_out():
    cow = CowLine("419", "looked at", (FootLine(Foot.LEFT_HIND, vet=("swelling above the dew claws",)),))
    assert not cow.is_plain
    assert [foot.vet for foot in cow_words([cow])[0].feet] == ["swelling above the dew claws"]


def test_a_lame_cow_is_told_with_her_score_and_its_scale():
    (cow,) = cow_words([CowLine("9", "looked at", note="kicks", walked="3, UK 0 to 3")])
    assert (cow.walked, cow.note) == ("lame, 3, UK 0 to 3", "kicks")


def test_cows_with_nothing_to_tell_are_named_by_what_they_had():
    cows = [CowLine("1", "functional trim"), CowLine("2", "looked at"), CowLine("3", "functional trim")]
    assert plain_cow_words(cows) == ("Functional trim (2): 1, 3", "Looked at (1): 2")
    assert cow_words(cows) == ()
