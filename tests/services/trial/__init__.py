"""A Django app for trials of workers: a job's work is to wait and to leave a trace, as often as it is begun."""
