"""A month of a thousand invoices through Celery workers on PostgreSQL and Valkey, with one worker and with two."""

from tests.bench.invoicing.bench_issue_kills import on_servers

RUN = 1000


def main() -> None:
    on_servers("tests/services/test_issue_workers.py", TRIMOPS_RUN=RUN)


if __name__ == "__main__":
    main()
