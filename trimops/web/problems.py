"""Problem details (RFC 9457; its members from memory): the one shape of all that the JSON side refuses."""

from collections.abc import Mapping, Sequence

from django.http import HttpRequest, JsonResponse

PROBLEM = "application/problem+json"
WHERE_TOLD = "/api/v1/problems/"
"""Lists every code; read by people, so that `type` leads somewhere."""
# What Django answers by itself, without a view of ours.
BARE = {
    400: ("malformed", "This is no request that can be read."),
    403: ("not_allowed", "This is not open to you."),
    404: ("not_found", "Nothing at this address."),
    500: (
        "fault_of_ours",
        "Something broke here; nothing was kept. Try again with the same Idempotency-Key.",
    ),
}


def problem_of(
    status: int, code: str, detail: str, faults: Sequence[Mapping[str, str]] | None = None
) -> dict[str, object]:
    """The body: `type` leads to what the code means, `faults` are {field, reason}."""
    told: dict[str, object] = {
        "type": f"{WHERE_TOLD}#{code}",
        "title": code.replace("_", " "),
        "status": status,
        "code": code,
        "detail": detail,
    }
    return {**told, "faults": list(faults)} if faults else told


def is_for_programs(request: HttpRequest) -> bool:
    return request.path.startswith("/api/v1/")


def bare_problem(status: int) -> JsonResponse:
    code, detail = BARE[status]
    return JsonResponse(problem_of(status, code, detail), status=status, content_type=PROBLEM)
