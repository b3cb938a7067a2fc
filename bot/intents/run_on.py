"""Statements that are run together without a comma, as a phone writes down what is spoken.

«rolled it over its 37 in there and skip tonights»: where no reader knows the whole, it is parted before words with
which a statement begins, and taken only if each part tells something for sure and no two tell of the same.
"""

from collections.abc import Iterator
from functools import lru_cache
from types import UnionType
from typing import Final

from bot.intents.clause import clause
from bot.intents.composed import signs, sure
from bot.intents.context import HOT, RAW, Context
from bot.intents.heard import ANSWERED, unheard
from bot.intents.intents import (
    Ask,
    Change,
    Greet,
    Happened,
    Intent,
    Pause,
    Question,
    Reading,
    Start,
    StepDone,
    StepMissed,
    Unclear,
)
from bot.intents.small import ASKS, IF, IS_IT, words
from core import patterns as re

_BEGIN: Final = words(  # what a statement begins with
    """
    its the my ive im i we fridge brine pit smoker grill core meat bag middle lid fire coals flipped turned rinsed
    wrapped rubbed put took pulled moved added massaged sliced froze lit patted drained soaked skip leave push move
    make remind ping call back away going heading gone nipping popping dinner lunch supper meal breakfast tea eating
    guests guest now tonight more brother sister wife husband dad mum mom son daughter neighbour neighbor just breast
    thigh leg skin salt tender tenderness smoke shut opened closed chill threw chucked foiled papered kids theres shes
    hes gonna weve gave swapped topped dropped popped stuck forgot missed started finished ate inside probe bark windy
    raining pushing chucking smells stinks throwing putting taking pulling dunking moving wrapping boys girls someone
    somebody still everything skipping ice eat uncle aunt cousin parents folks
    """
)
_JOINS: Final = words("and an but plus then also n so")  # belongs to neither side
_UNFINISHED: Final = words(  # no statement ends with it
    """
    at in into on onto to by with of for from under over the a an my our your its is are was were be been has have had
    not no never dont didnt havent hasnt wont cant will ill gonna about around til till until since before after when
    while if because as than or i we he she they im ive just still and but so that this which all both another half
    push move skip make shift call ask did do does get got put took turned added going back out off up down like only
    then next last every per plus between mon tue wed thu fri sat sun me more
    """
)
_CHATTER: Final = re.compile(  # how somebody or something is, beside what is told
    r"(?:(?:im|i am|we are|were|feeling|so|bit|too|really|proper|dead|well) )*(?:beat|knackered|tired|shattered|wrecked"
    r"|done in|pooped|exhausted|busy|happy|pleased|chuffed|hungry|cold|wet|hung ?over)"
    r"|(?:looks?|looking|smells?|smelling|skin|colou?r|bark|all|its|so|going|is|really) (?:(?:looks?|is|going|really|so"
    r"|far|very) )*(?:good|great|lovely|nice|mint|ace|fine|perfect|amazing|beautiful|brilliant|well)"
    r"|(?:i )?couldnt wait|cant wait|(?:my )?hands (?:are )?full|as (?:usual|planned|you said)|happy days|no worries"
    r"|all good|hope thats ok|sorry|phew|finally|fingers crossed|lol|haha"
)
_WEIGHS: Final = words(  # what a remark may hold beside what is told, and is then no mere remark
    """
    flipped flip turned turn rinsed rinse wrapped wrap rubbed rub soaked soak sliced slice lit light put took pulled
    on off in out moved added poured drained froze frozen bagged injected trimmed weighed weighs not no never dont
    didnt doesnt wasnt isnt havent hasnt wont cant couldnt forgot missed skip skipped leak leaked leaking burst
    spilled open opened warm hot cold cool melted smell smells stinks slime slimy mould green grey pink burnt died
    dead power fire coals charcoal ice foil paper salt cure brine fridge pit core meat bag meal dinner lunch supper
    breakfast eat eating guests people coming remind ping call tomorrow tonight later today yesterday morning evening
    night noon till until since away back gone stop move push undo wrong sorry meant what how why when where which who
    if or maybe should can could would shall half less more too enough undercooked raw sick ill pregnant keep need
    want wants wanna aim target set under over below above must soll darf muss kann der die das says said thinks
    """
)
_BEHIND: Final = words("inside eating guests now")  # what a number before it is of
_PROBES: Final = words("pit core meat smoker grill internal fridge brine breast thigh")
_REMARK: Final = 7  # words of a remark at most
_BARE: Final = re.compile(r"[1-4]\d\d")  # «101 now»: a thermometer, and no hour
_HANGS: Final = re.compile(  # one statement hangs on the other, puts it right, or asks
    r"^no\b|\b(?:said|told you|meant|wrote|typed|typo|instead(?!$)|rather|oops|sorry|wait|actually|really|wrong|undo"
    r"|correction|mistake|misread)\b"
    r"|\b(?:unless|when|while|whether|once|(?<!gone )(?<!away )(?:until|till?)|was|were(?! gonna)|before|after"
    r"|because|so that)\b"
    r"|\b(?:may|can|could|should|shall|do|does|is|are|how|what|would) (?:i|we|it|you|they|that|much|many|long)\b"
)
_COLD: Final = re.compile(r"\b(?:fridge|brine)\b")
_DEED_ALONE: Final = words("flipped turned rinsed wrapped rubbed lit sliced massaged")
_LOOSE: Final = ("number", "word")  # what may be told beside it is not heard yet
_WEIGHED: Final = frozenset(
    {"thickness", "put_in_cure", "put_in_salt", "put_in_water", "water_kg"}
)  # one sum, whatever lies between
_LONGEST: Final = 24  # words
_MOST: Final = 5  # places where such a line may be parted


def run_on(text: str, context: Context) -> list[Intent]:
    """What each statement of a plain line tells; nothing where it asks, or where a part of it is not sure."""
    line = text.split()
    asks = "?" in text or ASKS.search(text) or IS_IT.match(text) or IF.search(text) or _HANGS.search(text)
    if context.phase == "none" or not context.free or asks or not 4 - line[0].isdigit() <= len(line) <= _LONGEST:
        return []
    cuts = [n for n in range(1, len(line)) if _begins(line, n)]
    if not 1 <= len(cuts) <= _MOST:
        return []
    bare = any(line[n].isdigit() for n in cuts)
    alone = StepDone | StepMissed if context.phase in RAW else StepDone | StepMissed | Reading
    ways = _parted(line, [0, *cuts, len(line)], 0, context)
    return next((way for way in ways if _is_several(way, 1 if bare else len(way), alone)), [])


def _is_remark(part: str) -> bool:
    """Whether a part tells nothing that could be lost: how somebody is, or a few words without any of the trade."""
    if _CHATTER.fullmatch(part):
        return True
    said = part.split()
    return len(said) <= _REMARK and not re.search(r"\d", part) and not _WEIGHS.intersection(said)


def is_loose(found: list[Intent]) -> bool:
    """Whether nothing was taken of a line but a question, or what it may be."""
    return all(isinstance(one, Question | Greet) or (isinstance(one, Unclear) and one.why in _LOOSE) for one in found)


def beyond(found: list[Intent], text: str, context: Context) -> list[Intent]:
    """What was read of a plain text, with what its statements tell beyond it where they tell all of that as well."""
    told = [] if is_loose(found) else run_on(text, context)
    named = context.phase not in RAW or _COLD.search(text)
    firm = [one for one in found if not (isinstance(one, Unclear) and one.why in _LOOSE)]
    firm = firm if told and not (_COLD.search(text) and context.phase not in RAW) else found
    if any(isinstance(one, Pause) for one in told):  # «skipping tonight were out»: tonight is no end of it
        firm = [one for one in firm if one in told or not isinstance(one, Pause)]
    more = [one for one in told if one not in found and not isinstance(one, Unclear)]
    more = [one for one in more if named or not isinstance(one, Reading)]
    grave = [one for one in told if isinstance(one, Unclear) and one.why == "spoiled" and one not in found]
    return [*grave, *firm, *more] if all(one in told or _is_answered(one) for one in firm) else found


def _is_answered(one: Intent) -> bool:
    return isinstance(one, Unclear) and one.why in ANSWERED


def _begins(line: list[str], at: int) -> bool:
    """Whether a statement may begin with a word, or behind the «and» that it is: not where one is unfinished before."""
    if line[at - 1] in _JOINS or line[at - 1].strip(",;") in _UNFINISHED:
        return False
    first = next((word.strip(",;") for word in line[at:] if word not in _JOINS), "")
    if line[at - 1].isdigit() and first in _BEHIND:  # «146 inside», «5 eating»
        return False
    return first in _BEGIN or (bool(_BARE.fullmatch(first)) and line[at - 1] not in _PROBES)


def _is_several(said: list[Intent], readings: int, alone: UnionType) -> bool:
    """Whether several things are told, no two of them of the same, and not too many looks at a thermometer.

    Beside mere remarks one thing is enough, where it is of those that may stand `alone`.
    """
    told = [sign for one in said for sign in signs([one])]
    read = sum(isinstance(one, Reading) for one in said)
    enough = len(told) > 1 or (len(said) == 1 and isinstance(said[0], alone))
    return len(set(told)) == len(told) and enough and read <= readings


def _parted(line: list[str], cuts: list[int], at: int, context: Context) -> Iterator[list[Intent]]:
    """The ways to part what is left behind the cut `at`, the longest statements first."""
    for to in range(len(cuts) - 1, at, -1):
        part = " ".join(_without_joins(line[cuts[at] : cuts[to]])).strip(" ,;")
        said = _told(part, context)
        if not (said or _is_remark(part)) or (to - at == len(cuts) - 1):
            continue
        if to == len(cuts) - 1:
            yield said
            continue
        yield from ([*said, *rest] for rest in _parted(line, cuts, to, context))


def _without_joins(part: list[str]) -> list[str]:
    while part and part[0] in _JOINS:
        part = part[1:]
    while part and part[-1] in _JOINS:
        part = part[:-1]
    return part


@lru_cache(maxsize=64)  # the same part stands in several ways to part a line
def _told(part: str, context: Context) -> list[Intent]:
    """What a statement tells for sure, or what is answered with a word and noted nowhere."""
    if " " not in part and not (part in _DEED_ALONE or (part.isdigit() and context.phase in HOT)):
        return []
    said = clause(part, context)
    if not said or unheard(part, said, context) or any(map(_of_the_whole, said)):
        return []
    if all(isinstance(one, Ask) and one.topic == "feed" for one in said):  # how many eat now
        return said
    answered = not re.search(r"\d", part) and all(map(_is_answered, said))
    return said if answered else sure(said)


def _of_the_whole(one: Intent) -> bool:
    """Whether an intent is to be read of the whole line: a batch, a mishap, what was weighed in."""
    return isinstance(one, Start | Happened) or (isinstance(one, Change) and bool(_WEIGHED & one.changes.keys()))
