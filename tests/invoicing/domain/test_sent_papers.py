from invoicing.domain.sent_papers import SentPaper


def test_each_has_words_of_its_own_and_a_topic_of_the_money():
    assert len({paper.label for paper in SentPaper}) == len(SentPaper)
    assert {paper.topic.value for paper in SentPaper} == {"invoice", "reminder", "statement"}
    assert all(paper.topic.is_money for paper in SentPaper)
