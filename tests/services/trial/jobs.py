"""The jobs that are only a trial's in its workers, and the table in which they leave their trace."""

from trimops.jobs import Job

PLAIN, SHORT, ALONE = Job.BOOK_RECHECKS, Job.ISSUE_REPORT, Job.LEARN_ROADS
"""As long as it takes; stopped after a second, by force after two; one at a time in a business."""
TABLE = "CREATE TABLE IF NOT EXISTS trial_done (number integer PRIMARY KEY)"
