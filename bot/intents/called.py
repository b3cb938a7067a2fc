"""A batch by the meat that it is of: «the brisket» for the one called «flat», «the pork» for the one called «bacon»."""

from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Final

from bot.intents.meats import CUT_WORDS, PRODUCT_WORDS
from core import patterns as re
from core.meat.cuts import cuts
from core.meat.piece import Species

OfWhat = tuple[str, str, str]  # the name of a batch, its product and its cut, "" where it is not known yet

CATCH_UP: Final = "catch me up"
MOST_PIECES: Final = 12  # of one batch; habit, no source
_ANIMALS: Final = {
    "beef": {Species.BEEF},
    "pork": {Species.PORK},
    "bird": {Species.TURKEY, Species.CHICKEN, Species.DUCK},
    "fish": {Species.FISH},
}
_WORDS: Final = re.compile(
    r"(?P<before>\b\w+ )?\b(?P<called>"
    + "|".join(words.pattern.removeprefix(r"\b").removesuffix(r"\b") for words, _ in (*PRODUCT_WORDS, *CUT_WORDS))
    + r"|"
    + "|".join(_ANIMALS)
    + r"|breast)\b"
)
_OF_ITSELF: Final = re.compile(r"bone|knochen|boil|simmer|poach|\bpot\b|koch|räucher")
_ONE_MORE: Final = re.compile(r"an?|another|new|more|second|some|next|any|start|starting|\d+")
_THE: Final = ("", "the", "my", "our", "and", "then")
_AFTER: Final = re.compile(
    r"^(?:(?:so|and|ok|hi|morning),? )*(?:what about|how about|hows|how is|how are|any news (?:of|on|from)"
    r"|whats (?:up|going on|happening|new) with|where are we with|was is with) (?:(?:the|my|our) )?(?P<who>[\w ]+?)"
    r"(?: (?:doing|going|coming(?: along| on)?|getting on|looking|now|today))*[ ?]*$"
)
_SETS_ABOUT: Final = re.compile(  # the piece that waits, and no new one, which has no «the»
    r"^(?:(?:so|ok|now|and),? )*(?:(?:im |we are |were )?(?:starting|beginning|doing|making)"
    r"|started|(?:lets )?(?:start|begin)) (?:on |with )?(?:the|my|our) (?P<who>[\w ]+?)"
    r"(?: (?:early|already|now|today|tonight))*(?:[,.:;]| and\b) ?(?=[^ ])"
)
_IT_IS: Final = re.compile(  # «pastramis flipped»: said of the one, and no plural
    r"\b(pastrami|bacon|brisket|flat|ham|turkey|chicken|duck|salmon|trout|belly|loin)s (?=(?:flipped|turned|done"
    r"|wrapped"
    r"|rinsed|off|out|leaking|been|still|fine|ok)\b)"
)
_WEIGHED: Final = re.compile(r"\d ?(?:kg|kilos?|lbs?|pounds?)\b")  # a piece that is begun
_AMOUNT: Final = r"[\d.]+ ?(?:kg|kilos?|lbs?|pounds?)\b"
_IT_WEIGHS: Final = re.compile(  # «the duck is 2.1 kg», «ducks 2.1 kg actually»: of the piece that is there
    r"^(?:(?:the|my|our|no|sorry|oops|actually),? )*(?P<who>[a-z]+(?: [a-z]+){0,2}?) (?:(?:is|was|weighs|weighed)"
    rf"(?: (?:actually|really|only|about|just|now))* (?P<told>{_AMOUNT})"
    rf"|(?P<anew>{_AMOUNT})(?=,? (?:actually|really)$|,? (?:actually|really),))"
    r"(?P<more>(?:,? (?:and )?[\d.]+ ?(?:cm|mm|in|inch(?:es)?) thick)?)"
    r"(?:,? (?:actually|really|not [\d.]+|(?:i )?(?:just )?weighed it(?: again)?))*$"
)


def names_meat(text: str) -> bool:
    """Whether a lower-case text has any word for meat, or says whether the bone is in or that it is simmered."""
    return bool(_WORDS.search(text) or _OF_ITSELF.search(text))


def in_hand(name: str, batches: Sequence[OfWhat]) -> OfWhat | None:
    """What the batch of that name is of; None where the line has no word for meat."""
    return next((of for of in batches if of[0] == name.lower()), None)


def by_meat(text: str, batches: Sequence[OfWhat]) -> str:
    """A plain line with each meat by the name of the one batch that is of it; where none or several are, as it is."""
    if _WEIGHED.search(text):
        return _weighed(text, batches)
    text = _IT_IS.sub(r"\1 is ", text)
    if len(batches) == 1:  # «fish is in»: of no other meat there is talk
        return _WORDS.sub(lambda found: _as_meat(found, batches[0]), text)
    return _WORDS.sub(lambda found: _by_name(found, batches), text)


def _weighed(text: str, batches: Sequence[OfWhat]) -> str:
    """«the duck is 2.1 kg» as the weight of the one batch that is of it, and no new piece; other lines as they are."""
    told = _IT_WEIGHS.match(text)
    name = one_called(told["who"], batches) if told else ""
    if told is None or not name:
        return text
    it_is = f"it is {told['told'] or told['anew']}{told['more']}"
    return it_is if len(batches) == 1 else f"{name}: {it_is}"


def one_called(who: str, batches: Sequence[OfWhat]) -> str:
    """The name of the one batch that goes by these words, «belly», «ducks»; "" where none or several do."""
    fits = [one[0] for one in batches if _called_so(who, one) or _called_so(who.removesuffix("s"), one)]
    fits = fits or [name for name, _, _ in batches if who in name.split()]
    return fits[0] if len(fits) == 1 else ""


def set_about(text: str, batches: Sequence[OfWhat]) -> str:
    """«starting the corned beef early, brine is made» as what is told of that batch; other lines as they are."""
    found = None if _WEIGHED.search(text) else _SETS_ABOUT.match(text)
    name = one_called(found["who"], batches) if found else ""
    return f"{name}: {text[found.end() :]}" if found and name else text


def asked_after(text: str, batches: Sequence[OfWhat]) -> str:
    """«what about the bacon», «hows the flat doing» as where that batch stands; other lines as they are."""
    found = _AFTER.match(text)
    name = one_called(found["who"], batches) if found else ""
    return text if not name else CATCH_UP if len(batches) == 1 else f"{name}: {CATCH_UP}"


def _as_meat(found: re.Match[str], batch: OfWhat) -> str:
    before, called = found["before"] or "", found["called"]
    its_own = called in _ANIMALS and _is_of(called, batch[1], batch[2]) and called not in batch[0].split()
    return f"{before}meat" if its_own and before.strip() in _THE else found[0]


def _by_name(found: re.Match[str], batches: Sequence[OfWhat]) -> str:
    before, called = found["before"] or "", found["called"]
    word = before.strip()
    named = any(name in f"{word} {called}" or name.startswith(called) for name, _, _ in batches)
    counted = _ONE_MORE.fullmatch(word) or (called in _ANIMALS and word not in _THE)
    if named or (counted and not _is_read(word, found)):
        return found[0]
    fits = [name for name, product, cut in batches if _is_of(called, product, cut)]
    if called == "breast":  # of the one bird that there is: every whole one has a breast of its own
        birds = [(name, cut) for name, product, cut in batches if _is_of("bird", product, cut)]
        fits = [name for name, cut in birds if len(birds) == 1 and cut.endswith("breast")]
    fits = fits or [name for name, _, _ in batches if called in name.split()]  # «the bacon» of the back bacon
    return f"{before}{fits[0]}" if len(fits) == 1 else found[0]


def _is_read(word: str, found: re.Match[str]) -> bool:
    """«fridge 38 brisket 161»: the number before it was read, and counts no pieces."""
    behind = re.match(r"(?: is| at)? \d", found.string[found.end() :])
    return word.isdigit() and (int(word) > MOST_PIECES or bool(behind))


def _called_so(who: str, batch: OfWhat) -> bool:
    name, product, cut = batch
    return who == name or _is_of(who, product, cut)


def _is_of(called: str, product: str, cut: str) -> bool:
    """Whether a piece may be called so."""
    if called in _ANIMALS:
        return cut in cuts() and cuts()[cut].species in _ANIMALS[called]
    return bool({product, cut, cut.partition("_")[0]} & _meant(called))


@lru_cache(maxsize=64)
def _meant(called: str) -> frozenset[str]:
    """The products and cuts that go by a word."""
    return frozenset(_fitting(called, PRODUCT_WORDS)) | frozenset(_fitting(called, CUT_WORDS))


def _fitting(called: str, those: Iterable[tuple[re.Pattern, str]]) -> list[str]:
    return [name for words, name in those if words.fullmatch(called)]


_OURS: Final = {
    animal: re.compile(
        rf"\b(?:the|my|our) (?:{words})\b|\b(?:{words})\b(?= (?:gonna|going|ready|done|be (?:ready|done)|on time)\b)",
        re.IGNORECASE,
    )
    for animal, words in (
        *((bird, f"{bird}|bird") for bird in ("turkey", "chicken", "duck")),
        *((name, name) for name in ("fish", "pork", "beef")),
    )
}


def as_it(text: str, animal: str) -> str:
    """«the chicken», «is chicken gonna be ready», of who has one under way: asked of it, and not of chicken."""
    return _OURS[animal].sub("it", text) if animal in _OURS else text
