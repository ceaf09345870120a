"""`python manage.py solve_week PROBLEM.json`: plan a week problem from a file."""

import json
from argparse import ArgumentParser
from pathlib import Path

from django.core.management.base import BaseCommand, CommandError

from visits.domain.planning.exact.prove_plan import bound_of_plan
from visits.domain.planning.plan_week_problem import plan_week_problem
from visits.domain.planning.problem_faults import ProblemFaults
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.planning.stored_week import PlanBreaksRules
from visits.management.one_line import one_line

MALFORMED = 2


class Command(BaseCommand):
    """Prints the plan, or writes it with `--out`; exits 2 with one line per fault for a malformed problem."""

    help = "Plan the week described in a week problem file."
    requires_system_checks: list[str] = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        """The options of the week problem contract."""
        parser.add_argument("problem", type=Path, metavar="PROBLEM.json")
        parser.add_argument("--seconds", type=float, default=10.0, help="how long to search (10)")
        parser.add_argument("--seed", type=int, default=1, help="start of the search's dice (1)")
        parser.add_argument("--iterations", type=int, help="steps instead of seconds: same seed, same plan")
        parser.add_argument("--prove", type=float, help="then prove a bound for so many seconds")
        parser.add_argument("--out", type=Path, metavar="PLAN.json", help="write the plan here")

    def handle(self, *args: object, **options: object) -> None:
        """Read, plan, print or write."""
        try:
            problem, proof = _text(options["problem"]), _proof_seconds(options)
            document, notes = plan_week_problem(problem, limits=_limits(options))
            if proof is not None:
                document["bound"] = _better(document["bound"], bound_of_plan(problem, document, proof))
        except ProblemFaults as malformed:
            for fault in malformed.faults:
                self.stderr.write(one_line(fault))
            raise SystemExit(MALFORMED) from None
        except PlanBreaksRules as breaches:
            raise CommandError(
                f"The plan made does not pass the audit and is not shown.\n{breaches}"
            ) from None
        for note in notes:
            self.stderr.write(note)
        text = json.dumps(document, indent=1, ensure_ascii=False)
        out = options["out"]
        if not isinstance(out, Path):
            self.stdout.write(text)
            return
        try:
            out.write_text(text + "\n", encoding="utf-8")
        except OSError as error:
            raise CommandError(f"{out}: cannot be written ({error.strerror})") from None


def _text(path: object) -> str:
    try:
        return Path(str(path)).read_text(encoding="utf-8-sig")
    except OSError as error:
        raise ProblemFaults([f"{path}: cannot be read ({error.strerror})"]) from None
    except UnicodeDecodeError:
        raise ProblemFaults([f"{path}: is not UTF-8 text"]) from None


def _proof_seconds(options: dict[str, object]) -> float | None:
    seconds = options["prove"]
    if seconds is not None and (not isinstance(seconds, float) or not 0 < seconds <= 86_400):
        raise ProblemFaults(["--prove: must be more than 0 and at most a day"])
    return seconds


def _better(known: object, found: float | None) -> object:
    """The higher of two proven bounds."""
    if found is None or (isinstance(known, int | float) and known >= found):
        return known
    return found


def _limits(options: dict[str, object]) -> SolveLimits:
    seconds, seed, steps = options["seconds"], options["seed"], options["iterations"]
    if not isinstance(seconds, float) or not 0 < seconds <= 86_400:
        raise ProblemFaults(["--seconds: must be more than 0 and at most a day"])
    if not isinstance(seed, int) or seed < 0:
        raise ProblemFaults(["--seed: must not be negative"])
    if steps is not None and (not isinstance(steps, int) or steps < 1):
        raise ProblemFaults(["--iterations: must be 1 or more"])
    return SolveLimits(seconds=seconds, seed=seed, iterations=steps)
