"""What was called for, put off: «later», «in 20 min», «remind me at 9», «after work, round 6»."""

from datetime import timedelta
from typing import Final

from bot.intents import spans, when
from bot.intents.context import HOT, Context
from bot.intents.deeds import DEEDS, called, noun
from bot.intents.intents import Ask, MoveDeadline, Snooze, Unclear
from bot.intents.small import content, words
from core import patterns as re
from core.plan.steps import Kind

_LATER: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|sure|yes|no|maybe|please|pls|do it|ill do it|will do|wait|just|still|sorry|i|we"
    r"|it|its|bag|meat|the) )*"
    r"(?:in a (?:mo|jiffy|few)|on my way|almost there|later|not now|not yet|snooze|busy|in a (?:bit|while|sec|minute"
    r"|moment)|one sec|soon|hold (?:on|off)"
    r"|remind me (?:later|again)|"
    r"give me a (?:bit|sec|minute|moment)|cant (?:(?:do|flip"
    r"|turn) (?:it )?)?(?:right )?now"
    r"|not (?:(?:done|flipped|turned|rinsed|lit"
    r"|wrapped|started|begun|home|there) )?yet|havent (?:done|flipped|rinsed"
    r"|wrapped)\b.{0,20}(?:yet)?|(?:havent|hasnt|didnt|did not|have not|has not|wasnt|isnt)\b[^\d,;]{0,24}\byet)\b"
)
_PUT_OFF: Final = re.compile(
    r"\b(?:remind|ping|ask|tell|nudge|wake|try|message|text) me\b|\b(?:ask|remind|try|ping|check) again\b"
    r"|^(?:(?:ok|sure|yes) )*(?:gimme|give (?:me|it)|need) (?:another |about )?"
    r"(?:half (?:an? )?|an? |\d{1,3} ?)(?:h|m)\w*\b"
    r"|^(?:i )?(?:wont|not|cant) (?:be )?(?:home|back|in|there|free)? ?(?:un)?till? \d|(?:\b(?:ill|i will|we will"
    r"|going to|gonna|well)|^(?:ok |yes |sure )?will) (?:do"
    r"|flip|rinse|light"
    r"|wrap|turn|slice (?:(?:it|them|the \w+) )?(?:tomorrow|tonight|at \d|in the morning)"
    r"|be(?! late| (?:for )?(?:hot|cold|warm|pulled|thin)\b)|start|get"
    r"|check)\b"
    r"|\b(?:put|hold)(?:t?ing)? (?:it|that|this|them|the \w+) off\b(?! (?:the )?(?:heat|fire|grill|smoker|pit)\b)"
    r"|\bput(?:ting)? off (?:it|that|this|the \w+)\b"
    r"|\b(?:give me|wait) (?:un)?til\b|^(?:(?:ill|gonna|going to|im|we are|were|will|lets) )*"
    r"(?:flip|turn|rins|light|wrapp?|slic)(?:e|p?ing)? (?:(?:it|them|up|the (?:fire|coals?|charcoal|smoker|grill|bags?"
    r"|meat)) )*(?:at|in (?=\d|an? |half)"
    r"|later|tomorrow)\b|\bsnooze\b"
    r"|\bnext (?:one|reading|check|look) (?:in|at)\b"
    r"|\berinner mich\b"
)
_TO_DO: Final = re.compile(
    r"\b(?:remind|ping|nudge|text|message|buzz|call|tell) me\b(?! when| once| if| how)[^?]*?\bto (?P<what>[a-z][^?]*)$"
)
_OF_ANY_STEP: Final = words(
    """
    take pull put start check read look send weigh mix make move turn stop add begin pack bag dry season cook smoke
    cool chill cut carve eat serve remind flipping bags bag coals charcoal smoker middle
    """
)
_AT_ITS_HOUR: Final = re.compile(  # «wake me when its time for the fire»: at the hour of the plan
    r"\b(?:when|once|as soon as) (?:its |it is |the |i |we |it )*"
    r"(?:time|due|hour|(?:have|need|got|gotta|should|must)(?: to)?|(?=done\b|ready\b|finished\b))"
)
_DONE: Final = re.compile(r"^ ?(?:done|ready|finished)\b")
_SOME_TIME: Final = re.compile(
    r"\b(?:after|before|when|once|morning|evening|tonight|tomorrow|night|lunch|dinner|work|weekend|later on"
    r"|until|till?)\b"
)
_ON_A_DAY: Final = re.compile(  # «do the salt on monday»
    r"^(?:(?:ill|i|we|will|lets|gonna|can we|can i|please|just) )*(?:do|weigh|make|start) the [a-z]+(?: (?:on|for"
    r"|this|next))? "
    r"(?:tomorrow|tonight|mon|tue|wed|thu|fri|sat|sun)[a-z]*(?: (?:morning|evening|night|instead|then))*$"
)
_AN_EVENT: Final = re.compile(  # «not yet, after dinner»: its hour is not told
    r"^[^\d?]*?,? (?:after|when|once|before|as soon as) "
    r"(?!(?:do|should|shall|can|is|will|to|the flip|that|now)\b)[^\d?]+$"
)
_UNTIL: Final = re.compile(r"\b(?:til|till|until|start|begin|do it|starting) (?!yet)")
_AT_LAST: Final = re.compile(r"\bat \d{1,2}:\d\d$")
_NEVER: Final = re.compile(r"\b(?:dont|do not|stop|never|only|no more)\b")
_NOT_THEN: Final = re.compile(
    r",? (?:and )?(?:(?:not|instead of|rather than) (?:at )?\d{1,2}(?::\d\d)? ?(?:am|pm)?|instead)$"
)
_GIVE_ME: Final = re.compile(
    r"\b(?:give me|need|gimme|gib mir|snooze|wait) (?:another "
    r"|for )?(?P<minutes>\d{1,3})(?: more)?(?:$|(?<!^need \d)(?<!^need \d\d) (?:im|on|still|just|busy|got"
    r"|kids?)\b[^\d?]*$)"
)
_HOUR_LAST: Final = re.compile(  # «ask me after the school run 330», «not now, kids bath half 8»
    r"(?<!at )(?<!til )(?<!till )(?<!until )(?<!\d )\b(?P<h>1[0-2]|[1-9])[:.]?(?P<m>[0-5]\d)(?: oclock)?$"
)
_NOT_FOR: Final = re.compile(  # «cant get out there for an hour»
    r"^(?:(?:i|we|sorry|im) )*(?:cant|wont|not able to)\b[^\d,;?]{0,28}(?<!wait) for (?=half|an? |another"
    r"|\d{1,3} ?[mh])"
)
_SOAKING: Final = re.compile(r"^(?:(?:its|im|now|just|still|it) )*soaking (?:(?:it|them|now) )*for (?=\d|an?\b|half)")
_SOAK_ON: Final = re.compile(  # «soak another hour then», once it is out: what comes after the soak waits so long
    r"\bsoak(?:ing)? (?:it |them |the \w+ )?(?:on )?(?:for )?"
    r"(?:(?:another|one more|a further|an extra) (?P<more>half(?: an)? (?:h|hr|hour)|(?:h|hr|hour)\b|\d{1,3} ?\w+)"
    r"|(?P<longer>(?:an?|\d{1,3}(?:\.\d)?|half an) ?(?:h|hrs?|hours?|m?mins?|minutes?)) (?:more|longer))\b"
)
_IN_MINUTES: Final = re.compile(
    r"^(?:(?:ok|ill|be|do|doing|flip|flipping|turning|rinsing|wrapping|back|home|ready|there|it|them"
    r"|that) )*in (?P<minutes>\d{1,3})$"
)
_DEED_IN: Final = re.compile(  # «meat goes in in 20», «fire on in 15»: it is still to be done
    r"\b(?:go(?:es|ing)?|in|on|off|lit|light\w*|flipp?\w*|turn\w*|start\w*) in (?P<many>\d{1,2}|\d{3}(?= ?[mh]))(?: ?"
    r"(?P<unit>m|mins?|minutes?|h|hrs?"
    r"|hours?))?$"
)
_DOING_IN: Final = re.compile(
    r"^(?:(?:ok|im|we are|just) )*(?:flipping|turning|doing|rinsing|wrapping) (?:it |them |that )?in (?=\d|an?\b|half)"
)
_SPAN_ONLY: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|brb|in|give|gimme|me|need|another|about|for|snooze|sure|yes|yeah|pls|please|wait|later"
    r"|like|noch|still"
    r"|ca|back) ?)*"
    r"(?:half (?:an |a )?(?:hour|hr)|(?:an?|\d{1,3}(?:\.\d)?) ?(?:more )?(?:m?mins?|minutes?|minuten|h|hrs?|hours?"
    r"|stunden?|days?"
    r"|tage?))(?: (?:please|pls|more|ok|later|then))*$"
)
# «the fish goes in the brine in 2 hours»: of what is still to come, however it is told
_STILL_TO_COME: Final = re.compile(
    r"^(?!.*\b(?:been|was|were|went|since|already|ago)\b).*\b(?:goes|going|puts|putting|takes|taking|comes|coming|pulls"
    r"|pulling|wraps|wrapping|lights|lighting|slices|slicing)\b.*\b"
    r"(?:in (?:about |another )?(?:half an?|an?|\d{1,3}(?:\.\d)?) ?(?:h|hrs?|hours?|m?mins?|minutes?)$"
    r"|(?P<hour>(?:at|around|about) \d{1,2}(?:[:.]\d\d)? ?(?:am|pm)?(?: tonight| today| tomorrow)?$)"
    r"|(?P<part>(?<!\d )(?<!am )(?<!pm )(?:tonight|later(?: today| tonight)?|this evening"
    r"|tomorrow(?: morning| evening)?|in the morning)$))"
)
_NOT_BEFORE: Final = re.compile(  # «running late, meat wont be on til 8:15», «not lighting it til 8»
    r"(?:^|[,;] ?|\b(?:late|so|and|but|sorry) )(?:the |my )?(?:(?:(?P<fire>fire|coals?|charcoal|smoker|pit|grill)"
    r"|meat|it|bird|fish|(?:bris)?ket|ham|belly|bacon|flat) (?:(?:wont|isnt|not|going|is|will|be|go|get|goes|only) )+"
    r"(?P<deed>on|in|lit)|(?:i |we )?(?:wont|cant|not|will not) (?:be )?(?P<does>light|put)(?:t?ing)? "
    r"(?:(?:it|the \w+|meat) )*(?:on )?)(?: |(?<= ))(?:till?|until|before|at) (?P<when>[^,;?]*\d[^,;?]*)$"
)
_NOT_THAT_DAY: Final = re.compile(r",? (?:and )?(?:not (?:now|today|tonight|tomorrow|later|\w{3,6}day)|instead)$")
_PUT_IN_LATER: Final = re.compile(  # «gonna put it in tomorrow am instead»
    r"^(?:(?:ill|i|we|well|will|gonna|going to|im|were|have to) )+(?:put|stick|pop|get|drop|chuck)(?:ting)?"
    r" (?:it|them|the \w+) in(?:to)?(?: the (?:brine|bag|cure|tub|bucket))?"
    r" (?=(?:tomorrow|tonight|later|at \d|in the (?:morning|evening)|(?:on )?(?:mon|tue|wed|thu|fri|sat|sun)))"
)
_AHEAD: Final = timedelta(hours=12)
_UNDER_WAY: Final = re.compile(r"\b(?:taking|pulling|putting|wrapping|lighting|slicing) (?:it|them|the \w+)\b")
_NO_WRAP: Final = re.compile(
    r"\b(?:not|wont|never) (?:be |going to |gonna )?wrap"
    r"|\bwrap (?:(?:it|them|the \w+) )?(?:in|with) (?:the )?(?:foil|(?:butcher ?)?paper|tin ?foil)"
    r"(?! (?:at|in|later|tomorrow|tonight|once|when|after)\b)"
)  # how it is cooked, and no while
_JUST_NOW: Final = timedelta(hours=1)  # «taking it off at 6», said at ten, is no deed of the morning
_A_SPAN: Final = re.compile(r"(?:an?|\d{1,3}(?:\.\d)?) ?(?:h|hrs?|hours?|mins?|minutes?|days?|weeks?)")
_LONG: Final = timedelta(hours=1)  # «2 hours» beside the fire may be how long it took, or the meal


def read_put_off(text: str, context: Context) -> Snooze | Unclear | None:
    """A step put off, where a plain text says so; a time that nobody can read is asked for."""
    if _NO_WRAP.search(text):
        return None
    if _PUT_OFF.search(text) or (_LATER.search(text) and context.phase not in HOT):  # there it may be the core
        text = _HOUR_LAST.sub(r"at \g<h>:\g<m>", text)
    if soon := _so_long(text, context):
        return soon
    if _SPAN_ONLY.search(text) or _DOING_IN.search(text) or _SOAKING.search(text):
        by = spans.span(text)
        days = (
            by is not None and by.days and (not context.due_step or _A_SPAN.fullmatch(text))
        )  # a day more in the cure, or the meal a day later
        hours = by is not None and by >= _LONG and _A_SPAN.fullmatch(text) and context.phase in HOT
        if by and context.phase != "none" and (days or hours):
            return Unclear("word", text[:60], (Ask("since"), Snooze(by=by), MoveDeadline(by=by)))
        return Snooze(by=by)
    if context.phase == "drying" and (on := _SOAK_ON.search(text)):
        said = on["longer"] or on["more"]
        return Snooze(by=spans.span(f"1 {said}" if said[0] == "h" and said[:4] != "half" else said), step=str(Kind.DRY))
    if context.phase == "waiting" and _PUT_IN_LATER.match(text) and (said := when.future(text, context)):
        return Snooze(until=said.at, step=str(Kind.INTO_CURE))
    if later := _still_to_come(text, context):
        return later
    if other := _no_step(text):
        return Unclear("no_step", other[:60])
    if _PUT_OFF.search(text) and not _NEVER.search(text):
        if (hour_of := _AT_ITS_HOUR.search(text)) and (step := _named(text[hour_of.end() :], context)):
            return Snooze(step=step)
        text = _NOT_THEN.sub("", text)
        said = when.future(text, context)
        by = spans.span(text) if said and not said.hour_said and not said.day_said else None
        if _SOME_TIME.search(text) and (said is None or _is_over(said, text, context)):
            return Unclear("until", text[:60], (Snooze(step=noun(text)),))
        return Snooze(until=said.at if said and not by else None, by=by, step=called(text, context))
    if _LATER.search(text):
        by = spans.span(text)
        said = when.future(text, context) if not by and (_UNTIL.search(text) or _AT_LAST.search(text)) else None
        return Snooze(until=said.at if said else None, by=by, step=_deed(text, context) or noun(text))
    return None


def _so_long(text: str, context: Context) -> Snooze | None:
    """«gimme 45», «meat goes on in 20», «cant get out there for an hour»."""
    if _NOT_FOR.search(text) and (by := spans.span(text)):
        return Snooze(by=by)
    if minutes := _GIVE_ME.search(text) or _IN_MINUTES.search(text):
        return Snooze(by=timedelta(minutes=int(minutes["minutes"])))
    if soon := _DEED_IN.search(text):
        unit = "min" if (soon["unit"] or "m").startswith("m") else "h"
        return Snooze(by=spans.span(f"{soon['many']} {unit}"), step=_deed(text[: soon.start("many")], context))
    return None


def _is_over(said: when.When, text: str, context: Context) -> bool:
    """«after dinner», said at eight in the evening: not after that of tomorrow."""
    told = said.hour_said or said.day_said
    return " after " in text and not told and said.at - context.now > _AHEAD


def _no_step(text: str) -> str:
    """What somebody wants to be reminded of that is none of the plan's steps: «to spritz», «to buy wood»; else ""."""
    found = _TO_DO.search(text)
    what = when.without_times(found["what"]).strip(" ,.") if found else ""
    own = set(content(what)) - _OF_ANY_STEP
    return (
        re.sub(r"(?: (?:on|at|in|by|the))+$", "", " ".join(what.split()))
        if own and not (noun(what) or any(DEEDS.hits(what)))
        else ""
    )


def read_after(text: str, context: Context) -> Snooze | Unclear | None:
    """Not now, but after something of which nobody knows the hour: that is asked for; a step on a day that is named."""
    if (told := _not_before(text, context)) is not None:
        return told
    step = called(text, context) if context.phase != "none" and _ON_A_DAY.match(text) else None
    if step and (said := when.future(text, context)) and said.day_said:
        return Snooze(until=said.at, step=step)
    if context.phase == "none" or not _AN_EVENT.match(text) or not _LATER.match(text):
        return None
    return Unclear("until", text[:60], (Snooze(step=_deed(text, context) or noun(text)),))


def _not_before(text: str, context: Context) -> Snooze | None:
    """A deed of the next hours that is not done before an hour: its step waits, and nobody is away."""
    found = _NOT_BEFORE.search(text) if context.phase in ("waiting", "drying") else None
    said = when.future(f"at {found['when']}", context) if found else None
    if found is None or said is None or not said.hour_said:
        return None
    if found["deed"] == "in":
        return Snooze(until=said.at, step=str(Kind.INTO_CURE)) if context.phase == "waiting" else None
    lights = found["fire"] or found["deed"] == "lit" or found["does"] == "light"
    return Snooze(until=said.at, step=str(Kind.LIGHT if lights else Kind.MEAT_ON))


def _named(text: str, context: Context) -> str | None:
    """The step that is to be called for at its own hour, by its noun or its deed; what is done is off the fire."""
    if context.phase == "cooking" and _DONE.search(text):
        return str(Kind.OFF)
    return noun(text) or _deed(text, context)


def _still_to_come(text: str, context: Context) -> Snooze | None:
    """A deed that is told as one of the next hours; at an hour that was nearer a while ago, it is done."""
    text = _NOT_THAT_DAY.sub("", text)
    told, step = _STILL_TO_COME.search(text), _deed(text, context)
    if not told or not step:
        return None
    if told["part"]:
        said = when.future(told["part"], context)
        return Snooze(until=said.at if said else None, step=step)
    if not told["hour"]:
        return Snooze(by=spans.span(text), step=step)
    ahead, gone = when.future(text, context), when.past(text, context)
    if ahead and told["hour"].endswith(("tonight", "today", "tomorrow")):
        return Snooze(until=ahead.at, step=step)
    if not ahead or ahead.at - context.now > _AHEAD:
        return None
    since, until = (context.now - gone.at if gone else _AHEAD), ahead.at - context.now
    if since < (min(until, _JUST_NOW) if _UNDER_WAY.search(text) else until):
        return None
    return Snooze(until=ahead.at, step=step)


def _deed(text: str, context: Context) -> str | None:
    return next((str(kind) for _, kind in DEEDS.hits(text)), None)
