"""Every address that the description allows comes through the web server, which bounds the first line of a request."""

import json
import re
from pathlib import Path

from trimops.api.description import DESCRIPTION

SERVER = Path(__file__).resolve().parents[3] / ".make/gunicorn.conf.py"
WHOLE = json.loads(DESCRIPTION.read_text())
# A sign of four bytes, each written as %XX; what a pattern bounds to plain signs is written as it is.
WIDEST = 12
PLAIN = "^[A-Za-z0-9:_-]+$"


def test_no_query_is_longer_than_the_server_reads():
    bound = int(re.search(r"^limit_request_line = (\d+)$", SERVER.read_text(), re.MULTILINE)[1])
    lengths = {
        f"{method} {path}": _longest(path, said.get("parameters", []))
        for path, address in WHOLE["paths"].items()
        for method, said in address.items()
        if isinstance(said, dict)
    }
    assert max(lengths.values()) < bound, max(lengths.items(), key=lambda each: each[1])


def _longest(path: str, parameters: list[dict]) -> int:
    """Of the first line of a request: method, address, query, version."""
    found = [_looked_up(each) for each in parameters]
    of_path = sum(_width(each) for each in found if each["in"] == "path")
    of_query = sum(len(each["name"]) + 2 + _width(each) for each in found if each["in"] == "query")
    return len("OPTIONS  HTTP/1.1\r\n") + len(path) + of_path + of_query


def _width(parameter: dict) -> int:
    said = _looked_up(parameter["schema"])
    if "enum" in said:
        return max(len(str(each)) for each in said["enum"])
    if parameter["name"] == "fields":
        shortest = min(map(len, said["pattern"][2:].partition(")")[0].split("|")))
        return int(said["maxLength"] * (1 + 2 / (shortest + 1)))
    if said.get("pattern") == PLAIN:
        return said["maxLength"]
    return said.get("maxLength", 5) * WIDEST


def _looked_up(said: dict) -> dict:
    while "$ref" in said:
        place = WHOLE
        for step in said["$ref"].removeprefix("#/").split("/"):
            place = place[step]
        said = place
    return said
