"""The one error a malformed week problem raises."""


class ProblemFaults(Exception):
    """A problem document that cannot be planned; `faults` holds one line per fault: `path: what to mend`."""

    def __init__(self, faults: list[str]) -> None:
        super().__init__("\n".join(faults))
        self.faults = faults
