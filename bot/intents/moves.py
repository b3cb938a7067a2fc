"""A meal that is moved, to a time or by a while; what is to come later; and a day or an hour without a verb."""

from datetime import timedelta
from typing import Final

from bot import measures
from bot.intents import spans, when
from bot.intents.asides import SO_MUCH_LATER
from bot.intents.context import HOT, UNCOOKED, Context
from bot.intents.cure_longer import more_days
from bot.intents.days import WEEKDAY, open_days
from bot.intents.deeds import TO_A_PLACE, WITH_MEAT
from bot.intents.either_meal import read_either
from bot.intents.intents import Intent, MoveDeadline, Snooze, Start, StepDone, Unclear
from bot.intents.meal_words import AMOUNT, MEAL
from bot.intents.meats import meat
from bot.intents.small import content
from bot.intents.start import assumptions
from core import patterns as re

_BEHIND: Final = re.compile(
    r"^(?:(?:im|i am|we are|its|it is|were|running|about|run|cook|fire|bit|a) )*\S+ ?\w* (?:late|behind)$"
)
OF_THE_MEAL: Final = re.compile(rf"\b(?:{MEAL}|guests?|people|family|friends|kids|parents|everyone|everybody)s?\b")
_MOVE: Final = (
    r"(?:move|moved|moving|push|pushed|shift|shifted|postpone[d]?|delay(?:ed)?|reschedule[d]?|bring"
    r"|brought|shove|bump|slide|nudge|knock|kick|verschieb\w{0,3})"
)
_EATERS: Final = (
    r"(?:guests?|they(?:re)?|people|family|friends|mates|lads|folks|kids|parents|in ?laws|visitors|neighbou?rs|everyone"
    r"|everybody|mum|mom|dad|were|we are|im|dinner|lunch|supper)"
)
A_WEEKDAY: Final = rf"(?:next |this )?{WEEKDAY}\b"
_AN_HOUR: Final = r"\d{1,2}(?:(?:[:.]\d\d)? ?[ap]m\b|(?::\d\d)?,? (?:and )?(?:not|instead of|rather than) \d)"
_BY: Final = re.Rules(
    (re.compile(words), sign)
    for sign, words in (
        (-1, rf"\b{AMOUNT} (?:earlier|sooner|früher)\b|\b(?:earlier|sooner) by {AMOUNT}\b"
             rf"|\b{_MOVE} (?:\w{{1,10}} ){{0,2}}(?:forward|up) (?:by )?{AMOUNT}\b"),
        (1, rf"\b{_MOVE} (?:\w{{1,10}} ){{0,3}}(?:back )?by {AMOUNT}\b|\b{_MOVE} (?:(?:it|{MEAL}) )?(?:back |out )?"
            rf"{AMOUNT}\b"),
        (1, rf"\b{_EATERS}\b.{{0,24}}\b{AMOUNT} (?:late|behind)\b"),
        (1, rf"\b{_MOVE} (?:it|{MEAL}) off (?:by )?{AMOUNT}\b"),
        (1, rf"\b(?:the lot|things|{MEAL}) (?:(?:can|could|may|might|has to|will) )?"
            rf"(?:slip|slide)s? (?:by )?{AMOUNT}\b"),
        (1, rf"\b(?:the lot|things|{MEAL})(?: is| goes?| moves?| slips?| slides?)? (?:back|out) (?:by )?{AMOUNT}\b"),
        (1, rf"\b(?:running|run|being|be|are|is|im|i am) (?:about |around )?(?:{AMOUNT} (?:late|behind)|(?:late"
            rf"|behind) (?:by )?{AMOUNT})\b"),
        (1, rf"\b{AMOUNT} (?:later|später)\b"),
    )
)  # fmt: skip
_CANT: Final = re.compile(
    r"\b(?:cant|cannot|wont(?: be able to)?|no time to|unable to|not able to|not|too (?:windy|wet|cold|stormy"
    r"|late) to)\b.{0,16}\b(?P<verb>light|smok|cook|grill|fire|rins|slic|wrap|rub)\w*\b.{0,12}?"
    r"\b(?:today|tonight|tomorrow|\w{3,6}day)\b"
)
_CANT_DO: Final = re.compile(rf"(?:(?:sorry|i|we) )*(?:cant|cannot) (?:do|make)(?: it)?(?: on)? {WEEKDAY}$")
_STEPS: Final = {"smok": "light", "cook": "light", "grill": "light", "fire": "light", "rins": "rinse", "slic": "slice"}
_A_DAY: Final = timedelta(days=1)
_THAT_NIGHT: Final = re.compile(r"\b(?:tonight|this evening|today|home)\b")
_LATER_SPAN: Final = re.compile(rf"^(?:(?:ok|yes|sure) )?{AMOUNT} (?:later|später)(?: (?:please|pls|then))?$")
_JUST: Final = timedelta(hours=3)  # an hour that has just gone may be when it was done
_SOON_DAY: Final = re.compile(r"\b(?:today|tonight|tomorrow)\b")  # as likely of the step as of the meal
_BARE_HOUR: Final = re.compile(r"\d{1,2}[:.]\d\d(?: ?[ap]m)?")
_GUESTS: Final = (
    r"(?:guests?|people|folks|family|friends|mates|lads|parents|in ?laws|visitors|neighbou?rs|company|they(?:re)?"
    r"|everyones?|everybodys?|we(?:re)?)"
)
_TO: Final = re.Rules(
    (re.compile(words), None)
    for words in (
        rf"\b{_MOVE} (?:\w{{1,10}} ){{0,3}}?(?:to|till?|until|auf|for|on) ",
        rf"\b{MEAL}(?: is|s)?(?: now)?(?: moved)? (?:to|at|is|on|um|jetzt|now)\b",
        r"\b(?:rather|can we|could we|can i|could i|want to|wanna|lets|like to|well|we|we will|ill|prefer to"
        r"|going to) (?:\w{1,8} )?(?:eat|serve|have (?:it|dinner|lunch))(?:ing)? (?:it )?(?:at|on|by|around|to)?\b"
        r"|\beating (?:at|on)\b|\beat at\b",
        r"^(?:the )?(?:guests?|people|family|everyone|everybody) (?:at|by|for) (?=\d|noon)",
        rf"\b{_EATERS}\b.{{0,16}}\b(?:late|behind|delayed|early)\b.{{0,12}}\b(?:at|until|till?) (?=\d)",
        rf"\b{MEAL}(?: is|s)? (?:off|put off|on hold) (?:until|till?)\b",
        rf"\b{_GUESTS}(?: (?:are|is|re|will|now|can|only|all))* (?:here|com\w{{1,3}}|arriv\w{{1,3}}|be here)"
        r"(?: at| on)?\b",
        rf"\b(?:{MEAL}|{_GUESTS})(?: (?:all|can|could|will|is|are|\w{{2,4}}nt|happy|fine|ok|not|to|be))*"
        r" (?:waiting|wait|here|com(?:e|ing)|eat(?:ing)?)(?: for it)? (?:till?|until|before)\b",
        r"\b(?:need|want) it (?:ready )?(?:by|at|for|on)\b|\bready (?:by|at|for)\b|\bserve (?:it )?at\b"
        r"|\bserving (?:at|on)\b",
        r"(?<!ill )(?<!will )(?<! to )(?<!gonna )\b(?:make|do) (?:it|that) (?:for |on |at )?(?!dry|wet)\b",
        r"\binstead\b",
        rf"^(?:they|we|guests?|everyone|everybody) (?:now )?(?:want|prefer|need|like)(?: it)? (?:for |on )?"
        rf"(?={A_WEEKDAY}|the \d{{1,2}}(?:st|nd|rd|th)\b)",
        r"\bwrong (?:day|date),? (?:its|it is|should be|i meant)?",
        r"^(?:deadline|serve|meal|eat)\b",
        r"\bsame time\b",
        rf"\b(?:chang(?:e|ed|ing)|switch(?:ed)?|swap(?:ped)?) (?:it|that|the day|the date|{MEAL})? ?(?:to|for|on"
        rf"|over) (?={A_WEEKDAY})",
        rf"^(?:(?:lets|can we|please|so|then) )*(?:do|make) (?={A_WEEKDAY})",
        r"(?:(?<=can we )|(?<=could we ))(?:do )?at (?=\d)",
        rf"^(?:can|could) (?:the |our )?{MEAL} be at (?=\d)",
        rf"^(?:(?:so|ok|or) )*(?:can|could|may) (?:it|that|this|the meal) be (?:on |for )?(?={A_WEEKDAY}|tomorrow)",
    )
)
_SOON: Final = re.compile(
    rf"^(?:the )?(?:{_EATERS}|{MEAL}|we eat|eating)(?: are| is| will be| be)*(?: here| coming"
    rf"| arriving)? in {AMOUNT}$"
)
_A_PIT: Final = re.compile(
    r"\b(?:bump|raise|crank|push|bring|drop|lower|turn|go|up|down)\b.* (?:to|at) [1-4]\d\d\b(?![:.])"
)
_DEGREES: Final = re.compile(r"\b(?:at|to) (?:1[3-9]|2\d)\d\b(?![:.]| ?[ap]m)")  # «serving at 140»: no twenty to two
_SAY: Final = re.compile(
    rf"(?<=^they \w{{4}} it )(?:for|by) (?=\d)|\b(?:lets )?say (?=\d)|(?:(?<=we do )|(?<= be ))(?={_AN_HOUR})"
)
_LETS: Final = re.compile(rf"^(?:(?:ok|then|so) )*lets (?:say|do|aim for) (?:for |on )?(?={A_WEEKDAY}|the \d|tom)")
_DAY_FIRST: Final = re.compile(rf"^(?:[a-z]{{2,8}},? ){{0,2}}(?:{A_WEEKDAY}|tomorrow)(?: [a-z]{{3,9}})?,? ?$")
_INSTEAD_OF: Final = re.compile(r"\b(?:instead of|not|rather than|statt) (?:at |on )?[\w:.]{1,10}(?: ?(?:am|pm))?\s*$")
_DAY_PART: Final = re.compile(r"\b(?:morning|evening|tonight|afternoon|after (?:work|lunch|dinner))\b")
_LOOSE: Final = re.compile(r"instead|make it|do it")
_OF_FLIPS: Final = re.compile(r"\b(?:flips?|turns|reminders?|pings?|calls)\b")  # called at another hour, and no meal
_MAKES_IT: Final = re.compile(  # «guests at 6 will it make it»: asked of the fire, and no other meal
    r"\b(?:will|does|would) (?:it|that|this|the meat) (?:make it|be (?:done|ready|finished|there)|reach)\b|^(?:so )?"
    r"(?P<asked>(?:is|are|will) )?(?:(?:the|my|our) )?\w+ (?:(?:gonna|going to|still|be) )*ready (?:by|at|for)\b"
    r"(?(asked)| [\w:. ]{1,16}\?$)"
)
_OUT_OF_THE_CURE: Final = re.compile(
    rf"^(?:(?:i|we|ill|it|take|taking|comes?|coming|pull|pulling) )*out (?:on )?{A_WEEKDAY}"
)
_SINCE: Final = re.compile(r"\bsince (?:about |around )?(?:\d|noon|midday)")  # then it went on, or in
_RATED: Final = re.compile(r"\b(?:was|were|is|its|tasted?|came out|great|good|perfect)\b.*\b\d{1,2} ?/ ?(?:5|10)$")
_NEXT_WEEK: Final = re.compile(r"\bnext week\b")
_OTHER_MEAL: Final = re.compile(r"^(?:(?:make|have) it )?(?:for |at )?(breakfast|brunch|lunch|dinner|supper) instead$")
_NOT_MEAL: Final = re.compile(r"(?<=\w),? (?:and )?not (?:for )?(?:breakfast|brunch|lunch|dinner|supper)\b")
_NOT_DAY: Final = re.compile(rf",? (?:and )?not (?:on )?(?:the \d{{1,2}}\w{{2}}|{A_WEEKDAY})$")
_MEANT: Final = re.compile(r"^(?:(?:no|sorry|oops|wait) )*(?:i )?(?:meant|mean) (?=[a-z]{3})")
_BETTER: Final = re.compile(
    r" (?:(?:suits|works|is|would be|suits us|fits) ?(?:too|as well|us|everyone|me|better|best|fine)?|then|please|pls"
    r"|ok(?:ay)?)$"
)


def read_move(text: str, context: Context) -> Intent | None:
    """A meal that is moved, where a plain text says so: to a time, or by a while; days more in the cure."""
    text = _SAY.sub("at ", _LETS.sub("make it ", _NOT_MEAL.sub("", text)))
    if _of_no_meal(text, context):
        return None
    ways = (more_days, _another_day, _to_another_meal, read_either)
    if found := next((found for way in ways if (found := way(text, context))), None):
        return found
    if by := next(_BY.hits(text), None):
        return _moved_by(by[1], text, context)
    target = _INSTEAD_OF.sub("", text)
    verb = next((found for found, _ in _TO.hits(text)), None)
    begun = meat(text).product and measures.of_kind(text, "mass")
    if verb is None or begun or (_LOOSE.match(verb[0]) and _about_a_deed(text)):
        return None
    said, whole = _time_of(target[min(verb.start(), len(target)) :], context), _time_of(target, context)
    in_front = verb[0] == "instead" or _DAY_FIRST.match(target[: verb.start()])
    if said is None or (in_front and whole and whole.day_said and whole.hour_said):
        said = whole  # «eating tonight instead 7pm», «sunday we eat at 5»
    if (said := said and when.of_today(text, said, context)) is None:
        return _in_a_week(target) or _weekend(target, context)
    if _of_a_step(verb[0], said, text, context):
        put_off = when.future(text, context)
        return Unclear("word", text[:60], (Snooze(until=put_off.at if put_off else None), MoveDeadline(to=said.at)))
    if said.day_said and not said.hour_said and (open_words := when.open_hour(target, context)):  # «eat sunday 2»
        hour = when.meal(when.hour_after_day(open_words, context), context)
        return Unclear("word", text[:60], tuple(MoveDeadline(to=one.at) for one in (hour,) if one))
    if said.others:
        both = (said.at, *said.others)
        return Unclear("word", text[:60], tuple(MoveDeadline(to=at) for at in both))
    return MoveDeadline(to=said.at, assumed=tuple(assumptions(said)))


def _of_a_step(verb: str, said: when.When, text: str, context: Context) -> bool:
    """«do it at 9», «do it tomorrow», «tonight instead»: the step that was called for or comes next, or the meal."""
    if verb == "instead":
        return bool(context.due_step and _DAY_PART.search(text))
    waits = _step_waits(context) if re.match("do (?:it|that)", verb) else context.due_step
    return bool(waits and verb.startswith("do ") and (not said.day_said or _SOON_DAY.search(text)))


def _step_waits(context: Context) -> bool:
    """Whether a time that is said alone may be that of a step: one was called for, or the meal is days away."""
    return bool(context.due_step) or context.phase in UNCOOKED


def _of_no_meal(text: str, context: Context) -> bool:
    """«can i bump to 300», «will it make it», «moved it to the fridge»: the fire, a flip or the meat, and no meal."""
    deed = _OF_FLIPS.search(text) or ("instead" in text and WITH_MEAT.search(text))
    of_another = any(words.search(text) for words in (_MAKES_IT, _RATED, TO_A_PLACE, SO_MUCH_LATER, _SINCE))
    if _is_of_the_cure(text, context):
        return True
    if of_another or (deed and not OF_THE_MEAL.search(text)):
        return True
    if context.phase in ("drying", "cooking") and _A_PIT.search(text):
        return True
    hot = context.phase in HOT and _DEGREES.search(text)
    return bool(hot) and not re.search(MEAL, text)


def _is_of_the_cure(text: str, context: Context) -> bool:
    """«out friday 3pm not thursday», while it lies in its cure: of that, and of no meal."""
    return context.phase in UNCOOKED and bool(_OUT_OF_THE_CURE.match(text)) and not OF_THE_MEAL.search(text)


def _another_day(text: str, context: Context) -> Unclear | None:
    """«cant light it today, do it tomorrow»: that step alone, or the meal with it; no day named, one or two later."""
    found = _CANT.search(text) if context.phase not in ("none", "cooking", "resting", "chilling", "stored") else None
    if _CANT_DO.match(text) and context.phase != "none":
        return Unclear("word", text[:60], (MoveDeadline(by=_A_DAY), MoveDeadline(by=2 * _A_DAY)))
    if found is None:
        return None
    said, step = when.future(text[found.end() :], context), _STEPS.get(found["verb"], found["verb"])
    if said is None or not said.day_said:
        return Unclear("word", text[:60], (MoveDeadline(by=_A_DAY), MoveDeadline(by=2 * _A_DAY)))
    days = round((said.at - context.now) / _A_DAY) or 1
    return Unclear("word", text[:60], (MoveDeadline(by=timedelta(days=days)), Snooze(until=said.at, step=step)))


def _to_another_meal(text: str, context: Context) -> MoveDeadline | None:
    """«breakfast instead», «guests here in an hour»."""
    if (named := _OTHER_MEAL.match(text)) and (said := when.meal(named[1], context)):
        return MoveDeadline(to=said.at)
    by = spans.span(text) if _SOON.match(text) else None
    return MoveDeadline(to=context.now + by) if by else None


def _in_a_week(text: str) -> Unclear | None:
    """«meal off till next week»: by a week, or to a day that is not told."""
    return Unclear("likely", text[:60], (MoveDeadline(by=7 * _A_DAY),)) if _NEXT_WEEK.search(text) else None


def _weekend(text: str, context: Context) -> Unclear | None:
    """«the party is off till next weekend»: of the two days one is meant."""
    words = open_days(text)
    if "weekend" not in words:
        return None
    which = "next " if "next" in words else ""
    days = (when.meal(f"{which}{day}", context) for day in ("saturday", "sunday"))
    return Unclear("word", text[:60], tuple(MoveDeadline(to=said.at) for said in days if said))


def _time_of(text: str, context: Context) -> when.When | None:
    said = when.meal(text, context)
    return said if said and (said.day_said or said.hour_said) else None


def _about_a_deed(text: str) -> bool:
    """«take it out tomorrow instead» moves a step, and no meal."""
    return bool(content(when.without_times(_INSTEAD_OF.sub("", text))))


def _moved_by(sign: int, text: str, context: Context) -> Intent | None:
    by = spans.span(text)
    if by is None:
        return None
    if _LATER_SPAN.search(text) and context.due_step:  # an answer to a reminder, or a meal that is moved
        return Unclear("word", text[:60], (Snooze(by=by), MoveDeadline(by=by)))
    if context.phase == "cooking" and _BEHIND.search(text) and not OF_THE_MEAL.search(text):
        return Unclear("late", text[:60], (MoveDeadline(by=sign * by),))  # the fire, or the meal
    if context.phase not in HOT and _THAT_NIGHT.search(text) and not OF_THE_MEAL.search(text):
        return Unclear("late", text[:60], (Snooze(by=by), MoveDeadline(by=sign * by)))  # for the flip, or the meal
    return MoveDeadline(by=sign * by)


def read_word(text: str, context: Context) -> Intent | None:
    """A single day or hour without a verb: «sat» may be a new day for the meal, or how long it sat."""
    bare = _BETTER.sub("", _MEANT.sub("", _NOT_DAY.sub("", text.strip(" .!"))))
    preferred = bare != text.strip(" .!")
    said = when.meal(when.hour_after_day(bare, context), context)
    meal = re.match(MEAL, bare)
    if said is None or len(bare.split()) > (6 if meal else 4) or not (said.day_said or said.hour_said):
        return None
    if content(when.without_times(bare)) or _SINCE.search(bare) or _is_of_the_cure(bare, context):
        return None
    if re.match(r"not (?!un|til|before)", bare):  # no meal on the very day, and nobody said when instead
        return Unclear("not_then", bare)
    to = MoveDeadline(to=said.at, assumed=tuple(assumptions(said)))
    part = re.match(r"(?:not (?:until|till?) )?(?:in the|this|tomorrow|tonight)\b", bare)
    if _step_waits(context) and part and not said.hour_said and not meal and (soon := when.future(bare, context)):
        return Unclear("word", bare, (Snooze(until=soon.at), to))  # «tomorrow»: what was called for, or the meal
    soon_day = not said.day_said or _SOON_DAY.search(bare)
    if context.due_step and said.hour_said and not meal and soon_day:  # «at 20:30 please»: the step, or the meal
        put_off, gone = when.future(bare, context), when.past(bare, context)
        just = (StepDone(at=gone.at),) if gone and context.now - gone.at <= _JUST and _BARE_HOUR.fullmatch(bare) else ()
        return Unclear("word", bare, (*just, Snooze(until=put_off.at if put_off else None), to))
    planning = context.phase == "waiting" and context.due_step is None  # nothing else has an hour yet
    named = said.hour_said and (said.day_said or preferred or meal or planning or said.at == context.deadline)
    certain = (named or (said.day_said and (meal or context.deadline is None))) and not when.open_hour(bare, context)
    if context.phase == "none":
        return Unclear("word", bare, (Start({"deadline": said.at}),))
    return to if certain else Unclear("word", bare, (to,))
