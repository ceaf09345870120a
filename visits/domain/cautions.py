"""Cautions that go with dangerous work. Usual advice in our own words; local rules and the vet decide.

Points: HSE livestock page, RISE Sweden 2017 (injuries of trimmers), Head Face Med 2008;4:1 (grinder);
zoonoses from Virginia Extension 400-460. Lone work and T14: common practice, no source.
"""

BEFORE_THE_FIRST_COW: tuple[str, ...] = (
    "Cut-resistant gloves under disposable ones, wrist guards on.",
    "Eyes covered; face shield and ear protection for the grinder.",
    "Knives sharp, disc whole and of the right kind, guard on.",
    "Crush stands firm, catches tried, way in and way out clear.",
    "Somebody knows where you are and when you will be done.",
    "Cows brought calmly; nobody within reach of a loose head or hind leg.",
)
"""T14: ticked before the first cow."""

GRINDER = (
    "A grinder only in trained hands: stand out of the line of the disc, two hands, stop at the first shake."
)
BELLY_BAND = "Belly band behind the elbow, not tight, off as soon as it can be: nerves suffer under it."
TOE = "Leave the wall and the triangle at the toe: they carry the weight."
BLOOD = "Blood or sensitive tissue in sight: stop. That foot is the vet's, and pain relief with it."
ALONE = "Somebody knows where you are and when you will be done; the phone is on you, not in the van."
MEDICINES = (
    "Medicines, their dose and their waiting times are the vet's and the label's; "
    "write them in the farm's book."
)
HEALTH = (
    "Some of what cows carry makes people ill: cover cuts, wash before eating, see a doctor about a fever."
)
LATE_PREGNANT = (
    "Within four weeks of calving more cows abort after a trim (odds 2.4 times as high, Thomsen 2020): "
    "ask the vet."
)
GLUE = "Block glue: gloves, fresh air, and follow the maker's safety sheet; it gets hot while it sets."

BLADE_BROKEN = (
    "Stop cutting with it, put it out of reach, look for the missing piece. A crack is never mended."
)
"""A cracked or chipped knife. Common practice, no source."""
DISC_BROKEN = (
    "Switch off and pull the plug before you touch it. A whole disc goes on, with the guard in its place."
)
"""A cracked or chipped disc: replace it, guard on (Head Face Med 2008;4:1). The plug first: common practice."""

FOR_THE_FARM: tuple[str, ...] = (
    "What is written here was seen at the trim; it is not a diagnosis. The vet decides on illness and medicines.",
    MEDICINES,
    "A cow with a block: even, dry ground and little walking; tell us if the block is lost or she gets worse.",
)
