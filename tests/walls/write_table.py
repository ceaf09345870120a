"""`python -m tests.walls.write_table` writes who may do what into DEVELOPERS.md, from the table that decides it."""

from pathlib import Path

from trimops.accounts.actions import MAY, Action
from trimops.accounts.roles import Role

PAGE = Path(__file__).parents[2] / "DEVELOPERS.md"
BEGIN = "<!-- written by python -m tests.walls.write_table -->\n"
END = "<!-- end of what is written -->\n"
ROLES = (Role.OWNER, Role.TRIMMER, Role.OFFICE, Role.FARM)


def table() -> str:
    """One line an action; a farm client's cell names the right that it takes."""
    head = "| action | owner | trimmer | office | farm client | what |\n|---|---|---|---|---|---|\n"
    return head + "".join(f"| `{action}` | {_cells(action)} | {MAY[action].says} |\n" for action in Action)


def _cells(action: Action) -> str:
    return " | ".join(_cell(action, role) for role in ROLES)


def _cell(action: Action, role: Role) -> str:
    allowed = MAY[action]
    if role not in allowed.roles:
        return ""
    return f"with `{allowed.right}`" if role is Role.FARM and allowed.right else "yes"


def written(page: str) -> str:
    """What stands between the two marks."""
    return page.partition(BEGIN)[2].partition(END)[0]


if __name__ == "__main__":
    before, _, rest = PAGE.read_text().partition(BEGIN)
    PAGE.write_text(before + BEGIN + table() + END + rest.partition(END)[2])
