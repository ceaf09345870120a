"""Published check data, each file with its source inside.

RFC 5545's recurrence examples are not among them: our calendar feed writes each visit out and uses no recurrence.
"""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "standards"


@pytest.fixture(scope="session")
def published() -> Callable[[str], Any]:
    def read(name: str) -> Any:
        return json.loads((FOLDER / name).read_text())

    return read
