from dataclasses import replace

from visits.documents.visit_report import visit_report
from visits.documents.visit_report_content import FindingCount
from visits.documents.visit_report_count_words import basis


def test_counts_are_told_out_of_the_cows_seen_out_of_the_herd(make_report):
    assert basis(make_report(30)).startswith(
        "30 cows seen out of a herd of 142; nothing found on 17 of them. These cows were picked"
    )


def test_picked_cows_are_never_passed_off_as_the_herd(make_report):
    assert "do not stand for the herd" in basis(make_report(30))
    assert "do not stand for the herd" not in basis(make_report(142, whole_herd=True))


def test_this_visit_stands_beside_those_compared(make_report, text_of):
    text = text_of(visit_report(make_report(30)))
    assert "last visit, 12 Aug 28 cows" in text
    assert "2 Dec 2025 33 cows" in text
    assert "Sole ulcer 10 in 100 (3 of 30) 14 in 100 (4 of 28) 6 in 100 (2 of 33)" in text
    assert "Sole haemorrhage 10 in 100 (3 of 30) 11 in 100 (3 of 28) not known" in text


def test_the_most_frequent_stands_first(make_report, text_of):
    findings = (FindingCount("Rare", 1), FindingCount("Frequent", 9))
    text = text_of(visit_report(make_report(30, findings=findings, compared=())))
    assert text.index("Frequent") < text.index("Rare")


def test_no_findings_and_no_cows_are_said_in_words(make_report, text_of):
    assert "No lesion was seen." in text_of(visit_report(make_report(2, findings=())))
    assert "No cow was seen at this visit." in text_of(visit_report(make_report(0)))


def test_a_comparison_that_is_not_known_says_so(make_report, text_of):
    findings = (FindingCount("Sole ulcer", 3, (4,)),)
    text = text_of(visit_report(replace(make_report(30), findings=findings)))
    assert "14 in 100 (4 of 28) not known" in text
