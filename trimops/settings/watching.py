"""How the log is written."""

from trimops.settings.hide_secrets import HideSecrets

JSON = "json"


def logging_from(form: str, level: str) -> dict[str, object]:
    """Django's LOGGING: all to standard error, as lines of `form` ("json", else plain) from `level` up.

    As JSON the one line of each request and each job is always written: whoever reads by machine counts them.
    """
    told = "INFO" if form == JSON else level
    return {
        "version": 1,
        "disable_existing_loggers": False,
        "formatters": {
            "plain": {
                "()": "trimops.watch.log_lines.PlainLines",
                "format": "%(asctime)s %(levelname)s %(name)s %(message)s",
            },
            JSON: {"()": "trimops.watch.log_lines.JsonLines"},
        },
        # The formatters hide secrets in every line; here for whoever else listens to what Django says of addresses.
        "filters": {"hide_secrets": {"()": HideSecrets}},
        "handlers": {
            "console": {"class": "logging.StreamHandler", "formatter": JSON if form == JSON else "plain"}
        },
        "loggers": {
            "django.request": {"filters": ["hide_secrets"]},
            "trimops.access": {"level": told},
            "trimops.watch.job_lines": {"level": told},
            # because: who came in and who was refused is asked for afterwards, whatever else was wanted
            "trimops.security": {"level": "INFO"},
        },
        "root": {"handlers": ["console"], "level": level},
    }
