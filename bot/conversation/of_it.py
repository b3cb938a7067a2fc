"""A question that says «it» or «them» of cooked meat, by the name of what that is: «can i freeze smoked trout»."""

import re
from typing import Final

from bot.wording.meat_names import PRODUCTS
from core.batch.assess import Assessment
from core.batch.batch import Phase

COOKED: Final = frozenset({Phase.COOKING, Phase.RESTING, Phase.CHILLING, Phase.STORED})
_IT: Final = {
    "en": re.compile(r"\b(?:them|they|em|it|these|this|those|the rest|leftovers?|some)\b(?! (?:is|was) (?:a|the))"),
    "de": re.compile(r"\b(?:es|sie|davon|das|den rest|der rest|die reste)\b"),
}


def named(text: str, a: Assessment | None, language: str) -> str:
    """The question with the product in the place of its first pronoun; "" where there is none, or nothing is cooked."""
    words = _IT.get(language)
    if a is None or words is None or a.batch.phase not in COOKED or a.batch.setup.product not in PRODUCTS:
        return ""
    told, count = words.subn(PRODUCTS[a.batch.setup.product].lower(), text.lower(), count=1)
    return told if count else ""
