"""Sums of 10,000 random invoices against an arithmetic of fractions, and 1,000 e-invoices before the official rules.

What `make test` does with 1,000 and 200, with other examples and in full. Raises where a bar is missed.
"""

import time
from itertools import islice

from invoicing.documents.e_invoice import cii_xml, ubl_xml
from invoicing.documents.e_invoice_refusals import reasons_against
from tests.invoicing.documents.drawn_papers import drawn_papers
from tests.standards.by_fractions import all_agree, all_cancel
from tests.standards.official_rules import broken_rules

SUMS, INVOICES = 10_000, 1_000


def main() -> None:
    began = time.process_time()
    print(f"{all_agree(SUMS, seed=1)} of {SUMS} random invoices agree to the last unit")
    print(f"{all_cancel(SUMS, seed=2)} of {SUMS} cancel with a credit note of everything")
    print(
        f"  {1e6 * (time.process_time() - began) / (2 * SUMS):.0f} us an invoice, both ways and its drawing"
    )
    judge(INVOICES)


def judge(count: int, seed: int = 1946) -> int:
    """How many files were judged; AssertionError names those that broke a rule."""
    sound = (paper for paper in drawn_papers(seed) if not list(reasons_against(paper)))
    papers = list(islice(sound, count))
    began = time.process_time()
    files = {f"cii-{place}": cii_xml(paper) for place, paper in enumerate(papers)}
    files |= {f"ubl-{place}": ubl_xml(paper) for place, paper in enumerate(papers)}
    print(f"{len(files)} e-invoices written, {1e3 * (time.process_time() - began) / len(files):.1f} ms each")
    started = time.perf_counter()
    broken = {name: rules for name, rules in broken_rules(files).items() if rules}
    print(f"{len(broken)} of {len(files)} break an official rule ({time.perf_counter() - started:.0f} s)")
    assert not broken, broken
    return len(files)
