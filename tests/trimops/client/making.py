"""Makes the generated part of trimops/client of trimops/api/openapi.json: `python -m tests.trimops.client.making`."""

import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[3]
FOLDER = ROOT / "trimops/client"
DESCRIPTION = ROOT / "trimops/api/openapi.json"
MADE = "# Made of trimops/api/openapi.json by tests/trimops/client/making.py (`make client`); change that, not this.\n"
# What a checker on the wire reads and a type does not say, or says of something that JSON is not.
LEFT_OUT = ("additionalProperties", "format", "pattern", "description", "x-spec-enum-id", "readOnly")
TYPES = {"integer": "int", "string": "str", "boolean": "bool", "number": "float"}
HEAD = '''"""Each operation of the API, by its id."""

from collections.abc import Iterator
from typing import Any, Literal

from trimops.client import bodies
from trimops.client.calls import Calls


class Operations(Calls):
    """One method an operation. A body is as bodies.py says; `key` an Idempotency-Key, `match` an ETag, of your own."""
'''


def made_bodies(told: dict[str, Any]) -> str:
    """bodies.py, by datamodel-code-generator."""
    schemas = {
        name: each for name, each in told["components"]["schemas"].items() if not name.endswith("Part")
    }
    plain = {**told, "paths": {}, "components": {"schemas": _plain(schemas)}}
    with tempfile.TemporaryDirectory() as folder:
        source, out = Path(folder, "openapi.json"), Path(folder, "bodies.py")
        source.write_text(json.dumps(plain))
        asked = ["--input", source, "--output", out, "--input-file-type", "openapi"]
        kinds = [
            "--output-model-type",
            "typing.TypedDict",
            "--enum-field-as-literal",
            "all",
            "--formatters",
            "builtin",
        ]
        also = ["--target-python-version", "3.11", "--disable-timestamp", "--strict-nullable"]
        union = ["--use-standard-collections", "--use-union-operator"]
        run = [sys.executable, "-m", "datamodel_code_generator", *map(str, asked), *kinds, *also, *union]
        subprocess.run(run, check=True, capture_output=True)
        return MADE + re.sub(r"\A(#[^\n]*\n)+", "", out.read_text())


def made_operations(told: dict[str, Any]) -> str:
    """operations.py."""
    found = [
        (path.removeprefix("/api/v1"), method, op, told["components"])
        for path, each in told["paths"].items()
        for method, op in each.items()
    ]
    text = "".join(map(_method, sorted(found, key=lambda each: each[2]["operationId"])))
    head = HEAD if re.search(r"\bAny\b", text) else HEAD.replace("import Any, Literal", "import Literal")
    return MADE + head + text


def _method(told: tuple[str, str, dict[str, Any], dict[str, Any]]) -> str:
    path, method, op, parts = told
    asked = [_followed(each, parts) for each in op.get("parameters", [])]
    ways = [f"{each['name']}: {_type(each['schema'])}" for each in asked if each["in"] == "path"]
    query = [each for each in asked if each["in"] == "query" and each["name"] not in ("cursor", "fields")]
    words = [_word(each) for each in sorted(query, key=lambda each: not each.get("required"))]
    shown, call = _shown(op, method, path, {each["name"] for each in asked}, _body(op))
    taken = ["self", *ways, *([f"body: {_body(op)}"] if _body(op) else [])]
    extra = (
        words + ['key: str = ""'] * ("self.done(" in call) + ['match: str = ""'] * ("self.changed(" in call)
    )
    given = ", ".join([*taken, *(["*", *extra] if extra else [])])
    asks = ", ".join(f'"{each["name"]}": {_safe(each["name"])}' for each in query)
    text = call.replace("QUERY", "{" + asks + "}")
    says = op["summary"].rstrip(".")
    return f'\n    def {op["operationId"]}({given}) -> {shown}:\n        """{says}."""\n        {text}\n'


def _shown(op: dict[str, Any], method: str, path: str, asked: set[str], body: str) -> tuple[str, str]:
    """What it gives, and the line that does it."""
    where, said = f'f"{path}"' if "{" in path else f'"{path}"', "body" if body else "None"
    kind, schema = next(
        iter(next(each for code, each in op["responses"].items() if code < "3").get("content", {}).items()),
        ("", {}),
    )
    if method == "get" and kind != "application/json":
        return "bytes", f"return self.file({where}, QUERY)"
    gives = _type(schema.get("schema", {})) if kind else "None"
    if "cursor" in asked:
        item = _type(schema["schema"]["properties"]["items"]["items"])
        return f"Iterator[{item}]", f"return self.pages({where}, QUERY)"
    file = f', kind="{_kind(op)}"' if body == "bytes" else ""
    calls = (
        f"self.asked({where}, QUERY)"
        if method == "get"
        else f'self.sent("{method.upper()}", {where}, QUERY, {said}{file})'
    )
    if "Idempotency-Key" in asked:
        more = f", query=QUERY{file}" if file else ""
        calls = f"self.done({where}, {said}, key{more})"
    if "If-Match" in asked:
        calls = f'self.changed("{method.upper()}", {where}, {said}, match)'
    if gives == "None":
        return gives, calls
    return gives, f"shown: {gives} = {calls}\n        return shown"


def _body(op: dict[str, Any]) -> str:
    content = op.get("requestBody", {}).get("content", {})
    if not content:
        return ""
    kind = _kind(op)
    return _type(content[kind]["schema"]) if kind == "application/json" else "bytes"


def _kind(op: dict[str, Any]) -> str:
    """The media type of its body."""
    return str(next(iter(op["requestBody"]["content"])))


def _word(each: dict[str, Any]) -> str:
    kind = _type(each["schema"])
    return f"{_safe(each['name'])}: {kind}" + ("" if each.get("required") else " | None = None")


def _type(schema: dict[str, Any]) -> str:
    if "anyOf" in schema:
        kinds = [each for each in schema["anyOf"] if not each.get("$ref", "").endswith("Part")]
        return " | ".join(dict.fromkeys(_type(each) for each in kinds))
    if "$ref" in schema:
        return f"bodies.{schema['$ref'].rpartition('/')[2]}"
    if "enum" in schema:
        return f"Literal[{', '.join(repr(each) for each in schema['enum'])}]"
    if schema.get("type") == "array":
        return f"list[{_type(schema['items'])}]"
    kinds = schema.get("type", "")
    told = [kinds] if isinstance(kinds, str) else kinds
    return " | ".join("None" if each == "null" else TYPES.get(each, "Any") for each in told)


def _followed(told: dict[str, Any], parts: dict[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = parts["parameters"][told["$ref"].rpartition("/")[2]] if "$ref" in told else told
    return found


def _safe(name: str) -> str:
    return f"{name}_" if name in ("from", "in", "class", "key", "match", "body") else name


def _plain(node: Any) -> Any:
    if isinstance(node, list):
        return [_plain(each) for each in node]
    if not isinstance(node, dict):
        return node
    # because: a field may be called as one of these words; what is left out is never an object with properties
    return {
        name: _plain(each)
        for name, each in node.items()
        if name not in LEFT_OUT or (isinstance(each, dict) and name != "additionalProperties")
    }


def made() -> dict[str, str]:
    """Each generated file by its name."""
    told = json.loads(DESCRIPTION.read_text())
    found = {"bodies.py": made_bodies(told), "operations.py": made_operations(told)}
    return {name: _formatted(text) for name, text in found.items()}


def _formatted(text: str) -> str:
    run = [sys.executable, "-m", "ruff", "format", "--stdin-filename", "x.py", "-"]
    return subprocess.run(run, input=text, capture_output=True, text=True, check=True).stdout


if __name__ == "__main__":
    for name, text in made().items():
        (FOLDER / name).write_text(text)
