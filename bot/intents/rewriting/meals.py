"""The meal: its day and its hour, how it is eaten, and by how many."""

from typing import Final

from bot.intents.days import MONTH
from bot.intents.rewriting.words import CLOCK, DAY, MEAL, SPAN, WEEKDAY, rules

_MEAT: Final = (
    r"(?:it|them|that|(?:the |my )?(?:meat|flat|point|brisket|bacon|belly|ham|loin|turkey|chicken|bird|duck|salmon"
    r"|trout|fish)(?: \d)?)"
)
_THE_FIRE: Final = r"(?: the (?:smoker|pit|grill|fire|cooker))?"

_GUESTS: Final = (
    r"(?:the )?(?:guests?|visitors|mates|friends|everyone|everybody|in ?laws|family|folks|lot|theyre|they|theyll)"
)

RULES: Final = rules(
    (rf"\b({MEAL}|tea|food)s? (?:is|are) (?=(?:1[0-2]|[1-9])(?:[:.][0-5]\d)? (?:tomorrow|today|tonight|on \w+day"
     rf"|\w{{3,6}}day"
     rf"|now|instead)\b)", r"\1 is at "),
    (r"(?<=\w),? oh and (?=\w)", ", "),
    # «dinner maybe 7 or 8 not sure yet»
    (rf"^((?:{MEAL}|tea|food|guests?))(?: (?:is|at|will be|come|coming|maybe|prob\w*|either|around|about"
     rf"|like))* (\d{{1,2}}"
     r"(?:[:.]\d\d)?) or (?=\d)([\d:.]+)(?: ?pm)?(?:,? (?:(?:im|i am|but|still) )*(?:not sure|unsure|dunno|dont know"
     r"|who knows"
     r"|havent decided)(?: yet| which)*)?$", r"\1 at \2 or \3"),
    # «no rush, maybe sunday brekkie the 10th»
    (rf"\bput (?:the |our )?({MEAL}|meal) off (?:to|for|on) (?={DAY}|the \d)", r"move the \1 to "),
    # «actually sunday week is grand, 1 o clock»
    (rf"^(?:(?:actually|no|ok|so|well|sorry|wait|yeah|hmm+)[, ]+)*((?:on )?{WEEKDAY}(?: week)?) (?:is|would be|suits"
     r"|works|does)(?: (?:us|me|everyone|better|just|more))* ?(?:grand|fine|good|ok|better|best|great|easier)?,? "
     rf"(?:at |say |around |about )?(\d{{1,2}}(?:[:.]\d\d)? ?(?:o ?clock|[ap]m))$", r"meal on \1 at \2"),
    (rf"^(?:(?:actually|no|ok|so|well|sorry|wait|yeah|hmm+)[, ]+)*(?:on )?({WEEKDAY}) week (?:is|would be|suits|works)"
     r"(?: (?:us|me|everyone|better|just|more))* ?(?:grand|fine|good|ok|better|best|great|easier|perfect)?$",
     r"meal on \1 week"),
    (rf"^(no (?:rush|hurry)),? (?:so |but )?(?:maybe |perhaps |say |like |prob\w* )(?=(?:on )?{WEEKDAY})", r"\1, "),
    (rf"\b(?:(?:for|on) )?({WEEKDAY}) (breakfast|brunch|lunch|dinner|supper|tea),? (?:on )?((?:the )?\d{{1,2}}(?:st|nd"
     rf"|rd|th)(?: of)?(?: {MONTH}[a-z]*)?|{MONTH}[a-z]* \d{{1,2}}(?:st|nd|rd|th)?)\b(?!:)", r"\2 on \1 \3"),
    (rf"(^|, )((?:on )?{WEEKDAY} the \d{{1,2}}(?:st|nd|rd|th)) (?:for|at) (breakfast|brunch|lunch|dinner|supper|tea)$",
     r"\1\3 \2"),
    (r"^(?:(?:we|we have|weve|just|all|ok|so|and|already|they|everyone|everybody|have) )*(?:ate|eaten)"
     r"(?: (?:already|now|dinner|lunch|supper|at last))*$", "we ate it"),
    (rf"(?<!for )(?<!for a )\b(?:a )?week on ({WEEKDAY})\b", r"\1 week"),
    (r"(?<=\w),? (?:but )?(?:no smok(?:e|ing)|not smoked|dont smoke it),? (?:just |only )?(?:boil(?:ed|ing)?"
     r"|simmer(?:ed|ing)?|poach(?:ed|ing)?)(?: it)?\b", " simmered"),
    (r"^(?:(?:ok|right|so|we are|were|were all|everyones?|all|just|now|finally) )*(?:(?:sitting|sat|sit) down to (?:eat"
     r"|dinner|lunch|supper)|digging in|tucking in|at the table|(?<=are )eating(?: it)?)(?: now)?$", "eating now"),
    (r"^(?=.*\d ?(?:kg|kilo|lb|pound))(?!.*\bsmok)(.*\d.*), ?(hot|cold)$", r"\1, eaten \2"),
    (r"^soak (?:it|them|the \w+)(?: for)? how long$", "how long to soak"),
    (r"^hour (later|earlier)\b", r"an hour \1"),
    (rf"^(?:cancel|scrap|forget|drop) (?:the )?(?:{DAY}),? (?:and )?(?:do|make it|lets do|its) (?=(?:on )?(?:the \d"
     rf"|{DAY}))",
     "make it "),
    (r"\b(\d{1,2}) (people|guests|persons) more\b", r"\1 more \2"),
    (rf"\b(guests?|people|everyone)(?: are)? now (?={CLOCK}$)", r"\1 at "),
    (r"\b(?:change|set|new|make)(?: the| my)? (?:date|day|deadline)(?: is| to| for)+ ", "move it to "),
    (r"\b(running|be|im|were|are|is) (?:about )?(\d{2,3}) (late|behind)\b", r"\1 \2 min \3"),
    (rf"\b(dinner|lunch|supper|breakfast|brunch|tea|meal|food|party)s?(?: is)? (?={CLOCK}(?: now| instead| then| please"
     r"| not (?:at )?\d{1,2}(?:[:.][0-5]\d)?)*$)", r"\1 at "),
    (r"^(?:(?:cancel|drop|remove|forget|scrap|delete|clear) (?:the |my )?(?:deadline|date|meal time)$"
     r"|(?:the )?(?:party|dinner|lunch|meal)s? (?:is )?(?:off|cancell?ed)\b.*\bno (?:new )?(?:date|day)\b.*$|(?:its"
     r"|it is|thats) (?:all )?off,? (?:theres |there are )?(?:no (?:guests|party)|nobody(?: is)? coming)$"
     r"|(?:no (?:more )?party|(?:the )?party(?:s| is| got)? (?:off|cancell?ed|called off))(?=$|,))", "no deadline"),
    (rf"\b({MEAL})(?: (?:now|then|instead))?,? not {MEAL},? (?:at )?(?=\d)", r"\1 at "),
    # a day that is not, and the one instead
    (rf"^(?:{DAY})s? (?:is |now )*(?:off|out|no good)(?: now)?[,.;]+ ?(?:so |but |lets |make it )*(?=.*\b(?:{DAY})\b)",
     ""),
    (rf"\b(?:\w+ )?(?:cant|cannot|cant do|wont|couldnt|not) (?:make|do|work for"
     rf"|come)? ?(?:it )?(?:on )?(?:{DAY})\b[,.; ]*(?:so |but |can we |lets |please )*(?=.*\b(?:{DAY})\b)", ""),
    (r"\b(party|dinner|lunch|supper|meal|wedding|birthday|bbq|feast|eat|eating|serve|ready|due"
     r"|need it)s? (?=\d{1,2}(?:st|nd|rd|th)\b)", r"\1 on the "),
    (rf"\b(eat|eating|dinner|serve|serving|supper|lunch) ({CLOCK}) (?=(?:on )?(?:{DAY}))", r"\1 at \2 "),
    (r"^(?:guests?|people|they|everyone)(?: are| is)? early,? (?:(?:so|need|want|it|make|eating|eat|now) )*(?:at "
     r"|by )?(?=\d)", "guests at "),
    # «guests late, 2 not 1»: the hour of the meal
    (r"\b(guests?|people|they|everyones?|everybodys?|family|friends|company|visitors)(?: are| is|re)?(?: running"
     r"| coming)? (?:late|later|early|earlier|delayed"
     r"|behind),? (?:so )?(?:its )?(?:at )?(?=\d{1,2}(?::\d\d)? ?(?:[ap]m(?:,? (?:now|then|instead|please))*$"
     r"|(?:[ap]m)?,? (?:now$|(?:now )?(?:not|instead of) \d)))",
     r"\1 coming at "),
    (r"\bmake it (1[0-2]|[1-9]) ([0-5][05])$", r"make it \1:\2"),
    (r"^(?:were|we are|therell be|there will be)(?: gonna| going to)?(?: be)? (\d{1,2}) (?:instead of|not"
     r"|and not) \d{1,2}(?: now)?$", r"we are \1 now"),
    (r"^(?:can we |lets |please )?put (?:it |the meal |dinner |lunch )?(?:back|off) (?:by |for )?(?=(?:an?"
     r"|\d) (?:days?|weeks?)\b)", "move it by "),
    (r"^put (?:the|my) (\w+) back (?:by )?(?=(?:an?|\d) (?:days?|weeks?)\b)", r"\1: move it by "),
    (r"^(?:please )?add (\d+ ?(?:h|hrs?|hours?|days?)|an hour|a day) to (?:everything|it all|all of it"
     r"|the (?:whole )?plan)$", r"push everything back by \1"),
    (r"^((?:make|have|do) (?:the meal|dinner|lunch|supper) )(?=\d{1,2}(?::\d\d)?(?: ?[ap]m)?,? (?:instead|not)\b)",
     r"\1at "),
    # when it goes on
    (rf"^(?:it|the meat|meat|(?P<name>{_MEAT})) (?:goes|is going"
     rf"|will go) on{_THE_FIRE}(?: on)? (?P<day>{WEEKDAY})(?: instead)?$", lambda m: f"{m['name'] or ''} {m['day']}"),
    # how it is eaten: wished, in place of the other, or beside the hour («hot not cold», «hot, 6pm»)
    (rf"^(?!(?:can|could|may) (?:we|i|they) (?:eat|have|serve) (?:it|this|that) cold\W*$)(?=.*\b(?:want|prefer|like"
     rf"|make|have|serv\w+|do|eat|change|switch|turn|meant|please|pls|not|instead|rather|at"
     rf"|for|{MEAL}|\d{{1,2}}[ap]m)\b)(?:(?:no|oops|sorry|wait|actually|we|i|id|ill|well|can|lets|please|everyone|they"
     r"|guests|would|wants?|prefer|like|make|have|serve|do|eat|change|switch|turn|meant|mean|it|this|that|(?:in)?to|a"
     r"|not cold|not hot|rather|its for)[ ,]+)*(?P<how>hot|cold|warm|thin|pulled)"
     rf"(?:,? (?:meal|one|{MEAL}|sandwich(?:es)?|now|instead|then|after all|tonight|today|please|pls"
     rf"|(?:not|instead of) (?:cold|hot|warm|thin|pulled|sliced)|for (?:the meal|{MEAL})))*"
     rf"(?P<at>,? (?:at |by |around )?{CLOCK})?$", lambda m: f"eat it {m['how']}{_of_today(m[0])}{m['at'] or ''}"),
    # how many eat
    (r"^(?:(?:now|so|ok) )*(?:its|it is|were cooking|cooking|thats) (?:now )?for (?=[2-9]\d?$|1\d$)(\d\d?)$",
     r"\1 people"),
    (r"\bguests?(?: (?:now|will))? (?:arriv(?:e|ing)|get here|show up)(?: at)? (?=(?:1[0-2]|[1-9])\b(?! (?:people|more"
     r"|of)))", "guests come at "),
    (rf"\b({_GUESTS})(?: are| will be| is)? (?:running )?late by ({SPAN})\b", r"\1 are \2 late"),
    (rf"^(?:{_GUESTS} .{{0,30}}\b)?(?:be|getting|coming|arriving|come) here (?:at )?(\d{{1,2}}(?:[:.]\d\d)?) instead"
     r"(?: of \d{1,2}(?:[:.]\d\d)?)?$", r"guests come at \1"),
    (r"^(?:(?:no|oh|wait|hang on|actually|sorry)[, ]+)+(?=(?:mon|tues?|wed|wednes|thu|thurs|fri|sat|satur"
     r"|sun)(?:day)?\b(?! (?:flip|morning|evening|is|was)))", "make it "),
    # of each of several
    (r"\b(push|move|delay|shift|bump|postpone)(ed)? (?:both|all|everything|the lot)(?: of them)? (?=(?:back |by "
     r"|out )*(?:an?|one|two|\d) )", r"\1\2 it "),
)  # fmt: skip


def _of_today(wish: str) -> str:
    """The day that a wish names beside how it is eaten: «have it hot tonight»."""
    return next((f" {day}" for day in ("tonight", "today") if day in wish.split()), "")
