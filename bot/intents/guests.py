"""More guests than was said: how many in all is asked, or what that takes is told, also beside something else."""

from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Ask, Intent, Question, Start, Unclear
from bot.intents.small import ASKS
from core import patterns as re

_WHO: Final = r"(?:people|guests?|bodies|mouths|friends|mates|kids|adults|heads|of us|ppl|eaters)"
_MORE: Final = re.compile(
    r"^(?:(?:and|oh|theres|there are|we have|got|now|its|plus|make it|make that|add|for) )*(?:\d{1,2}|a few"
    r"|a couple|some|another \d{1,2}) "
    rf"(?:more|extra|fewer|less)(?: {_WHO})?(?: (?:are|is|coming|joining|eating|turning up|showing up|for \w+|now"
    rf"|not))*$"
)
_IN_ALL: Final = re.compile(
    rf"\b(?:makes|making|thats|that is|so|now|total(?:s)?|in all)(?: it| us)? (?P<n>\d{{1,3}})(?: {_WHO}| in all"
    rf"| total)?$"
    rf"|^(?:(?:only|now|just|its|well be|we are|there are|therell be) )+(?P<k>\d{{1,3}}) (?:eating|coming"
    rf"|{_WHO})(?: now)?(?:,? not \d{{1,3}})?$"
    rf"|^(?:were|we are|therell be|there will be|well be) (?:now |only |just )?(?P<o>[2-9]|[1-9]\d)"
    rf"(?: (?:now|in all|then|instead|tomorrow|tonight|today|on the day|that day|for (?:it|lunch|dinner)))*$"
    rf"|^(?:(?:were|we are|its|itll be|now|there will be|so|for|only|just) )*(?P<m>\d{{1,3}}) {_WHO}(?: (?:now"
    rf"|coming|in all"
    rf"|instead|eating))*$"
)
_COUNTED: Final = re.compile(  # «fridge 36 and make it 9 people»: at the end of a clause, whatever else it tells
    r"(?<!\bif )(?<!\bwhen )(?<!\bof )(?<!\bfor )(?<!\banother )(?<!\bplus )(?<!\bnot )(?<!\bwas )(?<!\bwere )"
    r"(?<!\bby )(?<!\bthe )(?<![\d.,/] )(?<![\d.,:/])\b(?P<n>\d{1,3}) (?:people|ppl|guests?|of us|eaters|heads)"
    r"(?: (?:now|coming|joining|eating|in all|total|instead|then|tonight|today|tomorrow))*"
    r"(?=[,;.!]|$| (?:and|so|but)\b)|\b(?:we are|there are|there will be|well be|make it|makes) (?P<k>[2-9]"
    r"|[1-9]\d) (?:now|eating|coming|in all)"
    r"(?=[,;.!]|$| (?:and|so|but)\b)"
)
_BESIDE: Final = re.compile(  # what it is no longer, and whether it does
    r",? (?:and )?(?:not|instead of) \d{1,3}(?: \w+)?$"
    r"|[,.;]? (?:(?:will|does) (?:it|that) (?:stretch|do)|(?:is|will) (?:it|that|there) (?:be |still )*(?:enough"
    r"|do)(?: meat)?"
    r"|(?:do|have) we (?:have|got) enough|do we need more|enough)$"
)
_ASKED: Final = ("guests", "more")
_NAMED: Final = re.compile(rf"\b{_WHO}\b|\b(?:coming|joining|eating|turning up|showing up)\b")  # «10 more» may be grams
_SOME: Final = re.compile(rf"\b{_WHO}\b|\beating\b|\bcoming\b|\bmore\b|\bextra\b")


def read_guests(text: str, context: Context) -> Intent | None:
    """A change of the number of guests, where a plain text tells one of a batch that is under way."""
    if context.phase == "none" or not (context.free or context.asked in ("cure", "thickness")):
        return None
    bare = text.strip(" .!")
    if _MORE.match(bare):
        return Unclear("guests" if _NAMED.search(bare) else "more", bare)
    found = _in_all(bare)
    before = found.string[: found.start()] if found else ""
    if len(before.split()) > 1 and not _SOME.search(before):
        return None  # beside something else, which is read by its clauses
    return Ask("feed", text=bare) if found and (found["o"] or _SOME.search(bare)) else None


def with_guests(text: str, found: list[Intent], context: Context) -> list[Intent]:
    """What was `found` in a plain text, and how many eat in all, where it tells that in passing."""
    heard = any(isinstance(one, Ask | Start) or (isinstance(one, Unclear) and one.why in _ASKED) for one in found)
    if context.phase == "none" or heard or ASKS.search(text):
        return found
    if all(isinstance(one, Question) for one in found):
        counted = _in_all(text.strip(" .!"))
        return [Ask("feed", text=counted[0])] if counted and _SOME.search(text) else found
    told = list(_COUNTED.finditer(text))
    return [*found, Ask("feed", text=told[0][0])] if len(told) == 1 else found


def how_many(text: str) -> int | None:
    """How many eat in all, by a plain text that says so: «4 more coming so thats 12»."""
    found = _in_all(text.strip(" .!")) or _COUNTED.search(text)
    return next((int(many) for many in found.groups() if many), None) if found else None


def _in_all(bare: str) -> re.Match[str] | None:
    return _IN_ALL.search(_BESIDE.sub("", bare.strip("?")).strip(" ,"))
