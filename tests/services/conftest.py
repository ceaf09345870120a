"""What tests with a real broker share."""

from collections.abc import Iterator

import pytest
import redis
from django.conf import settings

from trimops.celery import app


@pytest.fixture
def left_at_broker() -> Iterator[redis.Redis]:
    """What is enqueued goes to the real broker, where nobody fetches it unless the test starts a worker."""
    app.conf.task_always_eager = False
    try:
        with redis.Redis.from_url(settings.REDIS_URL) as broker:
            broker.flushdb()
            yield broker
            broker.flushdb()
    finally:
        app.conf.task_always_eager = True
