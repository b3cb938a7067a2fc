"""The words for products and cuts, and what they say of a batch.

Products other than pastrami are named here so that they are recognised and answered honestly, planned or not.
"""

import re
from dataclasses import dataclass
from typing import Final

# (words, product or "", cut or ""); the first that matches wins for each of the two
_PRODUCTS: Final = (
    (r"pastrami|pastrmi|pastrama|pastromi", "pastrami"),
    (r"corned[ _]beef|corn beef|salt beef|pökelfleisch", "corned_beef"),
    (r"buckboard", "buckboard_bacon"),
    (r"(?:canadian|back) bacon|kassler", "loin"),
    (r"bacon|pancetta|speck|(?:pork )?belly|bellies|schweinebauch|bauchspeck", "bacon"),
    (r"hams?|gammon|schinken", "ham"),
    (r"(?:pork )?loins?|tenderloin", "loin"),
    (r"turkeys?(?: breasts?| brests?| legs?)?|pute|putenbrust|truthahn", "turkey"),
    (r"chickens?(?: breasts?| thighs?)?|hühnchen|huhn", "chicken"),
    (r"ducks?(?: breasts?)?|ente|entenbrust|goose", "duck"),
    (r"salmon|lachs", "salmon"),
    (r"trouts?|forellen?|mackerel", "trout"),
    (r"jerky|biltong", "jerky"),
    (r"sausages?|salami|kielbasa|wurst", "sausage"),
    (r"(?:beef )?tongue|zunge", "tongue"),
    (r"(?:pork )?(?:butt|shoulder)|pulled pork|schulter", "shoulder"),
    (r"(?:short |spare )?ribs?|rippen", "ribs"),
    (r"(?:bottom |eye of |top )?round|topside|silverside", "round"),
    (r"venison|lamb|bear|boar|goat", "game"),
)  # fmt: skip
_CUTS: Final = (
    (r"brisket[ _]flats?|flat (?:cut )?brisket|flat cut|flats?", "brisket_flat"),
    (r"brisket[ _]points?|point (?:cut|end|brisket)|deckle|points?", "brisket_point"),
    (r"packers?|(?:whole|full|entire) brisket|brisket,? (?:whole|untrimmed)", "packer"),
    (r"briskets?|rinderbrust|brust|brisk[ei]ts?", "brisket"),
)
_PRODUCT_WORDS: Final = tuple((re.compile(rf"\b(?:{words})\b"), name) for words, name in _PRODUCTS)
_CUT_WORDS: Final = tuple((re.compile(rf"\b(?:{words})\b"), name) for words, name in _CUTS)
_DENIED: Final = re.compile(r"\bnot (?:the |a )?(?:flat|point)\b")


@dataclass(frozen=True)
class Meat:
    """What was named: `product` and `cut` are "" where they were not; `cut` is "both" for a flat and a point."""

    product: str = ""
    cut: str = ""

    def __bool__(self) -> bool:
        """True where anything was named."""
        return bool(self.product or self.cut)


def meat(text: str) -> Meat:
    """The product and the cut named in a plain text; «point, not flat» is the point."""
    text = _DENIED.sub(" ", text)
    cuts = [name for words, name in _CUT_WORDS if words.search(text)]
    cut = "both" if {"brisket_flat", "brisket_point"} <= set(cuts) else next(iter(cuts), "")
    product = next((name for words, name in _PRODUCT_WORDS if words.search(text)), "")
    return Meat(product, cut)


def without(text: str) -> str:
    """The text with its words for meat taken out."""
    for words, _ in (*_PRODUCT_WORDS, *_CUT_WORDS):
        text = words.sub(" ", text)
    return text
