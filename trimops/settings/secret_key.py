"""The signing key: from the environment, or made once and kept beside the data."""

import secrets
from pathlib import Path


def read_or_make_secret_key(data_dir: Path, given: str | None) -> str:
    """`given` if set; else the key in `data_dir/secret-key`, made on first use and readable by its owner only."""
    if given:
        return given
    data_dir.mkdir(parents=True, exist_ok=True)
    path = data_dir / "secret-key"
    if not path.exists():
        path.touch(mode=0o600)
        path.write_text(secrets.token_urlsafe(64))
    return path.read_text().strip()
