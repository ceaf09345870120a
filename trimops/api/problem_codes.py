"""Every code that a refusal may carry: the rules of the work, and what the API says by itself."""

from collections.abc import Iterator
from dataclasses import dataclass
from inspect import getdoc

from trimops.kernel.errors import RuleBroken

OURS = ("trimops.", "farms.", "visits.", "invoicing.")
# What runs in the terminal or at night: no address meets its refusals.
NO_ADDRESS = ("trimops.backup.", "trimops.portal.demo.", "trimops.audit.services.cut_audit")
CORE: tuple[tuple[str, int, str], ...] = (
    ("malformed", 400, "What was sent does not have the described shape; faults name each place."),
    ("not_signed_in", 401, "No token or session, or one that is not good any more."),
    ("not_allowed", 403, "Not open to your part in the business, or to this token."),
    ("https_only", 403, "Asked without https. What was sent could be read on its way: change its secrets."),
    ("not_found", 404, "Nothing at this address, or another business's."),
    ("method_not_allowed", 405, "The address is there, and this is not done to it; Allow names what is."),
    ("not_acceptable", 406, "Not there in the form that Accept asks for."),
    ("stale", 412, "It was changed since you read it: read it again and send the new ETag."),
    ("too_large", 413, "More at once than is taken: send it in parts."),
    ("wrong_kind_of_content", 415, "Another Content-Type is wanted."),
    ("cannot_be_meant", 422, "It has the described shape, but cannot be so; faults name each place."),
    ("needs_if_match", 428, "A change says which version it changes: send its ETag as If-Match."),
    ("too_often", 429, "Too many calls; Retry-After says in how many seconds again."),
    (
        "fault_of_ours",
        500,
        "Something broke here; nothing was kept. Try again under the same Idempotency-Key.",
    ),
)


@dataclass(frozen=True)
class Code:
    code: str
    status: int
    says: str


def problem_codes() -> list[Code]:
    """By code; a rule of the work (409) says what its class says of itself."""
    core = [Code(*each) for each in CORE]
    rules = {kind.code: _first_line(kind) for kind in _below(RuleBroken) if _is_met(kind)}
    named = {each.code for each in core}
    told = [Code(code, 409, says) for code, says in rules.items() if code not in named]
    return sorted([*core, *told], key=lambda each: (each.status != 409, each.status, each.code))


def _is_met(kind: type[RuleBroken]) -> bool:
    """A refusal of ours that an address can meet, whether or not its module was loaded for something else."""
    return kind.__module__.startswith(OURS) and not kind.__module__.startswith(NO_ADDRESS)


def _first_line(kind: type[RuleBroken]) -> str:
    return (getdoc(kind) or "").split("\n\n")[0].replace("\n", " ").replace("`", "")


def _below(kind: type[RuleBroken]) -> Iterator[type[RuleBroken]]:
    yield kind
    for one in kind.__subclasses__():
        yield from _below(one)
