"""What is told with the reason before it or the hour behind it: «hands full with the kids gimme half an hour»."""

from typing import Final

from bot.intents.rewriting.words import SPAN, rules
from core import patterns as re

_WORDS: Final = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_HOUR_WORD: Final = "|".join(_WORDS)
_MINUTES: Final = {"five": 5, "ten": 10, "twenty": 20, "twentyfive": 25, "5": 5, "10": 10, "20": 20, "25": 25}
_GUESTS: Final = r"(?:in ?laws|guests?|they|theyre|folks|family|everyone|mates|friends|parents|kids)"
_ASK: Final = r"(?:ask|remind|ping|tell|nudge|try|poke|buzz|text|shout at) me(?: again)?"
_MEAL_BY: Final = r"(?:have to|need to|must|got to|gotta|want to|wanna|should) (?:eat|sit down|be eating|serve)(?: it)?"


def _to_or_past(found: re.Match[str]) -> str:
    """«ten to one» by the clock."""
    minutes = _MINUTES[found["m"].replace(" ", "").replace("-", "")]
    hour = _WORDS.index(found["h"]) + 1
    if found["way"] == "past":
        return f"at {hour}:{minutes:02}"
    return f"at {(hour - 2) % 12 + 1}:{60 - minutes:02}"


RULES: Final = rules(
    # the hour, behind what was done
    (rf"(?<![\d:])\b(?:at |about |around )?(?P<m>five|ten|twenty(?:[ -]?five)?|5|10|20|25) (?P<way>to|past) (?P<h>"
     rf"{_HOUR_WORD})(?= (?:today|this|now|ish|just)\b|[,;]|$)", _to_or_past),
    (r"(?<![\d:.])\b(1[0-2]|[1-9])([0-5]\d) ?([ap]m)\b", r"\1:\2 \3"),
    (r"\b(flipped|turned|massaged|rubbed|rinsed|wrapped|swapped|squish|squeeze|massage|rub|turn|flip)((?: it"
     r"| them| over| the bags?)*) (\d{1,2})"
     r" (?=this (?:morning|afternoon|evening)\b)", r"\1\2 at \3 "),
    (r"\b(?:rolled|bundled|swaddled|bandaged|tucked) (it|her|them|the \w+)(?: up)? in (?=(?:some "
     r"|the )?(?:butcher |pink |brown )*"
     r"(?:paper|foil)\b)", r"wrapped \1 in "),
    # a reminder put off, with why
    (rf"^[^\d?]+ (?:gimme|give me|allow me|lemme have) (?:another |like |about |just )?({SPAN})(?: please| pls"
     rf"| more)?$",
     r"remind me in \1"),
    (rf"^(?:[^\d?]*\b)?{_ASK} (?:after|when|once)\b[^\d,;?]*, ?(?:like |about |around "
     rf"|at )?(\d{{1,2}}(?:[:.]\d\d)?(?: ?[ap]m)?)$",
     r"remind me at \1"),
    (r"^\D*\bno(?:thing|thin|ne|t a peep| (?:messages?|pings?|texts?|beeps?|calls?)) before "
     r"(\d{1,2}(?:[:.]\d\d)?)"
     r"(?: ?am| in the morning| oclock)*(?: please| pls| thanks)?$", r"dont text me before \1 am"),
    # the meal
    (rf"^{_GUESTS} (?:are |is |will be |now )*(?:turning up|arriving|coming|here|showing up) (?:early|earlier"
     rf"|late|later|sooner)"
     rf",? (?:and |so )?(?:(?:we|i) )?{_MEAL_BY} ", "dinner "),
    (rf"^(?:(?:we|i) )?{_MEAL_BY} (?=(?:by|at|around|before) \d)", "dinner "),
    # a weight that was read anew; another way to cure
    (r"^(?:(?:hang on|wait|hold on|ok|actually|just|sorry|no)[, ]+)*(?:i |we |ive |just )*(?:put|got|had|popped"
     r"|stuck|plonked)"
     r" (?:it|them|the \w+) (?:back )?on (?:the|a|my) scales?(?: (?:and|now|again))*,? (?:and )?(?:its|it is"
     r"|it says|says|reads"
     r"|it weighs|weighs|came to|shows)(?: actually| really)? (?=\d)", "it weighs "),
    (r"^(?:scrap|forget|ditch|no|drop|sod|stuff) the (?:wet|brine|brining|liquid)(?: way| method| cure"
     r"| one)?,? (?:and )?"
     r"(?:(?:im|ill|i|we|will|well|gonna|going to|lets) )*(?:do|doing|go|going|make|cure|curing)(?: it"
     r"| with)? dry\b.*$", "make it dry"),
    (r"^(?:scrap|forget|ditch|no|drop|sod|stuff) the dry(?: way| method| cure| one)?,? (?:and )?"
     r"(?:(?:im|ill|i|we|will|well|gonna|going to|lets) )*(?:do|doing|go|going|make|cure|curing"
     r"|put)(?: it)? (?:with |in )*"
     r"(?:a |the )?(?:wet|brine)\b.*$", "make it a wet cure"),
    # units of each kind
    (r"^(?:(?:can|could|would) (?:you|u) |please )*(?:do|use|show(?: me)?|give me|have|put|want)? ?(celsius"
     r"|fahrenheit|c|f)"
     r" (?:for|on) (?:the |my )?temp\w*,? (?:but |and )*(?:leave|keep|do|use|have)? ?(?:it|them|the (?:weights?"
     r"|rest)|weights?)?"
     r" ?(?:in )?(pounds|lbs?|kilos?|kg|grams)(?: for (?:the )?weights?)?$", r"use \1 and \2"),
    # what the fridge read, at two places
    (r"\b(?:a |the )?(?:glass|cup|jar|mug|bowl|bottle) of water (?:next to|beside|by|near|with) (?:the \w+|it)"
     r" (?:says|reads|is|shows|was)(?: at)? (?=\d)", "fridge "),
    (r"^(\d{2})(?: ?[cf])? was (?:off|from|in|on|at) the door(?: shelf)?,? (?:and |but )?(?=fridge)", r"door \1, "),
    (r"(\bfridge\b.*\b(?:since|been like that since) [^,;]{3,20}?) (?:i think|i guess|i reckon|id say)$", r"\1"),
    (r"\bfridge (?:thing|thermometer|thermo|dial|display) (?=(?:says|reads|is|shows)\b)", "fridge "),
    # nobody turned it
    (r"^(?:(?:ive|i|we|weve|has|have|so) )*(?:not|never|aint|havent|hasnt)(?: even)? (?:touched|turned|flipped"
     r"|moved|looked at)"
     r" (?:it|them|(?:the|my) \w+) since (?:it|they|the \w+) went in\b.*$", "forgot to flip it since it went in"),
    (r"^(?:the |my )?\w+ (?:aint|hasnt|has not|havent|wasnt|not) been (?:turned|flipped|touched) (?:for"
     r"|in) (?P<n>\d|two|three|four|a few)"
     r" days?\b.*$", r"forgot to flip for \g<n> days"),
    (r"^(?:ive |i |we |weve )*(?:havent|aint|have not|not) (?:turned|flipped|touched) (?:it|them|(?:the"
     r"|my) \w+) (?:for|in) (?P<n>\d|two|three"
     r"|four|a few) days?\b.*$", r"forgot to flip for \g<n> days"),
    # what went on the fire, and how many eat
    (r"\b(?:chucked|threw|thrown|put|tossed|bunged|stuck|lobbed|shoved) ((?:some |a few |a bit of |more |another "
     r"|extra )*(?:coals?"
     r"|charcoal|briquettes|lumps?|wood|chunks?|fuel)) on((?: at)? \d{1,2}:\d\d),? ?", "added fuel, "),
    (r"\b(?:oh )?(?:and )?(?:theres|there are|there is|were|we are|we will be) (\d{1,2}) of us(?: now| eating"
     r"| coming)*$",
     r", now \1 people"),
    # eaten up, melted, not fed
    (r"\b(?:the )?(?:last|final) (?:slices?|bits?|pieces?|scraps?|crumbs?|of it) (?:(?:just|has|have|was|were"
     r"|got|is) )*"
     r"(?:went|gone|eaten|scoffed|disappeared|finished)\b", "all gone"),
    (r"(\bice\b.*\b(?:melted|gone)\b),? (?:i )?(?:dunno|dont know|no idea|not sure|idk|no clue) (?:since"
     r" )?(?:when|how long)"
     r"(?: ago)?$", r"\1"),
    (r"^(?:i |we )?(?:didnt|havent|have not|not) (?:feed|fed|fuel\w*|add\w*|put)(?: it| the fire| any (?:coals?"
     r"|fuel|wood"
     r"|charcoal)(?: on)?)? since (?:\d{1,2}(?::\d\d)?|noon|breakfast|lunch),? (?:and |so |but )?(?=(?:the"
     r" )?(?:pit|smoker|grill)\b)",
     ""),
    (r"^(?:sorry |i )*(?:cant|cannot|not)(?: do it)?(?: now| right now| rn| atm)+,? (?:ask |try |remind me "
     r"|ping me )?in (\d{1,2})"
     r"(?: ?min\w*)?$", r"remind me in \1 min"),
    (r"^(?:(?:we are|were|we|were all) )?eating (?:at )?([^,;]{1,18}?) (?:not|instead of) \d{1,2}(?::\d\d)?$",
     r"dinner at \1"),
    # measured, and told with its hour
    (r"^(?:i |we |just |ok |so )*(?:re)?measured (?:(?:it|them|right|properly|proper|again|this time|now) )*,?"
     r" ?(?:and )?"
     r"(?=(?:its|it is|more like)\b)", ""),
    (r"\b(\d{1,2}) ([0-5]\d) not (?:at )?(\d{1,2}) ([0-5]\d)$", r"\1:\2 not \3:\4"),
    (r"\b(?:the )?tail(?: end)? (?=(?:is |at |reads )?\d{2,3}\b)", "meat "),
    (r"(?<=\d) (?=(?:eating at|dinner at|lunch at|supper at|got \d+ (?:more|extra)|guests at)\b)", ", "),
    (r"\b(is|hes|shes|turned|only) (\d{1,2})(?=,? (?:can|could|may|should|is it ok for) (?:he|she|they|him|her)\b)",
     r"\1 \2 years old"),
    (r"(?<![\d.:/])\b(\d{2}(?:\.\d)?(?: ?[cf])?) (fridge|brine) (?=(?:bacon|flat|brisket|ham|belly|pastrami|loin|turkey"
     r"|duck|salmon|trout|bags?|meat|pit)\b)", r"\2 \1, "),
    (r"^(?:(?:sorry|no|oops|meant|i meant|wait|nah),? )+(?:the )?other (?:one|batch|meat)$"
     r"|^(?:the )?other (?:one|batch|meat),? (?:sorry|i mean(?:t)?|oops)$", "wrong batch"),
    # a bird has a breast
    (r"\bchests? (?=(?:is |at |reads )?1[0-9]\d\b)", "breast "),
)  # fmt: skip
