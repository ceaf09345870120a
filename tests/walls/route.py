"""What is known of one address."""

from dataclasses import dataclass, field

from trimops.accounts.roles import Role


@dataclass(frozen=True)
class Route:
    """Who may open it; the row that each part of the address names; fixed parts; what the owner of the rows gets."""

    roles: frozenset[Role]
    rows: dict[str, str] = field(default_factory=dict)
    fixed: dict[str, str] = field(default_factory=dict)
    answer: int = 200

    def parts(self, *keyrings: dict[str, object]) -> dict[str, object]:
        """The parts of the address, one keyring for each named row (the last for all that follow)."""
        rings = [*keyrings, *[keyrings[-1]] * len(self.rows)]
        named = {part: ring[row] for (part, row), ring in zip(self.rows.items(), rings, strict=False)}
        return {**self.fixed, **named}
