"""How fast a day at the crush goes in: 500 cows and 50 photos, on the embedded default, beside a plain bulk insert.

The bulk insert writes the very rows that the sending left in the database, table by table, in one transaction, with
nothing read, judged or merged: the least that any way of storing them could cost.
"""

import time
from dataclasses import dataclass

from tests.bench.embedded_site import embedded_site
from tests.bench.visits.crush_day import CrushDay

COWS, PHOTOS, AT_ONCE = 500, 50, 100
PHOTO_BYTES = 180_000


@dataclass(frozen=True)
class Figures:
    """Seconds for each part, and how much it was."""

    cows: int
    photos: int
    kept: int
    rows: int
    cow_seconds: float
    photo_seconds: float
    plain_seconds: float

    @property
    def seconds(self) -> float:
        return self.cow_seconds + self.photo_seconds


def main() -> None:
    with embedded_site():
        print_figures(measure(COWS, PHOTOS))


def measure(cows: int, photos: int) -> Figures:
    """One day sent; raises where not every cow and photo of it is kept."""
    day = CrushDay(cows, photos, PHOTO_BYTES, AT_ONCE)
    began = time.perf_counter()
    day.send_cows()
    after_cows = time.perf_counter()
    day.send_photos()
    after_photos = time.perf_counter()
    assert day.kept() == (cows, photos), "every cow and photo that was sent is kept"
    plain = day.plain_insert()
    return Figures(
        cows=cows,
        photos=photos,
        kept=cows,
        rows=plain.rows,
        cow_seconds=after_cows - began,
        photo_seconds=after_photos - after_cows,
        plain_seconds=plain.seconds,
    )


def print_figures(f: Figures) -> None:
    print(f"  {f.cows} cows in {f.cow_seconds:.2f} s: {f.cows / f.cow_seconds:.0f} a second")
    kilobytes = PHOTO_BYTES // 1000
    print(
        f"  {f.photos} photos of {kilobytes} kB in {f.photo_seconds:.2f} s: {f.photos / f.photo_seconds:.0f} a second"
    )
    print(f"  together {(f.cows + f.photos) / f.seconds:.0f} a second")
    print(f"  plain bulk insert of the same {f.rows} rows: {f.plain_seconds:.2f} s")
    print(f"  the sending takes {f.seconds / f.plain_seconds:.1f} times as long")


if __name__ == "__main__":
    main()
