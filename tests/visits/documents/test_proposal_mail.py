from datetime import UTC, date, datetime

from visits.documents.proposal_mail import (
    LeftOutVisit,
    Proposal,
    ProposedDay,
    ProposedVisit,
    proposal_subject,
    proposal_text,
)

DAY = ProposedDay(
    date(2026, 12, 1),
    "Van 1",
    [
        ProposedVisit(datetime(2026, 12, 1, 8, 30, tzinfo=UTC), "Low Croft", 12),
        ProposedVisit(datetime(2026, 12, 1, 11, 5, tzinfo=UTC), "High Croft", 1),
    ],
)
LEFT = LeftOutVisit("Far Croft", 20, date(2026, 12, 4), "No van comes home in time.")


def proposal(days=(DAY,), left=(LEFT,)):
    return Proposal(date(2026, 11, 30), days, left, "https://trim.example/week/?week=2026-11-30")


def test_the_subject_counts_what_it_proposes():
    assert proposal_subject(proposal()) == "Proposed plan for the week of Mon 30 Nov: 2 visits, 1 left out"
    assert proposal_subject(proposal(left=())) == "Proposed plan for the week of Mon 30 Nov: 2 visits"


def test_the_text_says_that_nothing_is_decided_and_where_to_decide():
    lines = proposal_text(proposal()).splitlines()
    assert "Nothing is in the diary" in lines[0]
    assert lines[1:] == [
        "https://trim.example/week/?week=2026-11-30",
        "",
        "Tuesday 1 December 2026, Van 1: 2 visits, 13 cows",
        "  08:30 Low Croft, 12 cows",
        "  11:05 High Croft, 1 cow",
        "",
        "Left out:",
        "  Far Croft, 20 cows, due by Fri 4 Dec. No van comes home in time.",
    ]


def test_a_plan_that_leaves_nothing_out_says_nothing_of_it():
    assert "Left out" not in proposal_text(proposal(left=()))
