"""domain, documents, roads, paper and kernel load no framework: seen from a new process, not from their text."""

import json
import subprocess
import sys

from tests.architecture.source_tree import ROOT, layers_of, product_files

FRAMEWORKS = ("django", "rest_framework", "celery", "allauth")
REPORT = """
import importlib, json, sys
for name in json.loads(sys.stdin.read()):
    importlib.import_module(name)
print(json.dumps(sorted({name.split(".")[0] for name in sys.modules})))
"""


def pure_modules() -> list[str]:
    pure = []
    for path in product_files():
        layers = layers_of(path)
        package = path.relative_to(ROOT).parts[0]
        on_ground = package == "trimops" and layers[0] in ("kernel", "paper")
        if on_ground or (package != "trimops" and layers[0] in ("domain", "documents", "roads")):
            pure.append(".".join([package, *layers]).removesuffix(".__init__"))
    return pure


def test_pure_packages_load_no_framework_at_run_time():
    names = json.dumps(pure_modules())
    process = subprocess.run(
        [sys.executable, "-c", REPORT], input=names, capture_output=True, text=True, cwd=ROOT, check=False
    )
    assert process.returncode == 0, process.stderr
    loaded = set(json.loads(process.stdout))
    assert "trimops" in loaded
    assert not loaded & set(FRAMEWORKS)


def test_the_report_would_see_a_framework():
    process = subprocess.run(
        [sys.executable, "-c", REPORT], input='["django"]', capture_output=True, text=True, check=True
    )
    assert "django" in json.loads(process.stdout)
