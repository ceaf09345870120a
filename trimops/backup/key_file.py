"""The words that seal a backup: from a file, or as they were set."""

from pathlib import Path

from trimops.backup.errors import WrongKey


def key_from(file: str | None, setting: str) -> str | None:
    """The text of `file` without the end of its line; without a file the `setting`; None where neither is given."""
    if file is None:
        return setting or None
    try:
        key = Path(file).read_text(encoding="utf-8").strip()
    except (OSError, UnicodeDecodeError) as error:
        raise WrongKey(f"The key file {file} cannot be read: {error}") from error
    if not key:
        raise WrongKey(f"The key file {file} is empty.")
    return key
