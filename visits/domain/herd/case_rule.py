"""The days by which sightings of a lesion are gathered into cases: movable figures with where they come from.

- `gap_days`, claw horn and swelling: 150. Chronic lesions were presented again after 93 days on average (Britten
  2025, excerpt opened; trade-facts 3.5), so a shorter gap would make one long lesion look like two new ones. 150 days
  are a four-monthly round that comes four weeks late; our choice, no source.
- `lasting_gap_days`: 210, for what stays for months unless it was seen to be gone: digital dermatitis, interdigital
  dermatitis, heel horn erosion, growths and the shapes of claws. With a shorter gap an old sore that is there at every
  round would be a new case at every round, and the rate would count trims. 210 days are a half-yearly round that comes
  four weeks late; our choice, no source. Digital dermatitis goes on whatever its stage (M4 lasts, and turns raw again
  on the same foot: from memory; and many looks note no stage): only a look without it, or M0, ends it.
- `foul_gap_days`: 28. Foul is an acute infection, gone within weeks; four weeks without it are taken as its end (from
  memory, as guidelines for recording claw health count a new lesion; not opened).
- `again_days`: 42, the day on which a forgotten block is said loudly (trade-facts 3.5). Up to then a second sighting
  is the re-check of the first.
- `repeat_days`: 365, and `chronic_sightings`: 3. Common practice, no source.
"""

from dataclasses import dataclass

from visits.domain.lesion_names import family_of
from visits.domain.lesions import LESIONS, LesionCode, LesionGroup

LASTING = frozenset(
    {LesionCode.DD, LesionCode.ID, LesionCode.HHE, LesionCode.IH}
    | {code for code in LesionCode if LESIONS[code].group is LesionGroup.SHAPE}
)


@dataclass(frozen=True)
class CaseRule:
    """See the module. All in days, but `chronic_sightings`."""

    gap_days: int = 150
    lasting_gap_days: int = 210
    foul_gap_days: int = 28
    again_days: int = 42
    repeat_days: int = 365
    chronic_sightings: int = 3

    def gap_of(self, lesion: LesionCode) -> int:
        """The longest time between two sightings, with no look between, that are still one case."""
        parent = family_of(lesion)
        if parent is LesionCode.IP:
            return self.foul_gap_days
        return self.lasting_gap_days if parent in LASTING else self.gap_days
