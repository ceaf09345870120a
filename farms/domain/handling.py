"""What a farm has for the trimmer to work with (trade-facts 11: trim-site article; amps from memory)."""

from enum import StrEnum


class CrushPlace(StrEnum):
    """Whose crush is used."""

    BROUGHT = "brought"
    ON_SITE = "on_site"

    @property
    def label(self) -> str:
        return {CrushPlace.BROUGHT: "Crush is brought", CrushPlace.ON_SITE: "Crush on the farm"}[self]


class PowerSupply(StrEnum):
    """The socket at the place of work."""

    NONE = "none"
    AMP_13 = "13A"
    AMP_32 = "32A"

    @property
    def label(self) -> str:
        return _POWER_LABELS[self]


class Shelter(StrEnum):
    """What is over the trimmer's head."""

    OPEN = "open"
    ROOF = "roof"
    INDOORS = "indoors"

    @property
    def label(self) -> str:
        return {Shelter.OPEN: "In the open", Shelter.ROOF: "Under a roof", Shelter.INDOORS: "Indoors"}[self]


_POWER_LABELS = {
    PowerSupply.NONE: "No power",
    PowerSupply.AMP_13: "13 A socket",
    PowerSupply.AMP_32: "32 A socket",
}
