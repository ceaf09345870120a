"""What a business may set about its drives, with the published factors behind the usual values."""

from dataclasses import dataclass

from visits.domain.own_figures import FigureRefused


@dataclass(frozen=True)
class TravelFigures:
    """Usual figures of a van with a trailer in farming country.

    `circuity`, road length to straight line: 1.2 to 1.4 in most countries, 1.4 in England (R. H. Ballou, H. Rahardja
    and N. Sakai 2002, Selected country circuity factors for road travel distance estimation); 1.417 to hospitals
    in the United States (F. P. Boscoe, K. A. Henry and M. S. Zdeb 2012); near 1.3 in metropolitan areas (D. J.
    Giacomin and D. M. Levinson 2015). All three from memory.

    Speed rises with the length of the drive, as travel surveys show for cars (from memory): the first and last
    stretch lies on lanes (`lane_km` in all at `lane_kmh`), what follows on country roads (`kmh`), and what a
    drive has beyond `main_road_after_km` on main roads (`main_road_kmh`). A van with a trailer makes 40 to 55 km/h
    over a usual drive: common practice, no source. `main_road_kmh` stays below the 50 mph (80 km/h) that Great
    Britain allows with a trailer on a single carriageway (the Highway Code, rule 124, from memory).

    `trailer` stretches the times of a road map, which are a car's: 60 mph for cars against 50 mph with a trailer
    is 1.2, 70 against 60 is 1.17, and on lanes there is no difference (same rule, from memory).
    `own_drives` stretches every drive, and is how a business fits times to its own: two road engines were measured
    to differ by 25 % on one network. `minutes_per_leg` is added to each drive between two places.
    """

    circuity: float = 1.35
    kmh: float = 48
    minutes_per_leg: float = 2
    lane_km: float = 4
    lane_kmh: float = 30
    main_road_after_km: float = 20
    main_road_kmh: float = 64
    trailer: float = 1.15
    own_drives: float = 1

    def refuse_impossible_drives(self) -> None:
        """FigureRefused names the figure that no road or van can have."""
        if self.circuity < 1:
            raise FigureRefused("circuity: must be 1 or more: no road is shorter than the straight line")
        for name in ("kmh", "lane_kmh", "main_road_kmh", "trailer", "own_drives"):
            if getattr(self, name) <= 0:
                raise FigureRefused(f"{name}: must be above 0")
        if self.main_road_after_km < self.lane_km:
            raise FigureRefused("main_road_after_km: must be no less than lane_km")
