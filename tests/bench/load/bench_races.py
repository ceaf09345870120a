"""All races (tests/services/races) thirty rounds each instead of six, by two processes with two threads."""

from tests.bench.invoicing.bench_issue_kills import on_servers

ROUNDS = 30


def main() -> None:
    on_servers("tests/services/races", TRIMOPS_ROUNDS=ROUNDS)


if __name__ == "__main__":
    main()
