"""What the wall between businesses says when it stops somebody."""

from trimops.kernel.errors import RuleBroken


class ScopeRequired(RuntimeError):
    """Rows of a business were asked for without saying whose. A fault in our code, never in the user's."""


class MixedBusinesses(RuleBroken):
    """Things of two businesses met in one piece of work."""

    code = "mixed_businesses"
