from django.template.loader import render_to_string

WAITING = {"heading": "Planning", "state_url": "/plans/7/state/", "percent": 42, "text": "42 of 100"}


def test_the_waiting_page_asks_again_by_itself_without_javascript():
    page = render_to_string("web/progress.html", WAITING)
    assert '<noscript><meta http-equiv="refresh"' in page
    assert '<progress max="100" value="42"' in page
    assert 'data-url="/plans/7/state/"' in page
    assert "progress.js" in page


def test_once_it_failed_the_page_stops_asking_and_says_why():
    page = render_to_string("web/progress.html", {**WAITING, "failed": True, "text": "No van is free."})
    assert "http-equiv" not in page
    assert "<p data-why>No van is free.</p>" in page
    assert 'role="alert" data-failed>' in page


def test_a_live_region_is_there_before_there_is_anything_to_say():
    assert 'role="status" data-aloud></p>' in render_to_string("web/progress.html", WAITING)


def test_asking_twice_names_what_happens_and_offers_to_leave_it():
    page = render_to_string(
        "web/confirm.html",
        {
            "question": "Call it off?",
            "consequences": ["The farm is told."],
            "do_label": "Call off",
            "keep_url": "/k",
        },
    )
    assert "<li>The farm is told.</li>" in page
    assert '<button class="act-stop" type="submit">Call off</button>' in page
    assert '<a class="act" href="/k">Keep it as it is</a>' in page


def test_the_answer_is_both_the_heading_and_the_title():
    page = render_to_string("web/progress.html", {**WAITING, "heading": "Fold & Bank"})
    assert "<h1>Fold &amp; Bank</h1>" in page
    assert "<title>Fold &amp; Bank – trimops</title>" in page
