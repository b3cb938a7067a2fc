"""A talk that is paused, taken up again or handed over, and a batch that is given up."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from bot.intents import spans, when
from bot.intents.back_at import fridge_is_back
from bot.intents.context import SHOWN, Context
from bot.intents.households import read_hand_over
from bot.intents.intents import Ask, Cancel, Intent, Pause, Resume, Unclear
from bot.intents.meats import without
from bot.intents.small import wakes
from core import patterns as re

AWAY_IN: Final = re.compile(  # «gonna be in denver till thursday»; never «in the bag till thursday»
    r"(?:^|\b(?:ill be|gonna be|going to be|we are|im|i am|well be|be) )in (?!(?:the )?(?:garden|yard|kitchen|house|bag"
    r"|brine|cure|fridge|freezer|cooler|ice|tub|bucket|oven|smoker|pot|foil|paper|salt|water|bed|time|touch)\b)[a-z]+"
    r" (?=(?:(?:from )?(?:today|tomorrow|tonight|now|(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*) )?(?:un)?till? "
    r"|from [a-z]+ (?:to|-) (?:mon|tue|wed|thu|fri|sat|sun|next))"
)
_FIRE: Final = re.compile(
    r"\b(?:fire|coals?|charcoal|flames?|pit|smoker)s? (?:(?:is|are|was|were|has|keeps|its) )*(?:(?:going|gone) )?out\b"
)
_PAUSE: Final = re.compile(
    r"^(?:(?:i|we|ive|weve|got|gotta|have|need|to|lets|just) )*(?:pause|park) (?:this|it|that|everything)\b"
    r"|\bpause (?:this|it|that|everything|the (?:pings|reminders|calls))\W*$"
    r"|^(?:be |stay |keep )?(?:quiet|silence|shh+)(?: please| pls| now)*(?:$| (?=(?:until|till?|for) ))"
    r"|^out (?=(?:until"
    r"|till?|from \d+) )|^(?:please |pls |ok )?(?:pause|mute|silence"
    r"|(?:stop|no more|hold|halt|park|quit|kill|cut|enough|turn off|switch off)"
    r" (?:(?:all|the|these|those|your|my|sending|of|with|any|back) )*"
    r"(?:reminders|pings|messages|msgs|texts|alerts|calls|notifications|buzzing|chat)(?: off)?)\b"
    r"|^(?:please |pls )?(?:shut up|shush|hush|shh+|zip it|pipe down|go quiet|go away|leave me be|leave us alone"
    r"|let me be|not a word)\b(?= (?:until|till?|for|now|please|pls)|$)|\b(?:going|heading"
    r"|popping|stepping|nipping) (?:out|away)\b|\b(?:im|i am|we are|were|well be|ill be) (?:away|out(?! of)|off|gone)\b"
    r"|^(?:(?:i|we|im|were|we are) )*(?:leave|leaving|go away|going away) (?=(?:for|on|this|next|mon|tue|wed|thu|fri"
    r"|sat|sun|tomorrow)\b.*\b(?:days?|nights?|weeks?|until|till)\b)"
    r"|\bno (?:pings|messages|reminders) (?:til|till|until)\b|(?:\bback|^(?:(?:im|ill|be) )*home) (?!at it\b)(?:at|by"
    r"|around"
    r"|round|about"
    r"|after) (?!\d{3}\b)(?!an?\b|one\b|half|\d+ ?(?:h|hour"
    r"|min|day|week))|\bback in (?:an?|\d|\d{2,3} min\w*|half|time|town|the (?:morning|evening|office)|on)\b"
    r"|\bon (?:holidays?|hols|vacation|until|till?)\b|\b(?:holidays?|hols|vacation) (?:from|until|till?|next|this"
    r"|the whole)\b|^away\b|\baway (?:until|till?|from"
    r"|for|on)\b"
    r"|\b(?:stop|quit) (?:ping|text|messag|bug|remind|nagg|buzz|notify)\w{0,4}(?: me| us)?\b(?! (?:so "
    r"|that )?(?:often|much|every|each|about|\d))|\bleave me alone\b"
    r"|\b(?:nobody|no one|nobodys|not anybody)(?: is| will be| here)? (?:at )?(?:home|here|in"
    r"|around) (?=(?:un)?till?\b)"
    r"|\b(?:dont|do not) (?:ping|text|messag|bug|bother|remind|buzz|wake|call|disturb)\w* (?:me |us "
    r")?(?=(?:un)?till?\b)"
    r"|\bout of town\b|\bleaving (?:town|home|for|tomorrow|today|tonight|until|on)\b|^(?:be )?gone (?:(?:mon|tue|wed"
    r"|thu|fri|sat|sun)[a-z]*|until|till?|from|for)\b|\bhold off\b(?! (?:on )?(?:the )?(?:wrap|foil|light|flip|turn"
    r"|rins|slic|rub))|^(?:(?:ill|we|well|will|be|not|im"
    r"|i am) )*(?:back|home) (?:again )?(?:on )?(?:mon|tue|wed|thu|fri|sat|sun|tomorrow|tonight)"
    r"|\b(?:nap(?:ping)?|sleeping|asleep|lie down|kip) (?=(?:until|till?) )"
    r"|^(?:(?:im|i am|still|we are) )*(?:stuck|held up|caught up) (?:at|in) (?:work|traffic|town|the office"
    r"|a meeting)\b"
    r"|\bno (?:more )?(?:reminders|pings|messages|texts|calls|alerts)(?: please)?(?: for)? (?:today|tonight|this week"
    r"|the weekend|now)\b"
    r"|^(?:(?:im|i am|ill be|we are|well be|still) )*(?:driving|busy|flying|swimming|offline|out|at work|shopping"
    r"|in a meeting) for (?=\d|an?\b|half|a few)"
    r"|^(?:(?:im|i am|ill be|in|at|on|an?|the|got|have|my|our|kids?|sons?|daughters?) )*(?:meeting|appointment|class"
    r"|match|film|shift|gym|party|wedding|bday|birthday|game|practice|training|church|dentist|doctors?|errands|call)"
    r" (?:until|till?) (?=\d|noon|late|mid)|\b(?:gone|away|out|off) (?:for )?(?:the|this) weekend\b"
    r"|\b(?:going|gone|off|out) [a-z]{3,}ing (?=(?:until|till?|from|this week|next)\b)"
    r"|\btravell?ing (?:next|this|until|till?|for|on|from|tomorrow)\b"
    r"|\b(?:not|wont be|arent|isnt) (?:at |back )?(?:home|back|in) (?:till?|until|before|again)\b"
    r"|\b(?<!is )(?<!its )(?:off|going|flying|driving|away) to (?!bed\b|sleep\b|work\b"
    r"|the (?:fridge|shop))\w+(?: \w+)? (?:mon|tue"
    r"|wed|thu"
    r"|fri|sat|sun|from|until|till?|for|next|this|tomorrow)"
    r"|\b(?:dont|do not) (?:need|want) (?:any |your |the |more )?(?:reminders|messages|pings|texts|notifications)\b"
    r"|\bpausier\w{0,3}\b|\b(?:hold|keep|save)(?: back)? (?:(?:all|my|the|your|any|these) )*(?:messages|reminders"
    r"|pings|texts|notifications)\b"
)
_A_THING_IS_BACK: Final = re.compile(  # «fridge back at 37», «its back at 225» tell what a thermometer shows
    r"\b(?:fridge|freezer|pit|smoker|grill|temps?|temperature|core|brine|power|electric(?:ity)?|current|its|it is|it)"
    r" (?:(?:is|was|now|are|already|came|comes|come|went|has|only) )*back\b|\bback at (?:2[5-9]|[3-9]\d|\d{3})\b"
    r"|\bcame back\b"
)
_ONLY_TROUBLE: Final = re.compile(
    r"\b(?:wake|text|ping|call|message|buzz|bother) (?:me |us )?only (?:if|when|for)\b"
    r"|\bonly (?:text|message|ping|buzz|call|tell|write|bother|wake)(?:ing)? (?:me |us )?(?:if|when) (?:somethings?"
    r"|anything"
    r"|theres|there is|it|its)\b|\bonly (?:the )?(?:important|safety|urgent) (?:ones|stuff|things|messages|pings)\b"
)
_BACK_AT: Final = re.compile(
    r"\b(?:back|home) (?:(?:at|by|around|round|about|after) |(?=[mtwfs]\w+day\b|tomorrow|tonight))"
)
_FROM_TO: Final = re.compile(r"(\bfrom \d[\d:.]*(?: ?[ap]m)?) (?:to|-) (?=\d)")
_NEXT_WEEK: Final = re.compile(r"\bnext week\b(?!.*\b(?:until|till?|from)\b)")
_WEEKEND: Final = re.compile(r"\b(?:the|this) weekend\b(?!.*\b(?:until|till?|from)\b)")
_DAY: Final = r"(?:mon|tues?|wed|thu(?:rs)?|fri|sat|sun)[a-z]*"
_ONE_DAY: Final = re.compile(rf"\b(?:{_DAY}|tomorrow)\b")
_TWO_DAYS: Final = re.compile(rf"\b({_DAY}) (?:and|&|n) ({_DAY})\b")
_TO_BED: Final = re.compile(r"\b(?:bed|sleep|asleep|night|tonight)\b")
_THROWN: Final = re.compile(
    r"^(?:(?:forget|scrap|drop|never ?mind|no more)(?: (?:it|about it|about|the \w+|that))?,? )?"
    r"(?:(?:i|we|just|had to|ive|sorry|it|its|is|was|got|has|been) )*(?:chucked|binned|threw|thrown|tossed|dumped)"
    r"(?: (?:away|out))?(?: (?:it|them|the (?:meat|lot|batch|bacon|ham|belly|flat|point|brisket|pastrami|turkey|chicken"
    r"|duck|loin|salmon|trout|fish|pork))\b|$)"  # its name may have stood in front
    r"(?! (?:in|into|on|onto|with) (?!the (?:bin|trash|rubbish|garbage)\b))(?!.*\d)"
)
_FROM: Final = re.compile(
    r"^.*\b(?=(?:until|till?|to) (?:\d|mon|tue|wed|thu|fri|sat|sun|next|tom|the)\w*\b[^\d]*"
    r"(?:\d{1,2}(?:[:.][0-5]\d)? ?(?:[ap]m)?[^\d]*)?$)"
)
_PART: Final = re.compile(r"\b(?:morning|noon|lunch(?:time)?|afternoon|evening|night)\b")
_NO_END: Final = re.compile(  # «gone from thursday»: till when is not said
    rf"\b(?:away|gone|off|out|leaving|travell?ing|not (?:home|here)) (?:from|as of|starting|from next) (?:{_DAY}"
    rf"|tomorrow)"
    r"(?: (?:morning|lunchtime|noon|afternoon|evening|night|on|onwards?))*$"
)
_UNTIL_HOUR: Final = re.compile(r"\b(?:until|till?) (?:[^,;]*\d|tonight)")  # «not home till 9 tonight»
_UNTIL_DAY: Final = re.compile(
    r"\b(?:until|till?) (?:next |on )?(?:mon|tue|wed|thu|fri|sat|sun|tom)\w*(?: (?:morning|noon|midday|lunch|afternoon"
    r"|evening|night))?(?=,)"
)
_FOR_SPAN: Final = re.compile(
    r"\bfor (?:about |around )?(?:an?|\d{1,2}|a couple of|a few)\b ?(?:days?|nights?|weeks?|wks?)\b"
)
_SATURDAY: Final = 5  # of a week that begins on Monday with 0
_BACK: Final = 9  # o'clock: when people are back in the morning; habit, no source
_A_DAY: Final = timedelta(days=1)
_AHEAD: Final = timedelta(hours=12)  # a day that begins later is not today
_FOR_TODAY: Final = re.compile(
    r"\b(?:for |the rest of )?(?:the )?(?:today|tonight|day)(?: please| pls| thanks| thx| ok)*$"
)
_NOBODY_FLIPS: Final = re.compile(  # «no flips till wednesday», «nobody home to flip until wed»
    r"^(?:(?:sorry|ok|so|there will be|therell be|i|we|theres) )*(?:no (?:flips?|flipping|turns)"
    r"|(?:nobody|no one|noone)(?: (?:can|is|will|here|home|at|around|able|be|there|to))* (?:flip|turn)(?: it| them)?"
    r"|(?:cant|cannot|wont(?: be able to)?|not able to|unable to) (?:flip|turn)(?: it| them)?) (?=(?:until|till?) )"
)
_RESUME: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|hi|hey|hello|right) )*(?:(?:ich )?bin (?:wieder )?(?:da|zurück|daheim)|(?:im|i am|were"
    r"|we are) (?:back|home|here)(?: again| now)?(?: (?:carry|go) on)?"
    r"(?! (?:at|by|around|about|after|before) (?:\d|noon|mid|half))"
    r"|(?:bin )?(?:back|here|there)(?: again| now)|back(?: home)?(?: early| earlier| sooner| already| at it)?$|resume"
    r"|(?:im |i am )?(?:free|available|around) (?:again|now)"
    r"|back from (?:holiday|vacation|our|my|the)\b.*|unpause|unmute|carry on|continue|weiter|go on"
    r"|(?:start|send|turn|switch)(?: (?:me|on|up))* (?:the |your |my )?(?:reminders|messages|pings|texts"
    r"|notifications)(?: back| on| again)+)\b"
)
_CANCEL: Final = re.compile(
    r"^(?:(?:please|pls|ok|lets|nah|no|oh|ah|actually|sorry|(?:forget|scrap) (?:it|that|this)),? )*"
    r"(?:/?cancel|abort|stop|end|drop|kill|delete|abbrechen|give up on|bin"
    r"|forget(?: about(?=$))?|scrap|ditch|call off)(?: (?:it"
    r"|this|that|the|my|batch|cook|cure|whole thing|whole lot|everything|all|plan|brisket|pastrami|meat|one|please|pls"
    r"|now))*"
    r"(?:,? (?:because )?(?:it|its|it has|that|meat|meats)?(?: is| has| went| gone| is all)* ?"
    r"(?:bad|gone off|off|spoiled|rotten|ruined|went off))?"
    r"(?:(?<!forget)(?<!forget it)(?<!forget that)(?<!forget this),? (?:because |since )?(?:the |my "
    r"|our )?(?:dogs?|cats?|fox|raccoons?|kids?)"
    r" (?:has |have |just )?(?:got|ate|had|stole|took)\b[^\d?]*)?(?:,? (?:and |n )?start (?:over|again|afresh|fresh))?$"
)
_ONE_OF_TWO: Final = re.compile(
    r"^(?:(?:please|ok|lets) )*(?:forget|cancel|drop|scrap|ditch|kill|stop)(?: about)?"
    r"(?: the| my)? (?P<one>(?!that\b|it\b|this\b)[a-z]+),?"
    r"(?: and| but)? (?:just )?(?:keep|carry on with|go on with|only)(?: with)? (?:the |my )?[a-z]+$"
)


def read_one_of_two(text: str, context: Context) -> Intent | None:
    """«forget the bacon keep the brisket»: the first is dropped; where none is called so, what is under way."""
    found = _ONE_OF_TWO.match(text.strip(" .!")) if context.phase != "none" else None
    if found is None:
        return _given_up(text, context)
    named = next((batch for batch, name in context.batches if name.lower() == found["one"]), None)
    return Ask("batches", text=text) if named is None else Cancel(named)


_GIVEN_UP: Final = re.compile(
    r"^(?:(?:please|ok|so|lets|we|well) )*(?:forget|scrap|drop|ditch|cancel|skip)"
    r"(?: about)?(?: (?:the|my|our|this|that))?(?: (?P<one>[a-z]+))?,? (?:(?:im|i am|we are|were) )?"
    r"not (?:doing|making|having|cooking)(?: it| that| this| one)?(?: any ?more| now| after all)?$"
)


def _given_up(text: str, context: Context) -> Intent | None:
    """«forget the salmon not doing it»: that batch, or the one under way, is given up."""
    found = _GIVEN_UP.match(text.strip(" .!")) if context.phase != "none" else None
    if found is None:
        return None
    return Cancel(next((batch for batch, name in context.batches if name.lower() == found["one"]), None))


def read_pause(text: str, context: Context) -> Intent | None:
    """A talk paused or taken up again, handed over, or a batch given up."""
    if _RESUME.search(text):
        return Resume()
    if fridge := fridge_is_back(text, context):
        return Unclear("word", text[:SHOWN], (fridge, _between(_BACK_AT.sub("until ", text), context)))
    if _CANCEL.search(" ".join(without(text).split())) and not re.search(r"\b(?:number|reading|temp)\b", text):
        return Cancel()
    if _THROWN.match(text):
        return Cancel()
    if _NOBODY_FLIPS.match(text) and (day := when.future(text, context)) and day.day_said and not day.hour_said:
        return Pause(day.at)
    if _ONLY_TROUBLE.search(text):
        night = when.future("tomorrow 7am", context) if _TO_BED.search(text) else None
        return Pause(night.at if night else None)
    if (
        (_PAUSE.search(_A_THING_IS_BACK.sub(" ", text)) or AWAY_IN.search(text))
        and not wakes(text)
        and not _FIRE.search(text)
    ):
        until = _FROM_TO.sub(r"\1 until ", _BACK_AT.sub("until ", text))
        if _NO_END.search(until):
            return Unclear("away_until", text[:SHOWN])
        if _NEXT_WEEK.search(until):
            return _the_week(context)
        if _WEEKEND.search(until):
            return _the_weekend(context)
        if both := _TWO_DAYS.search(until):
            last = when.future(both[2], context)
            return Pause(
                last.at + timedelta(days=1) if last else None, since=_since(f"{both[1]} until {both[2]}", last, context)
            )
        until = until if _UNTIL_HOUR.search(until) else _FOR_TODAY.sub("until tomorrow", until)
        if for_days := _for_days(until, context):
            return for_days
        ends = _UNTIL_DAY.search(until)  # what is said behind it is no span: «my sister looks in once a day»
        until = until[: ends.end()] if ends else until
        return _between(until, context)
    return read_hand_over(text, context)


def _between(text: str, context: Context) -> Pause:
    """«away thursday until sunday»; of «away tuesday until monday» that monday is the one after the tuesday.

    «gone fri to sun», said on a Friday, is from now on.
    """
    first, rest = _FROM.match(text), _FROM.sub("", text)
    until = when.future(rest, context)
    if until and not until.day_said and first and (day := _ONE_DAY.search(first[0])):  # «away friday till 4»
        until = when.future(f"{day[0]} {rest}", context)
    begins = when.future(first[0], context) if first and until and until.day_said else None
    if until and begins and begins.day_said and begins.at > until.at and not _is_today(begins, text, context):
        local = until.at.astimezone(ZoneInfo(context.zone)).replace(tzinfo=None) + timedelta(days=7)
        until = replace(until, at=local.replace(tzinfo=ZoneInfo(context.zone)).astimezone(UTC))
    if until and until.hour_said and until.at <= context.now < until.at + _A_DAY:  # «tonight till midnight»
        until = replace(until, at=until.at + _A_DAY)
    return Pause(until.at if until else None, since=_since(text, until, context))


def busy_until(text: str, context: Context) -> Pause:
    """«on a plane til 9»; «at the theatre on tuesday evening until 11» is from that evening on, and not from now."""
    until = when.future(text, context)
    begins = when.future(re.split(r" (?:un)?till? ", text)[0], context)
    later = until and begins and begins.day_said and context.now + _AHEAD < begins.at < until.at
    return Pause(until.at if until else None, since=begins.at if later and begins else None)


def _the_week(context: Context) -> Pause:
    """«on holiday next week»: from its Monday to the one after, on the calendar."""
    now = context.now.astimezone(ZoneInfo(context.zone))
    monday = (now + timedelta(days=7 - now.weekday())).replace(hour=0, minute=0, second=0, microsecond=0)
    return Pause((monday + timedelta(days=7)).astimezone(UTC), since=monday.astimezone(UTC))


def _the_weekend(context: Context) -> Pause:
    """«gone for the weekend»: from its Saturday, or from now if it is Friday or later, to the Monday morning."""
    now = context.now.astimezone(ZoneInfo(context.zone))
    midnight = now.replace(hour=0, minute=0, second=0, microsecond=0)
    monday = (midnight + timedelta(days=7 - now.weekday())).replace(hour=_BACK)
    saturday = midnight + timedelta(days=_SATURDAY - now.weekday())
    return Pause(monday.astimezone(UTC), since=saturday.astimezone(UTC) if now.weekday() < _SATURDAY - 1 else None)


def _is_today(begins: when.When, text: str, context: Context) -> bool:
    """Whether a day that was named without «next», and read as that of the next week, is the day of today."""
    zone = ZoneInfo(context.zone)
    weekdays = begins.at.astimezone(zone).weekday(), context.now.astimezone(zone).weekday()
    return weekdays[0] == weekdays[1] and not re.search(r"\bnext\b", text)


def _for_days(text: str, context: Context) -> Pause | None:
    """«away from thursday for a week»: from the morning of that day, for as long as it is said."""
    lasts = _FOR_SPAN.search(text)
    length = spans.span(lasts[0].replace("night", "day")) if lasts else None
    first = when.future(_FOR_SPAN.sub(" ", text), context) if length else None
    if length is None or first is None or not first.day_said or first.at <= context.now:
        return None
    local = first.at.astimezone(ZoneInfo(context.zone))
    begins = first.at if first.hour_said else local.replace(hour=0, minute=0).astimezone(UTC)
    return Pause(begins + length, since=begins if begins > context.now else None)


def _since(text: str, until: when.When | None, context: Context) -> datetime | None:
    """The day from which somebody is away, «wed till fri», where it lies ahead and before the end."""
    first = _FROM.match(text)
    said = when.future(first[0], context) if first and until else None
    if said is None or until is None or not said.day_said or not context.now + _AHEAD < said.at < until.at:
        return None
    local = said.at.astimezone(ZoneInfo(context.zone))
    told = said.hour_said or bool(first and _PART.search(first[0]))  # «from friday night»
    return said.at if told else local.replace(hour=0, minute=0).astimezone(UTC)
