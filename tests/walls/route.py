"""What is known of one address."""

from dataclasses import dataclass, field

from trimops.accounts.actions import Action
from trimops.accounts.roles import FarmRight, Role


@dataclass(frozen=True)
class Route:
    """Who may open it; the row that each part of the address names; fixed parts; what the owner of the rows gets.

    `right` is what a farm client needs besides. `only` is the one method that it answers, where it is one; an `answer`
    of 405 says that it is pressed and never looked at. `to_post` and `right_to_post` say who may press, where that is
    not whoever may look. An address of the API says in `does` what each of its methods does.
    """

    roles: frozenset[Role]
    rows: dict[str, str] = field(default_factory=dict)
    fixed: dict[str, str] = field(default_factory=dict)
    answer: int = 200
    right: FarmRight | None = None
    only: str = ""
    to_post: frozenset[Role] | None = None
    right_to_post: FarmRight | None = None
    does: dict[str, Action] = field(default_factory=dict)

    def parts(self, *keyrings: dict[str, object]) -> dict[str, object]:
        """The parts of the address, one keyring for each named row (the last for all that follow)."""
        rings = [*keyrings, *[keyrings[-1]] * len(self.rows)]
        named = {part: ring[row] for (part, row), ring in zip(self.rows.items(), rings, strict=False)}
        return {**self.fixed, **named}

    @property
    def methods(self) -> set[str]:
        """The methods that it answers at all; HEAD is GET without what is shown."""
        if self.does:
            found = {method.upper() for method in self.does}
        else:
            found = {"POST"} if self.answer == 405 else {self.only.upper()} if self.only else {"GET", "POST"}
        return found | ({"HEAD"} if "GET" in found else set())

    def may(self, role: Role, rights: frozenset[FarmRight], method: str) -> bool:
        """By this row: whether that part may ask by that method, with these rights at its farm."""
        roles, right = self.roles, self.right
        if method == "POST":
            roles, right = self.to_post or roles, self.right_to_post or right
        return role in roles and (role is not Role.FARM or right is None or right in rights)
