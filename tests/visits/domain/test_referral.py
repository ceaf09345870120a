import pytest

from visits.domain.crush_entry import CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.referral import referrals_for

UK = MobilityScale.UK


def _foot(**said):
    return FootEntry(Foot.RIGHT_HIND, **said)


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ({"drew_blood": True}, "blood drawn or sensitive tissue"),
        ({"sensitive_tissue": True}, "blood drawn or sensitive tissue"),
        ({"swelling_above_dewclaw": True}, "above the dew claws"),
        ({"deep_infection": True}, "deep"),
        ({"no_better_at_recheck": True}, "no better at the re-check"),
        ({"findings": (FindingEntry(LesionCode.TN, Claw.LATERAL, 1, 3),)}, "dead toe"),
        ({"findings": (FindingEntry(LesionCode.IP, Claw.SKIN, 9, 2),)}, "swollen"),
    ],
)
def test_what_is_the_vets_is_sent_to_the_vet_with_what_was_seen(said, words):
    """T11 and trade-facts 8.1: common practice, from memory."""
    (advice,) = referrals_for(CowEntry((_foot(**said),)))
    assert advice.foot is Foot.RIGHT_HIND
    assert words in advice.reason


@pytest.mark.parametrize(
    ("score", "said", "sent"),
    [
        (3, {}, True),
        (2, {}, False),
        (3, {"has_pain": True}, False),
        (3, {"findings": (FindingEntry(LesionCode.SU, Claw.LATERAL, 4, 1),)}, False),
        (3, {"findings": (FindingEntry(LesionCode.WLF, Claw.LATERAL, 3, 2),)}, False),
        (3, {"findings": (FindingEntry(LesionCode.HHE, Claw.LATERAL, 6, 1),)}, True),
        (3, {"findings": (FindingEntry(LesionCode.DD, Claw.SKIN, 10, 1, DDStage.M4),)}, True),
    ],
)
def test_a_very_lame_cow_that_the_feet_do_not_explain_is_sent_to_the_vet(score, said, sent):
    entry = CowEntry((_foot(**said),), mobility_scale=UK, mobility_score=score)
    assert bool(referrals_for(entry)) is sent


def test_a_very_lame_cow_whose_feet_were_not_lifted_is_sent_to_the_vet():
    (advice,) = referrals_for(CowEntry(mobility_scale=UK, mobility_score=3))
    assert advice.foot is None


def test_an_ulcer_that_was_only_trimmed_is_the_trimmers_own_work():
    assert (
        referrals_for(CowEntry((_foot(findings=(FindingEntry(LesionCode.SU, Claw.LATERAL, 4, 2),)),))) == []
    )


def test_no_words_diagnose_or_prescribe():
    foot = _foot(
        drew_blood=True,
        swelling_above_dewclaw=True,
        deep_infection=True,
        no_better_at_recheck=True,
        findings=(FindingEntry(LesionCode.TN, Claw.LATERAL), FindingEntry(LesionCode.IP, Claw.SKIN)),
    )
    words = " ".join(advice.reason for advice in referrals_for(CowEntry((foot,)))).lower()
    assert not any(word in words for word in ("diagnos", "antibiotic", "inject", "dose", "phlegmon"))


def test_what_the_trimmer_leaves_to_the_vet_stands_in_their_own_words_beside_the_rules():
    foot = FootEntry(Foot.LEFT_HIND, drew_blood=True, for_vet="odd lump")
    found = referrals_for(CowEntry(feet=(foot,), for_vet="thin and dull"))
    assert [advice.foot for advice in found] == [Foot.LEFT_HIND, Foot.LEFT_HIND, None]
    assert [advice.reason for advice in found[1:]] == ["odd lump", "thin and dull"]
