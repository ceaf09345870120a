"""What was done to a foot, as treatment events. No medicine is ever in them: a trimmer gives none.

`commonProcedure` was in an open proposal when the standard was read; a receiver that goes by 1.5.1 does not know it.
It is written only when it is asked for.
"""

from collections.abc import Iterator

from visits.domain.actions import ActionKind, trim_kind_of
from visits.domain.ade.envelope import animal_event
from visits.domain.ade.herd_out import CowOut, FarmOut, TrimOut
from visits.domain.ade.lists import JsonObject
from visits.domain.ade.positions import position_of, positions
from visits.domain.crush_entry import ActionEntry, FootEntry

FOOT_TRIMMING = "FootTrimming"


def work_done(
    farm: FarmOut, cow: CowOut, trim: TrimOut, *, common_procedure: bool = False
) -> Iterator[JsonObject]:
    """An event for each foot on which something was done; a foot that needed no cut was only looked at."""
    for foot in trim.entry.feet:
        done = [action for action in foot.actions if action.kind is not ActionKind.NO_CUT]
        if not done:
            continue
        head = animal_event(
            "TreatmentEvent", f"trim-{trim.key}-{foot.foot.value}", farm, cow, trim.at, trim.uid
        )
        extra: JsonObject = {"commonProcedure": FOOT_TRIMMING} if common_procedure else {}
        yield {
            **head,
            "procedure": _procedure(done),
            **extra,
            "positions": positions(position_of(foot.foot, action.claw) for action in done),
            **_comment(foot),
        }


def _procedure(done: list[ActionEntry]) -> str:
    words = "; ".join(_words(action) for action in done)
    return f"{trim_kind_of(action.kind for action in done).label.capitalize()}: {words}"


def _words(action: ActionEntry) -> str:
    what = f"{action.block_kind.label} on" if action.block_kind else action.kind.label
    return f"{what} ({action.claw.label if action.claw else 'foot'})"


def _comment(foot: FootEntry) -> JsonObject:
    days = foot.look_again_days
    return {"comment": f"look again after {days} days"} if days else {}
