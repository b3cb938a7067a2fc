"""What people say for the same thing, as the readers know it: of a whole line, and of a clause that says nothing.

A rule that looks at the start of a line holds for the start of a clause too (`clause.clause`). None of them makes or
drops a number that a reader would take for a temperature or a dose.
"""

from typing import Final

from bot.intents.plainer_rules import TOLD
from core import patterns as re

_WEEKDAY: Final = r"(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?"
_MEAT: Final = (
    r"(?:it|them|that|(?:the |my )?(?:meat|flat|point|brisket|bacon|belly|ham|loin|turkey|chicken|bird|duck|salmon"
    r"|trout|fish)(?: \d)?)"
)
_THE_FIRE: Final = r"(?: the (?:smoker|pit|grill|fire|cooker))?"
REWORDED: Final = tuple(
    (re.compile(pattern), put)
    for pattern, put in (
        # the end of it, its cooker, its heat
        (r"\b(?:all )?(?:done and dusted|thats it (?:were|we are|im|all) done|done,? thats (?:it|a wrap"
         r"|all))\b", "finished"),
        (r"^(?:(?:its|it is|now|ok|meat|put it|stuck it|have it|got it|is|moved it) )*(?:in"
         r"|into)(?: the)? oven(?: now)?"
         r"(?:(?: at|,)? (?=\d{3}))?(?P<n>\d{3})?$", lambda m: f"moved to oven{', ' + m['n'] if m['n'] else ''}"),
        (r"^oven(?: (?:is|at|now|temp|reads|says))* (?=\d{3}$)", "pit "),
        (r"^(?:use |in |do )?(?:the )?oven instead$", "finish in the oven"),
        (r"^(?:(?:take|bring|get) (?:the )?)?pit to ([1-3]\d\d)$", r"run the pit at \1"),
        (r"^pit (?:to |at )?(\d{3}) from (?:now|here)(?: on)?$", r"run the pit at \1"),
        (r"^(?:(?:im|i|we|are|is|planning|plan|going|gonna|will|ill|to|be|its) )+(?:smok(?:e|ing)|cook(?:ing)?"
         r"|run(?:ning)?) "
         r"(?:it |this )?at (?=(?:2\d\d|3[0-4]\d)\b)", "run the pit at "),
        (r"\b(?:running|run) (?:it|this) at (?=(?:2\d\d|3[0-4]\d)\b)", "run the pit at "),
        (r"^no foil(?: (?:this time|please|for me|today))*$", "no wrap"),
        # when it goes on
        (rf"^(?:it|the meat|meat|(?P<name>{_MEAT})) (?:goes|is going|will go) on{_THE_FIRE}(?: on)? (?P<day>{_WEEKDAY})"
         r"(?: instead)?$", lambda m: f"{m['name'] or ''} {m['day']}"),
        # a size that is changed, or guessed anew
        (r"^(?:(?:please|can you|lets) )*(?:change|set|correct|make|update) (?:the |my )?(thickness|weight)(?: is| to"
         r"| at)* (?=\d)", r"\1 is "),
        (r"^(?:(?:its|it is|is|bit|a bit|slightly) )*(?:thicker|thinner) than \d[\d.]*(?: ?(?:in|inch\w*|mm|cm))?,? "
         r"(?:(?:maybe|more|like|about|probably|its|nearer|around) )+(?=\d)", "thickness is "),
        (r"^(?:(?:its|it is|it|has|been) )*in since (?=\d)", "meat in since "),
        (r"^(?:make|do|have|serve|eat) it (hot|cold|thin|pulled),? (?:instead of|not) (?:hot|cold|thin|pulled|sliced)$",
         r"we eat it \1"),
        # who is not there
        (rf"^back (?:on )?({_WEEKDAY}|tomorrow)$", r"ill be back on \1"),
        (r"^(?:dont|do not|stop) (?:bug|text|messag|ping|call|bother|remind|disturb)(?:e|ing)? me(?: any ?more)?"
         r"(?: for)?(?: the rest of)? (?:today|the day)$", "pause until tomorrow"),
        (r"^(?:(?:i|we|just) )*(?:checked|looked at|had a look at)(?: on)? (?:it|them|the bag)[, ]+"
         r"(?:(?:its|it is|all|they|are) )*(?:good|fine|ok|well)$", "all good"),
        (r"^(?:(?:ill|im|lets|well) )*start(?:ing)?(?: it| this| the brine)? (tomorrow|tonight|later)"
         r"(?: (?:morning|evening))? instead$", r"ill start \1"),
        (r"^let (?:my )?([a-z]{2,12}) (?:do|handle|have) it(?= (?:to\w+|till?|until)|$)", r"\1 has it"),
        # how many eat
        (r"^(?:(?:now|so|ok) )*(?:its|it is|were cooking|cooking|thats) (?:now )?for (?=[2-9]\d?$|1\d$)(\d\d?)$",
         r"\1 people"),
        # who minds it
        (r"^(?:no )?it was (?:my )?([a-z]{2,12}) (?:who|that) (flipped|turned|rinsed|did)(?: it| them)?"
         r"(?:,? (?:and )?not (?:me|i))?$", r"\1 \2 it"),
        (r"(?<=[a-z]),? (?:and |but )?not (?:me|i)$", TOLD),
        (r"^([a-z]{2,12})(?: is|s)? on (?:the )?(?:fire|pit|smoker|grill)(?: duty| watch)", r"\1 has the fire"),
        (r"^([a-z]{2,12})(?: is|s)? on (?:the )?flip(?:ping|s)?(?: duty| watch)", r"\1 has the flips"),
        # how long it takes, and when it is looked at again
        (r"^(?:(?:its|it is|this is|this|is|been|so|really|way|man|just) )*(?:taking (?:ages|forever|so long"
         r"|an age|all day)"
         r"|(?:so|really|awfully|very|super) slow)$", "how much longer"),
        (r"^(?:check|look|ping|ask|text|call|nudge)(?: (?:back|again|me|on it|it|in))* in (?=an? |\d"
         r"|half)", "remind me in "),
        (r"^back in ([1-9]\d)$", r"back in \1 min"),
        (r"^(?:it |fire )?(?:went|was|gone) out for ((?:\d{1,3}|an?|half an?) ?(?:m?mins?|minutes?|h|hrs?"
         r"|hours?)),? (?:but )?"
         r"(?:its |now )*(?=back\b)", r"fire went out for \1, its "),
        (r"^(?:(?:im|i am|we are|were|ill be|going) )*out (?=(?:tonight|this evening|all day|all evening)$)", "away "),
        # a start, and what it is not
        (r"^([a-z]{3,12}(?: [a-z]{3,8}){0,2}),? (?:asap|as soon as possible|as fast as possible)$", r"start \1"),
        (r"\bcorn(?:ed)?beef\b", "corned beef"),
        (r"^wrong (?:cut|piece|meat),? (?=its |it is )", "no, "),
        (r"^(?:i |we )?(?:cant|couldnt|cannot) (?:get|find|buy)(?: any| the)? (?=(?:pink"
         r"|curing) salt)", "dont have any "),
        (r"^(?:no (?:more )?party|(?:the )?party(?:s| is| got)? (?:off|cancell?ed|called off))"
         r"(?=$|,)", "no date"),
        (r"\bput (?:in|into) (?=(?:the )?fridge\b)", "put it in "),
        (r"^(?:what )?time\?$", "how much longer"), (r"^when\?*$", "what is next"),
        # a plan for the flip, the hour at which it is looked at, everything held
        (r"^(tonights|this evenings|this mornings|tomorrows) (flip|turn) is (?:off|cancell?ed)$", r"skip \1 \2"),
        (r"\bnever got (?:a?round )?to (?:it|flipping|turning)(?: it)?\b", "missed the flip"),
        (r"^(?:check|look at|do|read) (?:it|the (?:brine|bag|fridge)|on it)(?: again)? (?:in the|this"
         r"|tomorrow) morning$",
         "remind me this morning"),
        (r"^(?:hold|freeze|stop|park) (?:everything|it all|all of it) (?=(?:un)?til|for)", "pause "),
        (r"^(?:its|it is|thats) (?:all )?off,? (?:theres |there are )?(?:no (?:guests|party)"
         r"|nobody(?: is)? coming)$", "no date"),
        (r"^(?:the )?cure (?:is |went |goes )?on(?= (?:at|since) \d|$)", "rubbed the cure on"),
        (r"\bguests?(?: (?:now|will))? (?:arriv(?:e|ing)|get here|show up)(?: at)? (?=(?:1[0-2]"
         r"|[1-9])\b(?! (?:people|more|of)))",
         "guests come at "),
        (r"(?<!wrapped )(?<!wrapped it )(?<!wrap )(?<!wrap it )\bin (foil|paper) at (?=1\d\d\b)", r"wrapped in \1 at "),
        (r",? (?:to|so it) (?:speed|hurry)(?:s)?(?: (?:it|things))? (?:up|along)$", ""),
        (r"^turned (?=at \d|just|this|last|\d)", "turned it "),
        (r"^(?:(?:no|oh|wait|hang on|actually|sorry)[, ]+)+(?=(?:mon|tues?|wed|wednes|thu|thurs|fri|sat|satur"
         r"|sun)(?:day)?\b"
         r"(?! (?:flip|morning|evening|is|was)))", "make it "),
        (r"^(?:(?:the |my )?(?:flat|point|brisket|meat|piece|belly|loin|ham) )(?:is|measures) (?=\d[\d./ ]*"
         r"(?:in|inch\w*|mm|cm|\")? ?thick\b)", "its "),
        (r"^(?:it )?(?:varies|ranges|runs|goes) (?:from |between )?(?=\d[\d./ ]* (?:to|and) \d)", "it tapers "),
        # numbers put right, and settings
        (r"^(\d+(?:\.\d+)?) ?g(?:rams?)?,? not (\d+(?:\.\d+)?)(?: ?g(?:rams?)?)?$", r"i put in \1 grams not \2"),
        (r"^salt (?:it )?(?:a (?:bit|little) |much )?(?:less|more|lower|higher),? (?:to |at "
         r"|like )?(?=\d(?:\.\d+)? ?%)", "salt "),
        (r"^(?:please )?(?:set|change|switch) (?:my |the )?(?:time|clock|time ?zone) to (eastern|central"
         r"|mountain|pacific)"
         r"(?: time)?$", r"\1 time"),
        (r"^(?:use |in )?(?:grams?|g),? not (?:oz|ounces?)$", "use kg"),
        (r"^(?:use |in )?(?:oz|ounces?),? not (?:grams?|g)$", "use lb"),
        # of each of several
        (r"\b(push|move|delay|shift|bump|postpone)(ed)? (?:both|all)(?: of them)? (?=(?:back |by |out )*(?:an?"
         r"|one|two|\d) )", r"\1\2 it "),
        (r"^(?:so )?when(?:s| is| are) (?:each|they|both|each one|each of them"
         r"|every one)(?: of them)? (?=(?:ready|done)\b)",
         "when is it "),
        (r"^leaks(?: a (?:bit|little))?$", "bag leaks"),
        # put off till the morning, in short
        (r"(?:^|(?<=[,;] ))(?:(?:so|and|but|then|just|lets|we|i|instead) )*(?:do|flip|turn)"
         r"(?: (?:it|that|them|the bag))? (?:in the|this|tomorrow|early in the|first thing in the) morning$",
         "ill flip it this morning"),
    )
)  # fmt: skip
