"""Who else has a batch: invited, come, gone; and who answers for what from when."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from bot.intents import spans, when
from bot.intents.away_hours import hours_in
from bot.intents.context import Context
from bot.intents.days import WEEKDAYS
from bot.intents.intents import Ask, HandOver, Intent, Invite, Join, Leave
from bot.intents.small import words
from core import patterns as re

_INVITE: Final = re.compile(
    r"^/?(?:invite|invitation|share)(?: (?:link|code|this|it|the (?:batch|cook"
    r"|plan)))*(?: with)?(?: (?:my )?(?P<who>[^\W\d_]{2,20}))?"
    r"(?: (?:to|in|into) (?:this|the|it).*)?$"
    r"|^(?:add|let) (?:my )?(?P<added>[^\W\d_]{2,20}) (?:to|in|into|join|in on)\b(?: (?:this|the|it).*)?$"
    r"|^add (?:my (?P<kin>[^\W\d_]{2,20})|(?P<kind>mum|mom|dad|mother|father|wife|husband|partner|brother|sister|son"
    r"|daughter))$"
    r"|^(?:please )?(?:ping|tell|message|remind|call|text|buzz) (?!me\b|us\b|both\b|them\b|him\b|her\b|again\b)(?:my )?"
    r"(?P<pinged>[^\W\d_]{2,20}) (?:too|as well|also)$"
    r"|^(?:send|show|tell|give) (?:these|this|them|it|all|everything|the messages|reminders|the plan) (?:all )?"
    r"(?:to|with) (?:my )?(?P<also>[^\W\d_]{2,20})(?: (?:too|as well|also))?$"
    r"|^(?:ping|tell|message|remind|call|text|buzz) (?:both(?: of us)?|us both|us all|all of us|the (?:both"
    r"|two) of us)\b.*"
    r"|^how (?:do|can) (?:i|we) (?:share|invite|add)\b.*"
)
_MAY_I: Final = re.compile(r"^(?:can|could|may) (?:i|we) (?:please |also )?(?=(?:share|invite|add)\b)")
_SEVERAL: Final = re.compile(
    r"^(?:can|could|may) (?:the )?(?:2|both|several|3|we all|all) (?:of us )?(?:use|share|get|have|see"
    r"|run) (?:this|it|the \w+)(?: together)?$"
    r"|^(?:\w+ and \w+ here,? )?(?:we|us) (?:both|2|all) (?:want|need|get|would like) the (?:reminders|messages"
    r"|pings|calls)$"
)
_JOIN: Final = re.compile(r"^/?(?:start|join|beitreten) (?:join[-_ ])?(?P<code>[2-9a-hjkmnp-z]{10})$")
_JOIN_AMISS: Final = re.compile(
    r"^/?(?:join|beitreten)(?: (?=[\w-]*\d)[\w-]{4,20})?$"
)  # no code, or one with a slip in it
_PART_OF_DAY: Final = re.compile(r"\b(?:tonight|morning|noon|afternoon|evening|night|breakfast|lunch|dinner)\b")
_LEAVE: Final = re.compile(
    r"^/?leave(?: (?:this|the|that)(?: (?:batch|cook|household|group))?)?$"
    r"|^(?:take|count) me (?:off|out)(?: of (?:it|this|the \w+))?$"
)
_WHO: Final = re.compile(
    r"^/?who(?:s| is| are| else is| has)? (?:in|in on (?:it|this)|in this|here|on duty|the fire|the flips"
    r"|(?:weigh|dos|measur|mix|add)(?:es|s|ing)(?: out)?(?: (?:it|the (?:cure|salts?|dose|brine)))?|doing what"
    r"|in charge)"
    r"(?: (?:now|today|tonight|for the \w+))?$"
)
_WHO_THEN: Final = re.compile(  # «my brother says hes doing tomorrow, who has it»
    r"(?:^|[,;.] ?|\b(?:so|but|and) )who(?:s| is| has| does| was| takes| gets)? (?:got |doing |on |having )?"
    r"(?:it|this|that|tomorrow|tonight|today|the (?:fire|flips?|cook|next (?:one|flip|step)))"
    r"(?: (?:now|then|tomorrow|tonight|today|next))?$|^who(?:s|se)(?: is)? (?:turn|up|shift)\b"
)
_KINSFOLK: Final = words(
    "sister brother bro sis mate friend neighbour neighbor cousin uncle aunt auntie son daughter kid husband hubby wife"
    " partner boyfriend girlfriend flatmate father mother dad mum mom gran nan grandad lad boy girl nephew niece buddy"
    " roommate"
)
_KIN: Final = (
    r"(?:my |our |the )?(?:(?:lil|little|big|baby|old|older|younger|best|good|next door)? ?"
    rf"(?:{'|'.join(sorted(_KINSFOLK, key=len, reverse=True))})(?: in law)? (?!in law))?"
)
_NAME: Final = (
    r"(?P<who>(?!(?:will|is|has|can|could|would|to|in)\b)[^\W\d_]{2,20}"
    r"(?: (?!will|is|has|can|and|to|in\b)[^\W\d_]{2,20})?)"
    r"(?: in law)?"
)
_CALLS: Final = r"(?:(?:all|the|my|your) )*(?:reminders|messages|pings|calls|texts)"
_HAND_OVER: Final = re.Rules(
    (re.compile(pattern), None)
    for pattern in (
        rf"^{_KIN}{_NAME} (?:weighs|will weigh|doses|will dose|measures|adds|mixes) (?:out )?(?:the )?(?:cure"
        rf"|salts?|pink salt|dose|brine)\b",
        rf"^{_KIN}{_NAME} (?:takes?|is taking|will take|has|gets"
        r"|looks after|(?:is |s )?looking after|will look after|(?:is |s )?minding|minds|will mind|watches|will watch"
        r"|(?:is |s )?watching|(?:is |s )?(?:keeping|got) an eye on|will have|can take|can have|does|will do"
        r"|(?:is )?doing"
        r"|handles|will handle|is handling|(?:is |s )?(?:going to"
        r"|gonna) (?:do|take"
        r"|have|handle|mind|watch|look after)|makes|will make)"
        r" (?:over|(?:the )?(?:(?:night|late|early|day|morning|evening|next|tonights|todays|tomorrows) )?(?:fire|pit"
        r"|smoker|cook|flips?|flipping|turning|turns|shift|watch)|it|care|them|everything)\b",
        rf"^{_KIN}{_NAME} (?:took|has taken) (?:over|(?:the )?(?:fire|pit|smoker|cook|flips?))\b",
        r"^(?:my )?(?P<who>[^\W\d_]{2,20}?)(?:s| has)? got (?:(?:the |it )?(?:fire|pit|smoker|flips)\b"
        r"|(?:it|this|them|everything)(?: (?:from|until|till?|for|now|today|tonight|tomorrow)\b|$))",
        r"^(?:my )?(?P<who>[^\W\d_]{2,20}?)(?:s| is| will be)"
        r" (?:in charge|on duty|on (?:the )?(?:fire|flips|watch)|responsible|taking over|on it)\b",
        rf"^{_KIN}{_NAME} (?:does|has|takes|gets|covers) (?:on )?"
        r"(?:mon|tue|wed|thu|fri|sat|sun|tomorrow|tonight|today)",
        r"\bhand(?:ing)? (?:(?:it|the \w+) )?over (?:to )?(?:my |our |the )?(?P<who>[^\W\d_]{2,20})?",
        r"^(?:please )?(?:hand|pass|give|leave) (?:it|this|everything|the (?:flips?|fire|pit|smoker|cook|batch|lot))"
        r" (?:over )?to (?:my |our )?"
        r"(?P<who>[^\W\d_]{2,20})(?: (?:now|today|tonight|tomorrow|from .*|for .*|until .*|till? .*))?$",
        r"^(?:please )?(?:remind|ping|tell|call|text|message"
        r"|buzz) (?:my )?(?!me\b)(?P<who>[^\W\d_]{2,20}),? (?:and )?not me$",
        rf"^(?:my )?{_NAME} (?:flips|turns|will (?:flip|turn)|(?:is|will be) (?:flipping|turning))"
        r"(?: (?:it|them|the bags?))?(?: (?:meanwhile|instead|now|today|tonight|tomorrow|(?:on |this |from |until "
        r"|till? )?(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*"
        r"|(?:this |the |next )?week(?:end)?))*$",
        rf"^(?:please )?(?:send |give |switch )?{_CALLS} (?:go )?to (?:my )?(?P<who>[^\W\d_]{{2,20}})"
        r"(?: (?:instead|please|pls|now|from now on|not me))*$",
        r"^(?:text|tell|ping|message|call|ask|buzz|remind) (?!me\b|us\b)(?P<who>[^\W\d_]{2,20}),? (?:and )?not me\b",
        r"^(?:its )?(?P<who>[^\W\d_]{2,20}?)s turn (?:now|tonight|tomorrow|today|from)\b",
        # «flips this week are on my son», «the flips are jos job till sunday»
        r"^(?:the )?(?:flips?|turns|flipping|turning)(?: \w+){0,2} (?:are|is|s) (?:all )?"
        r"(?:(?:on|up to|down to|with) (?:my |our |the )?"
        r"(?!my\b|our\b|the\b|track|time|hold|me\b|you\b|plan|schedule|us\b|a\b|for\b)(?P<who>[^\W\d_]{2,20})"
        r"(?= this| the| tonight| today| tomorrow| un| til| from| for|$)"
        r"|(?:my |our )?(?P<whose>[^\W\d_]{2,20}) (?:job|duty|turn|task)\b)",
        r"^ask (?!me\b|us\b|again\b)(?:my |the )?(?P<who>[^\W\d_]{2,20}) (?:instead|from now on|tomorrow)\b",
        rf"^(?:better )?(?:ask|ping|remind|text) (?:my |the )?(?P<who>{'|'.join(sorted(_KINSFOLK))})$",
    )
)
_TAKES: Final = (
    rf"(?:take over|(?:get|have|do|take) {_CALLS}(?!.* (?:too|also|as well))|do (?:the )?(?:fire|pit|smoker|cook"
    rf"|flips?|turns?|flipping)"
    r"|(?:take|handle|cover|flip|turn|mind|watch|wrap|pull|spritz|light|rinse|read)(?: over)? (?:the )?(?:fire|pit"
    r"|smoker|cook|flips?|turns?|bags?|meat|it|this|them)"
    r"|(?:do|take|cover) (?:it |them )?(?:on |for )?(?:the |this |next )?(?:mon|tue|wed|thu|fri|sat|sun|week|tomorrow"
    r"|tonight|today)\w*)\b"
)
_ASKED_TO: Final = (  # «bo can you do the flips till tuesday», «can you ask bo to flip it tonight»
    re.compile(rf"^(?:hey |ok |so )?{_NAME},? (?:can|could|will|would) you (?:please )?{_TAKES}"),
    re.compile(
        rf"^(?:(?:can|could|will|would) (?:you (?:please )?(?:ask|get|tell|let) )?|(?:ask|get|tell|let) ){_KIN}{_NAME} "
        rf"(?:to |please )?{_TAKES}"
    ),
)
_TOOK: Final = re.compile(r"\b(?:took|has taken) (?:over|it|the)\b")
_GOING_TO: Final = re.compile(
    r"^(?!(?:i|we|im|ill|it|its|that|this)\b)(?:my )?[^\W\d_]{2,20}(?: \w+)? (?:is |s )?(?:going to|gonna|will)\b"
    r"|^(?!(?:i|we|it|that|this|who|he|she|they|nobody|noone|somebody|someone)\b)(?:my )?[^\W\d_]{2,20} does"
    r" (?:it|them|that|the (?:flips?|flipping|turns|rest|lot))(?: then| (?:till|until) \w+)?$"
)
_MYSELF: Final = re.compile(
    r"^(?:im|i am) back on (?:it|duty|the \w+)\b|^(?:(?:ok|i|ive|i have|got|have) )*(?:got|have) it (?:now|from here)$"
    r"|^(?:ok |its )*my (?:turn|watch|shift)(?: now)?$|^(?:ok )?(?:im |i am )?on it now$"
    r"|\b(?:tell|ping|ask|message) me,? not (?:her|him|them|\w+)$"
    r"|^(?:ok |now )*(?:i|ill|i will|i can|i could|let me|im|i am|ive) (?:now )?(?:take|taking|have|got|had|do"
    r"|doing|will do|mind|watch"
    r"|back on)"
    r" (?:over|the fire|the pit|the flips?|back over|it over|it from here|it again)\b"
    r"|^(?:ok |now )*(?:i|ill|i will|let me|i can) (?:do the (?:dose|dosing|weighing|cure)|dose(?: it| this(?: one)?)?)"
    r"(?: (?:today|tonight|please|then|now))*$"
    r"|^(?:i|ill|i will) (?:weigh|dose|measure|mix) (?:out )?(?:the )?(?:cure|salts?|pink salt|brine|dose)\b(?!.*\d)"
)
_UNTIL: Final = re.compile(r"\b(?:until|till?)\b")
_FOR_A_WHILE: Final = re.compile(
    r"\bfor (?:the next |about |another )?(?:\d{1,2}|an?|half an|a couple of|two|three) ?(?:h|hrs?|hours?|min\w*"
    r"|days?)\b"
)
_SPAN: Final = re.compile(r"\b(?:this (?:week|wk|evening)|week ?ends?|tonights?|todays?)\b")
_A_DAY: Final = timedelta(days=1)
_MORNING: Final = 6  # the hour at which a night ends. Common practice
_WEEKDAY: Final = re.compile(r"\b(?:mon|tue|wed|thu|fri|sat|sun)")
_A_DAY_NAMED: Final = "|".join(sorted(WEEKDAYS, key=len, reverse=True))
_FROM_DAY_TO_DAY: Final = re.compile(  # «fri and sat», «mon to wed»
    rf"\b(?P<first>{_A_DAY_NAMED})(?: (?:and|&|to|-|until|till?))? (?:on )?(?P<last>{_A_DAY_NAMED})\b"
)
_SOMEBODY: Final = words("somebody someone anybody anyone everybody everyone else else")
_NOBODY: Final = words(
    "it that this meat brisket fire what how when he she they i we you im ill id wanna gonna want lets let can could"
    " should shall must may might would will please pls to dont do does did not just bot you me us again ok hey so dog"
    " who whos whose which everything nothing dogs cat cats fox raccoon flies ive weve youve theyve hes shes hed shed"
    " no not missed forgot skipped skip both all flip flips the done did"
    " broke broken busted smoker smokers grill grills oven pit"
)
_STUFF: Final = words("garlic salt sugar pepper spices herbs beer wine vinegar water ice wood chunks coals meat")
_TASKS: Final = (
    ("cure", re.compile(r"\b(?:weighs?|doses?|measures?|cure|salts?|mix(?:es)?)\b")),
    ("fire", re.compile(r"\b(?:fire|pit|smoker|grill|cook|wrap|pull|spritz|light)\b")),
    ("flips", re.compile(r"\b(?:flip(?:s|ping)?|fridge|turns|turning|turn (?:it|them|the bags?))\b")),
)


def invitation_in(text: str) -> str | None:
    """The code of an invitation to a batch, where that is all that a line says."""
    found = _JOIN.match(text.strip(" .!\n").lower())
    return found["code"] if found else None


def read_household(text: str, context: Context) -> Intent | None:
    """An invitation, one that is taken, or the question who is in."""
    if joined := _JOIN.match(text.strip(" .!")):
        return Join(joined["code"])
    bare = text.strip(" .!?")
    if _SEVERAL.match(bare):
        return Invite()
    if _JOIN_AMISS.match(bare):
        return Join("")
    if _WHO.match(bare) or ("who" in bare and _WHO_THEN.search(bare)):
        return Ask("who", text=text)
    if context.phase == "none":
        return None
    if invited := _INVITE.match(_MAY_I.sub("", bare)):
        who = next(filter(None, invited.groups()), "")
        return None if who in _STUFF else Invite("" if who in _SOMEBODY else who)  # «can i add garlic to it»
    if _LEAVE.match(bare):
        return Leave()
    return _asked_to(bare, context)


def _asked_to(text: str, context: Context) -> HandOver | None:
    """Somebody who is here is asked to take something over."""
    found = next((hit for words in _ASKED_TO if (hit := words.match(text))), None)
    who = _one_of(found["who"] or "") if found else ""
    if not who or set(who.split()) & (_NOBODY | _SOMEBODY):
        return None
    return HandOver(who, _begins(text, context), _task(text), until=_ends(text, context))


def read_hand_over(text: str, context: Context) -> HandOver | None:
    """Somebody else, or who speaks, answers for something from a time on."""
    if _MYSELF.search(text):
        return HandOver("me", _begins(text, context), _task(text))
    for found, _ in _HAND_OVER.hits(text):
        who = _one_of(found["who"] or found.groupdict().get("whose") or "")
        if not set(who.split()) & _NOBODY:
            to = "" if set(who.split()) & _SOMEBODY else who
            return HandOver(to, _begins(text, context), _task(text), until=_ends(text, context))
    return None


def _begins(text: str, context: Context) -> datetime | None:
    """From when on: «from monday 7:00», said on a monday at eight, is that of next week; «until 9» is no beginning."""
    if _TOOK.search(text):
        return None  # «took over at 12»: they have it now
    if days := _days(text, context) or hours_in(text, context):
        return days[0]
    said = None if _UNTIL.search(text) or _FOR_A_WHILE.search(text) else when.future(text, context)
    if said and said.day_said and not said.hour_said and not _PART_OF_DAY.search(text):  # «tomorrows flips»: all
        whole = said.at.astimezone(ZoneInfo(context.zone)).replace(hour=0, minute=0)
        said = replace(said, at=max(whole.astimezone(UTC), context.now))
    if said is None or said.at > context.now or not said.day_said:
        return said.at if said else None
    local = said.at.astimezone(ZoneInfo(context.zone))
    return (local + 7 * _A_DAY).astimezone(UTC) if _WEEKDAY.search(text) else None


def _days(text: str, context: Context) -> tuple[datetime | None, datetime] | None:
    """«fri and sat»: from the first of the days, or from now if it is that one, to the end of the last."""
    found = _FROM_DAY_TO_DAY.search(text)
    if found is None or re.search(r"\d", text):
        return None
    now = context.now.astimezone(ZoneInfo(context.zone))
    midnight = now.replace(hour=0, minute=0, second=0, microsecond=0)
    first, last = (WEEKDAYS[found[name]] for name in ("first", "last"))
    ahead = (first - now.weekday()) % 7
    end = midnight + (ahead + (last - first) % 7 + 1) * _A_DAY
    return (midnight + ahead * _A_DAY).astimezone(UTC) if ahead else None, end.astimezone(UTC)


def _ends(text: str, context: Context) -> datetime | None:
    """Until when: «til 4», «for the next 2 hours»; None where no end is told."""
    if days := _days(text, context) or hours_in(text, context):
        return days[1]
    if lasts := _FOR_A_WHILE.search(text):
        length = spans.span(lasts[0])
        return context.now + length if length else None
    ends = _UNTIL.search(text)
    said = when.future(text[ends.start() :], context) if ends else None
    return said.at if said else _end_of_span(text, context)


def _end_of_span(text: str, context: Context) -> datetime | None:
    """The end of the week, the weekend, the night or the day that is named, on the calendar."""
    span = _SPAN.search(text)
    if span is None:
        return None
    now = context.now.astimezone(ZoneInfo(context.zone))
    midnight = now.replace(hour=0, minute=0, second=0, microsecond=0)
    match span[0].split()[-1]:
        case "today" | "todays":
            end = midnight + _A_DAY
        case "tonight" | "tonights" | "evening":
            end = (midnight + _A_DAY).replace(hour=_MORNING)
        case _:
            end = midnight + timedelta(days=7 - now.weekday())
    return end.astimezone(UTC)


def _one_of(who: str) -> str:
    """«my sons watching the fire»: the son is, as it is spoken."""
    return who.removesuffix("s") if who.removesuffix("s") in _KINSFOLK else who


def read_somebody_else(text: str, context: Context) -> HandOver | None:
    """«mike is going to do the flips»: somebody who was named answers for it; nothing is put off."""
    handed = read_hand_over(text, context) if _GOING_TO.match(text) else None
    return handed if handed and handed.to not in ("", "me") else None


def _task(text: str) -> str:
    return next((task for task, pattern in _TASKS if pattern.search(text)), "all")
