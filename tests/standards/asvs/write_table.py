"""`python -m tests.standards.asvs.write_table` writes our answers to ASVS into DEVELOPERS.md."""

from collections import Counter

from tests.standards.asvs.answers import PAGE, STATES, Answer, answers

BEGIN = "<!-- written by python -m tests.standards.asvs.write_table -->\n"
END = "<!-- end of the answers -->\n"
HEAD = "| id | | about | evidence | what is missing, or why not |\n|---|---|---|---|---|\n"


def table() -> str:
    """The sums, and a line for each requirement."""
    rows = answers()
    counts = Counter(row.state for row in rows)
    sums = ", ".join(f"{counts[state]} {words}" for state, words in STATES.items())
    return f"{len(rows)} requirements: {sums}.\n\n{HEAD}" + "".join(map(_line, rows))


def _line(row: Answer) -> str:
    evidence = " ".join(f"`{each}`" for each in row.evidence)
    return f"| {row.number} | {STATES[row.state]} | {row.about} | {evidence} | {row.gap} |\n"


def written(page: str) -> str:
    """What stands between the two marks."""
    return page.partition(BEGIN)[2].partition(END)[0]


if __name__ == "__main__":
    before, _, rest = PAGE.read_text().partition(BEGIN)
    PAGE.write_text(before + BEGIN + table() + END + rest.partition(END)[2])
