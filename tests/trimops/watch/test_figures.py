"""Several processes that share a folder count together; each is seen in the text that monitoring reads."""

import os
import subprocess
import sys

from prometheus_client.parser import text_string_to_metric_families

from tests.architecture.source_tree import ROOT
from trimops.watch.figures import Gauge, figures_now, note_job, note_request

# A process of its own, since the library chooses its way to count when it is loaded.
COUNTS = """
import django
django.setup()
from trimops.watch.figures import figures_now, note_job, note_request
note_request("GET", "farm_list", 200, 0.2)
note_job("visits.plan_week", "done", 7.0)
print(figures_now(list).decode())
"""


def read(text):
    samples = [sample for family in text_string_to_metric_families(text) for sample in family.samples]
    return {(each.name, *sorted(each.labels.items())): each.value for each in samples}


def test_processes_that_share_a_folder_count_together(tmp_path):
    processes = 2
    env = {
        **os.environ,
        "PROMETHEUS_MULTIPROC_DIR": str(tmp_path),
        "DJANGO_SETTINGS_MODULE": "trimops.settings.test",
    }
    for _ in range(processes):
        done = subprocess.run(
            [sys.executable, "-c", COUNTS], cwd=ROOT, env=env, capture_output=True, text=True
        )
        assert done.returncode == 0, done.stderr
    found = read(done.stdout)
    request = (("method", "GET"), ("route", "farm_list"), ("status", "200"))
    assert found["trimops_requests_total", *request] == processes
    assert found["trimops_jobs_total", ("job", "visits.plan_week"), ("outcome", "done")] == processes
    assert found["trimops_job_seconds_sum", ("job", "visits.plan_week")] == 7.0 * processes
    assert found["trimops_job_seconds_bucket", ("job", "visits.plan_week"), ("le", "15.0")] == processes
    assert found["trimops_job_seconds_bucket", ("job", "visits.plan_week"), ("le", "5.0")] == 0


def test_a_gauge_is_read_once_and_at_the_moment_it_is_asked_for():
    asked = []

    def gauges():
        asked.append(1)
        return [Gauge("trimops_test_waiting", "Waiting", len(asked) * 10)]

    assert read(figures_now(gauges).decode())["trimops_test_waiting",] == 10
    assert read(figures_now(gauges).decode())["trimops_test_waiting",] == 20


def test_what_is_counted_here_stands_beside_the_gauges():
    note_request("GET", "test_route", 503, 0.02)
    note_job("tests.figures", "given_up", 0.1)
    found = read(figures_now(list).decode())
    assert found["trimops_requests_total", ("method", "GET"), ("route", "test_route"), ("status", "503")] == 1
    assert found["trimops_jobs_total", ("job", "tests.figures"), ("outcome", "given_up")] == 1
