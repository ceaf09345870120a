"""What each draft rule says and where it comes from, beside its days: shown wherever the rules are chosen."""

from dataclasses import dataclass
from enum import StrEnum


class HowKnown(StrEnum):
    """How far the source of a rule was seen."""

    READ = "excerpt read"
    PRACTICE = "common practice, no source"
    WORKED_OUT = "worked out from it"


@dataclass(frozen=True)
class RuleSource:
    """One source, what it says, and how far it was seen."""

    says: str
    how: HowKnown = HowKnown.READ


@dataclass(frozen=True)
class DraftRule:
    """One rule of the list. `days` are the names of its days in `DraftRules`, `switch` of what turns it off."""

    name: str
    sources: tuple[RuleSource, ...]
    days: tuple[str, ...] = ()
    switch: str = ""
    disagreement: str = ""


DRAFT_RULES: tuple[DraftRule, ...] = (
    DraftRule(
        "Lame now",
        (
            RuleSource("Newly lame cows come first (AHDB, article on the trim list)."),
            RuleSource(
                "Treated within 48 hours of a fortnightly score, fewer were lame 4 weeks on (Leach 2012)."
            ),
            RuleSource("Herds are to be scored at least monthly (GB Dairy Cow Lameness Manifesto, 2025)."),
            RuleSource("So a score older than 28 days counts no more.", HowKnown.WORKED_OUT),
            RuleSource(
                "Just after a trim scores are worse, so one counts only if it is later (Van Hertem 2014)."
            ),
        ),
        ("score_counts",),
    ),
    DraftRule(
        "Blocks and re-checks that are due",
        (
            RuleSource("Cows on a block or uncomfortable come second (AHDB, article on the trim list)."),
            RuleSource("Looked at again after about four weeks (Cramer 2015, Univ. Minnesota Extension)."),
        ),
        disagreement=(
            "When a block comes off: wooden ones after about three weeks (Maierl and Fiedler), "
            "a re-check at about four (Cramer), shoes after six at least (AHDB 2021)."
        ),
    ),
    DraftRule(
        "Asked for, or added to the list", (RuleSource("The farm knows its cows.", HowKnown.PRACTICE),)
    ),
    DraftRule(
        "Before drying off",
        (
            RuleSource("3 to 10 days before, never on the day itself (AHDB, article on the trim list)."),
            RuleSource(
                "About a fifth lower odds of a sole ulcer in the next lactation (Thomsen, 621,228 trims)."
            ),
        ),
        ("dry_off_from", "dry_off_to"),
        "use_dry_off",
    ),
    DraftRule(
        "Heifers before calving",
        (
            RuleSource("A look one to two months ahead.", HowKnown.PRACTICE),
            RuleSource("Not within four weeks of calving (Thomsen 2020)."),
        ),
        ("heifer_from", "heifer_to"),
        "use_heifers",
    ),
    DraftRule(
        "Days in milk",
        (RuleSource("A trim at 60 to 100 days stayed in the final model of lame herds (Griffiths 2018)."),),
        ("milk_from", "milk_to"),
        "use_milk_days",
        "A trial of 9,569 first-lactation cows without a lesion found no difference after a trim at "
        "116 days; that of 19,343 older cows was not seen to its result.",
    ),
    DraftRule(
        "Longest since the last trim",
        (
            RuleSource(
                "Every 4 to 6 months has become usual for housed cows of high yield (review of claw trimming)."
            ),
            RuleSource("So 150 days, the middle.", HowKnown.WORKED_OUT),
            RuleSource("The shape holds for six months at most (Japan 2000, 38 cows)."),
        ),
        ("trim_again_after",),
        "use_long_ago",
    ),
    DraftRule(
        "Warned of before calving",
        (RuleSource("In the last four weeks the odds of abortion were 2.4 times as high (Thomsen 2020)."),),
        ("calving_warning",),
        disagreement="A German summary says the last eight weeks; another writes 2.4 per cent, a slip for 2.4 times.",
    ),
    DraftRule(
        "Warned of on the day of drying off",
        (RuleSource("Not on the same day, for the udder's sake (AHDB, article on the trim list)."),),
    ),
)
