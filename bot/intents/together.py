"""Several batches named in one breath: «ham and bacon flipped», «bacon flipped, ham too» is said of each of them."""

from collections.abc import Sequence
from typing import Final

from core import patterns as re

_WEIGHED: Final = re.compile(r"\d ?(?:kg|g|kilos?|lbs?|pounds?|oz)\b")  # pieces that are begun, and no batch in hand

_TELLS: Final = re.compile(
    r" (?:(?:is |at |pit |fridge |core )*\d|(?:is |was )*(?:flipped|turned|wrapped|rinsed|off|on|in|out|leak))"
)
_JOINED: Final = re.compile(r"[,;?]|\b(?:and|not|or|like|with|for|from|as|than|instead|before|after|then|to)\b")

_ASKED: Final = re.compile(
    r"\?|^(?:can|could|should|shall|may|do|does|did|is|are|what|when|how|why|where|which|if|will)\b"
)
_DEED_TOLD: Final = re.compile(
    r"\b(?:flipped|turned|missed|leak\w*|wrapped|rinsed|went|done|off|out|in|on|sliced|soaking|drying|resting|frozen)\b"
    r"|\b(?:fridge|brine|pit|core|at|is|s) \d|\b\d{2,3}$"
)
_NOT_YET: Final = re.compile(r" (?:isnt|hasnt|wasnt|didnt|not|still isnt)(?: yet| done| flipped| turned| been)*")
_HANGS: Final = re.compile(
    r"\b(?:and|not|or|like|with|for|from|as|than|instead|before|after|then|to|of|the|my|in|on|both)$"
)
_OWN_DEED: Final = re.compile(
    r"(?:\band|,) (?:flipped|turned|wrapped|rinsed|pulled|took|put|moved|checked|soaked|rubbed)(?: the)?$"
)


def each(text: str, names: Sequence[str]) -> tuple[str, ...]:
    """A plain line once for each batch that it names together, with that name alone; else the line as it is."""
    if len(names) < 2 or _WEIGHED.search(text):
        return _weights(text, names)
    if plural := next((base for base in _told_apart(names) if re.search(rf"\b{re.escape(base)}s\b", text)), ""):
        those = [one.lower() for one in names if one.lower() == plural or one.lower().startswith(f"{plural} ")]
        return tuple(re.sub(rf"\b(?:both |all )?(?:of )?(?:the )?{re.escape(plural)}s\b", one, text) for one in those)
    name = "(?:the )?(?:" + "|".join(re.escape(n.lower()) for n in sorted(names, key=len, reverse=True)) + r")\b"
    if found := re.search(rf"\b{name}(?:, {name})*(?:,? and | plus ){name}", text):
        before, after = text[: found.start()], text[found.end() :]
        if (before + after).strip(" :,.!?"):
            return tuple(f"{before}{one}{after}" for one in re.findall(name, found[0]))
    if found := re.match(rf"(?P<one>(?:pit \d{{2,3}}(?: ?[cf])? )?{name} .+?) (?P<two>{name} .+)$", text):
        each_tells = _TELLS.search(found["one"]) and _TELLS.search(found["two"])
        if each_tells and not _JOINED.search(text):
            return found["one"], found["two"]
    if parts := _one_by_one(text, name):
        return parts
    same = r"(?:and )?(?:the )?(?:same|ditto|likewise)(?: (?:for|with|goes for))?"
    told = rf"(?P<said>.*?)[,;.]? (?:(?:and )?(?P<too>{name})(?: too| also| as well)|{same} (?P<same>{name}))$"
    if found := re.match(told, text):
        before = found["said"]
        own = _OWN_DEED.search(before)  # «flat wrapped and turned the bacon too»: each has a deed of its own
        if not own and (first := re.search(rf"\b{name}", before)):
            other = found["too"] or found["same"]
            return before, f"{before[: first.start()]}{other}{before[first.end() :]}"
    return (text,)


def _weights(text: str, names: Sequence[str]) -> tuple[str, ...]:
    """«the flat is 7.2 lb and the bacon 5.1 lb», of two that there are: the weight of each, and no new pieces."""
    name = "|".join(re.escape(n.lower()) for n in names)
    weight = r"[\d.]+ ?(?:kg|kilos?|lbs?|pounds?)"
    is_ = r"(?: is| was| weighs| weighed)"
    told = rf"(?:the )?({name}){is_} ({weight})(?:,| and|, and) (?:the )?({name}){is_}? ({weight})"
    found = re.fullmatch(told, text) if len(names) > 1 else None
    if found is None or found[1] == found[3]:
        return (text,)
    return f"{found[1]}: it is {found[2]}", f"{found[3]}: it is {found[4]}"


def _one_by_one(text: str, name: str) -> tuple[str, ...]:
    """«bacon flipped, fridge 38 ham was leaking so new bag»: what stands behind a name is that one's, to the next."""
    hits = [*re.finditer(name, text)]
    if len(hits) == 2 and hits[0][0] != hits[1][0] and _NOT_YET.fullmatch(text[hits[1].end() :]):
        return (re.sub(r"[ ,;]+(?:and|but)?$", "", text[: hits[1].start()].rstrip(" ,;")),)
    apart = len(hits) == 2 and hits[0][0] != hits[1][0] and text[hits[1].start() - 2 : hits[1].start()] != ", "
    if not apart or _ASKED.search(text):
        return ()
    one, two = text[: hits[1].start()].rstrip(" ,;"), text[hits[1].start() :]
    one = re.sub(r"[ ,;]+(?:and|but|while|n)$", "", one)
    tells = all(_DEED_TOLD.search(part) for part in (one, two))
    return (one, two) if tells and not _HANGS.search(one) else ()


def _told_apart(names: Sequence[str]) -> list[str]:
    """The names that others have with a number behind them: «flat», where there is a «flat 2»."""
    lower = {name.lower() for name in names}
    return sorted(base for base in lower if any(other.startswith(f"{base} ") for other in lower))
