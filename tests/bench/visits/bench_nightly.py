"""The nightly sweep of a thousand businesses through Celery workers on PostgreSQL and Valkey: a hundred and a thousand
with one process, a thousand with two."""

from tests.bench.invoicing.bench_issue_kills import on_servers

BUSINESSES = 1000


def main() -> None:
    on_servers("tests/services/test_nightly_sweep.py", TRIMOPS_BUSINESSES=BUSINESSES)


if __name__ == "__main__":
    main()
