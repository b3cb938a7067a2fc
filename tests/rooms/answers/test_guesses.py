"""When the likeliest of several entries is said as a guess, and when they are only offered."""

import pytest

from core.answers.find import Found


@pytest.mark.parametrize(
    ("ranked", "guess"),
    [
        ((("thaw", 0.32), ("refreeze", 0.31), ("thaw-warm", 0.24)), "thaw"),  # the refusal is far behind
        ((("thaw", 0.32), ("thaw-warm", 0.30), ("refreeze", 0.20)), None),  # a refusal may be meant
        ((("thaw-warm", 0.32), ("thaw", 0.31), ("refreeze", 0.20)), "thaw-warm"),
        ((("thaw", 0.250), ("refreeze", 0.249)), "thaw"),  # alike, and likely enough
        ((("thaw", 0.150), ("refreeze", 0.149)), None),  # alike, and neither is likely
        ((("thaw", 0.150), ("refreeze", 0.130)), "thaw"),
        ((("thaw", 0.110), ("refreeze", 0.050)), None),
    ],
)
def test_the_first_is_guessed(ranked: tuple[tuple[str, float], ...], guess: str | None) -> None:
    """Named as a guess, and never over a refusal that is as likely."""
    assert Found(ranked).guess == guess
