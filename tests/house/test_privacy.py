"""The page of what is kept: every table is on it, and what is exported and forgotten is what it says."""

import re
from pathlib import Path

from core.store.tables import metadata

PAGE = (Path(__file__).parents[2] / "docs/privacy.md").read_text("utf-8")


def test_every_table_is_on_the_page() -> None:
    """A new table says what it keeps of people and for how long, and is thought of in export and forgetting."""
    assert set(re.findall(r"^\| `(\w+)` \|", PAGE, re.MULTILINE)) == set(metadata.tables)


def test_the_page_names_the_words_to_say() -> None:
    """Both rights are had by a line of talk."""
    assert {"`export my data`", "`forget me`"} <= set(re.findall(r"`[^`\n]+`", PAGE))
