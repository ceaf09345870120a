import pytest
from django.contrib.auth.models import AnonymousUser
from django.template.loader import render_to_string
from django.test import RequestFactory
from django.views import defaults

from trimops.kernel.errors import RuleBroken
from trimops.web import problem_pages


@pytest.fixture
def request_from():
    def make(before=""):
        request = RequestFactory().post("/visits/3/confirm/", headers={"referer": before} if before else {})
        request.user = AnonymousUser()
        return request

    return make


@pytest.mark.parametrize("name", ["400", "403", "403_csrf", "404", "409", "429", "500", "web/no_seat"])
def test_every_problem_page_says_what_happened_what_was_kept_and_what_to_do(name):
    page = render_to_string(f"{name}.html", {"message": "Move the visit."})
    assert "<h1></h1>" not in page
    assert any(words in page for words in ("Nothing was changed", "is safe", "Nothing is lost"))
    assert 'class="act act-main"' in page


def test_a_form_that_came_too_late_is_refused_in_our_words(request_from):
    page = problem_pages.csrf_failure(request_from("http://testserver/farms/"), "Referer checking failed")
    assert page.status_code == 403
    assert "the page was open too long" in page.content.decode()
    assert "Referer" not in page.content.decode()


def test_a_broken_rule_shows_its_message_and_leads_back(request_from):
    broken = RuleBroken("Move the visit to <Tuesday>.")
    page = problem_pages.rule_broken_page(request_from("http://testserver/visits/3/"), broken)
    assert page.status_code == 409
    assert "Move the visit to &lt;Tuesday&gt;." in page.content.decode()
    assert 'href="http://testserver/visits/3/"' in page.content.decode()


@pytest.mark.parametrize("before", ["http://elsewhere.example/x", "javascript:alert(1)", ""])
def test_the_way_back_never_leads_to_another_site(before, request_from):
    page = problem_pages.rule_broken_page(request_from(before), RuleBroken("No."))
    assert "elsewhere" not in page.content.decode()
    assert "javascript:" not in page.content.decode()


def test_the_page_of_our_own_fault_is_drawn_with_nothing_at_hand(request_from):
    page = defaults.server_error(request_from())
    assert page.status_code == 500
    assert "Something broke on our side" in page.content.decode()
