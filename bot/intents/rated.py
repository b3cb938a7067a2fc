"""How it was, as a mark: «8/10», «7 out of 10», «4 stars»; a number of it is no temperature."""

from typing import Final

from core import patterns as re

MARK: Final = re.compile(
    r"(?<![\d.])(?P<mark>10|\d(?:\.5)?) ?(?:/|out of|of) ?(?P<of>10|5)\b(?! ?[cf]\b)"
    r"|(?<![\d.])(?P<stars>[1-5]) stars?\b"
)


def mark(text: str) -> tuple[float, float] | None:
    """The mark that a plain text gives, and of how many it is; None where it gives none."""
    found = MARK.search(text)
    if found is None:
        return None
    given, of = float(found["mark"] or found["stars"]), float(found["of"] or 5)
    return (given, of) if given <= of else None
