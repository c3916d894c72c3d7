"""What the tests of the commands share."""

import signal

import pytest


@pytest.fixture
def listening():
    """Hear Ctrl-C, which a shell makes its background jobs ignore; processes started inherit it."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)
