"""What was done, and when it was done or forgotten."""

from typing import Final

from bot.intents.rewriting.words import CLOCK, DAY, SPAN, TOLD, rules
from core import patterns as re

PAST: Final = {
    "flip": "flipped", "turn": "turned", "wrap": "wrapped", "rinse": "rinsed", "light": "lit", "soak": "soaked",
    "rub": "rubbed", "spritz": "spritzed",
}  # fmt: skip


_BEING_DONE: Final = {
    "flipping": "flipped", "turning": "turned", "rinsing": "rinsed", "rubbing": "rubbed", "patting": "patted",
}  # fmt: skip
_BEING: Final = rf"(?P<deed>{'|'.join(_BEING_DONE)})(?: (?:it|them|the \w+))?(?:(?P<how> (?:over|off|dry))| on)?"


def _just_now(found: re.Match[str]) -> str:
    """«doing it now» is as good as done."""
    if found["deed"]:
        return f"{_BEING_DONE[found['deed']]} it{found['how'] or ''} now"
    return "flipped it now" if found["flip"] else "did it now"


_SINCE: Final = {  # what it is doing since an hour, by the step that put it there
    "smoking": "meat on", "cooking": "meat on", "simmering": "in the pot", "poaching": "in the pot",
    "boiling": "in the pot", "curing": "in the cure", "brining": "in the brine", "drying": "on the rack",
}  # fmt: skip


_GOT_ROUND_TO: Final = {"turn": "flip", "rins": "rinse"}

RULES: Final = rules(
    (rf"^(?:(?:its|it is|it has|has|been|meats?|the|is|now|just|already|both|all) )*(?P<doing>{'|'.join(_SINCE)})"
     r"(?: (?:away|now|already|along|nicely|on it))* since (?=(?:about |around )?(?:\d|noon|midday|midnight|half"
     r"|quarter|this morning|last night|yesterday|mon|tue|wed|thu|fri|sat|sun))",
     lambda m: f"{_SINCE[m['doing']]} since "),
    (r"^(?:(?:its|it is|now|ok|took|it|the|meat|belly|ham|brisket|flat) )*out (?:of|from) (?:the |its )?soak(?:ing)?"
     r"(?: (?:water|bath))?(?= (?:now|at|since)\b| \d+ ?m?min\w* ago| (?:half )?an hour ago|[,.;]|$)", "done soaking"),
    (r"^(?:(?:ok|now|and|so|got|theyre|they are),? )*(?:both|all(?= (?:of them |pieces )?(?:are )?(?:now )?on\b))"
     r"(?: (?:of them|pieces))? (?:are )?(?:now )?(?=(?:on|off)\b(?! the rack)|in(?: now)?$)", "they are "),
    (r"^(?:(?:take that back|undo that|scrap that|no|oops|sorry|i),? )+never got a?round to"
     r" (wrap|flip|turn|rins|rub)\w*(?: (?:it|them|the \w+))?$", lambda m: f"undo the {_GOT_ROUND_TO.get(m[1], m[1])}"),
    (r"^(?:(?:pepper|coriander|spices?|the|rub|and|n|&|some|mustard|garlic) )+(?:is |are )?all over"
     r" (?:it|them)(?=$|[,.;]| (?:and|now|back)\b),?", "rubbed it,"),
    (r"\bpapered (it|them|the [a-z]+)\b", r"wrapped \1 in paper"),
    (r"\bfoiled (it|them|the [a-z]+)\b", r"wrapped \1 in foil"),
    (r"\bbutchers? (?:has |had |already )*(?:took|taken|cut|pulled) (?:it|the bone) out\b", "butcher boned it"),
    (r"\bpulled (it|them|the meat|everything) out\b", r"took \1 out"),
    (r"\b(flipped|turned)(?: (?:it|them))?(?: both)? yesterday (?:and|n) today\b", r"\1 yesterday, \1"),
    (r"^(?:(?:im|i am|we are|were|just) )?(?:making|mixing)(?: up)? (?:the |my |a )?brine(?: now)? (?:with|using|in) "
     r"(?=[^,;]*\b(?:water|gallons?|gal|quarts?|qts?|lit(?:er|re)s?|l)\b)", "use "),
    (r"^(?:the )?(?:leftovers|rest)(?: is| are| went)? (?:in|into) (?:the )?fridge\b", "put the rest in the fridge"),
    (r"\b(turned|flipped) (it|them|the bags?) over\b", r"\1 \2"),
    (r"^(flip done|flipped(?: it)?|turned it) (?=(?:the |my )?(?:bags?|tub) (?:is|are|has|was|looks?|smells?|feels?"
     r"|leak\w*|still|seems?|got|swollen|puffy)\b)", r"\1, "),
    (r"^(?:(?:yes|yep|yeah|done),? )?(?:that was )?(?:ages|hours|a while|long|a long time) ago$", "done"),
    (r"\bsat (?=(?:on|out|nude|naked|bare|uncovered|there|for|in the (?:fridge|cooler|bag|brine|tub|car|sun"
     r"|kitchen))\b)", "stood "),
    (r"^(?:she|he) (?=went|came|is|was)", "it "),
    (r"\bout the (?=(?:brine|bag|tub|cure|bucket|fridge|smoker|water|pickle|pot|oven)\b)", "out of the "),
    (r"^(?:its )?((?:[5-9]\d|1\d\d|20\d)(?: ?[cf])?) (?=(?:and |now |its )*off$)", r"\1, "),  # read, and taken off
    # «brine 4 so its in»: a reading, and the deed that was done upon it
    (r"(?<=\d)(?P<u> ?[cf])? so (?=(?:now )?(?:its|it is|it went|meats?|the meat|ham|in it)\b)", r"\g<u>, "),
    # who is meant is the meat
    (r"\b(?:shes|hes|theyre|theyve) (?=(?:on|off|in|out|done|wrapped|resting|up|at|flipped|lit|rinsed|chilling|soaking"
     r"|still|stuck|sitting|all|now|back in|been)\b|\d)", "its "),
    (rf"\b(?:(?:im|i am|am|just|only) )*(?:{_BEING}|(?:doing|did) (?P<flip>the (?:flip|turn))"
     r"|doing (?:it|that|them|so))(?: right| just)? now\b|^(?:(?:i|im|just) )*(?:just did|did just now)$", _just_now),
    (rf"(?P<after>\b(?:out|cure|bag|brine|tub|rinsed|soaked|dried|dry|lit),? (?:and |now |im |just )*){_BEING}"
     r"(?=$|[,.;])", lambda m: f"{m['after']}{_BEING_DONE[m['deed']]} it{m['how'] or ''}"),
    (r"^((?:(?:sorry|oops|i|we|totally) )*(?:missed|forgot)\b[^,;]*?),? (?:(?:sorry|so|and|but),? )*(?=(?:just |only "
     r"|now )*(?:done|did it|flipped|turned)(?: it)? (?:just )?now$|(?:just|only|now) (?:did|flipped|turned)\b)",
     r"\1, "),
    (rf"\b(flipped|turned|did (?:it|the \w+)|done|flip|rinsed|lit|wrapped)((?: it| them| both)?)(?:,? (?:but )?(?:a bit"
     rf" |bit )?late)?,? (?:(?:about|around|more like|like|say|maybe|roughly|circa|ca|at) )+(?={CLOCK}$)", r"\1\2 at "),
    (r"\b(?:gave|given|giving) (?:it|them|the \w+) (?:an? |another )?(?:(?:good|quick|nice|final|thorough|proper"
     r"|wee) )*(flip|turn|rinse|soak|spritz)\b", r"did the \1"),
    (rf"\b(?:did|gave (?:it|them)) an? ({SPAN}) soak\b|\b(?:had|left|kept|put) (?:it|them) in "
     rf"(?:(?:the|cold|fresh|clean) )*water (?:for )?(?={SPAN}$)",
     lambda m: f"soaked it for {m[1] or ''}"),
    (r"\bskipped (?=(?:the )?(?:(?:flip|turn|one) )?(?:last (?:nights?|evening|one)|yesterdays?"
     r"|this morning)\b)", "missed "),
    (r"\b(meat|it|fish|bags?)s? (?:was|were) in (?=at \d)", r"\1 went in "),
    (rf"\b(went in|is in|in) (?={CLOCK},? (?:and )?not (?:at )?{CLOCK}$)", r"\1 at "),
    (r"^((?!(?:im|i|we|not|who|whos|still|just|were|am|keep|stop|start|ok|been|when|like|no|why|how|is)\b)"
     r"(?:my |the )?[a-z]{2,12}) (?=doing (?:the )?(?:flips?|turns|flipping|fire|pit)\b)", r"\1 is "),
    (r"\b(?:last (?:night|evening)|yesterday evening|this morning) and (?:again )?(?:this morning|just now|now"
     r"|today|tonight|this evening)\b", "both times"),
    (r"\bit was (?:at )?(\d{1,2}(?::\d\d)?(?: ?[ap]m)?) (?:when |that )?(?:i|we) (did it|flipped|turned it|rinsed"
     r"|lit it)\b", r"\2 at \1"),
    (r"\b(flip|turn|bag) (?:no|nr|number|num)\.? ?\d{1,2}\b", r"\1"),
    (r"\b(flip|turn|rinse|reading|check) \d{1,2} (?=(?:is )?(?:done|ok|finished|sorted)\b)", r"\1 "),
    (r"\b(?:did|done) (?:2|both) (?:flips|turns)\b", "flipped both times"),
    (r"\bdid (?:the )?(morning|evening) (?:one|flip|turn)(?: late| early)? (?:at|like|about|around) (?=\d)",
     r"flipped this \1 at "),
    (r"^(?:(?:i|we|just|ive) )*did the (?:(morning)|evening) (?:one|flip|turn)$",
     lambda m: f"flipped {'this morning' if m[1] else 'it'}"),
    (r"^(?:finish|close|complete)(?: off| out)? (?:the|this) (?:batch|cook|one)$", "all done"),
    # told in the present by who learned the language late
    (r"(?<!did )(?<!do )(?<!can )(?<!should )(?<!must )(?<!shall )(?<!may )(?<!could )(?<!if )(?<!when )\b(i|we|he|she"
     r"|wife|husband|son|daughter) (flip|turn|wrap|rinse|light)( (?:it|them|the \w+|meat|bag))?(?= (?:yesterday"
     r"|already|this morning|last night|just now|before|at \d|\d{1,3} ?min\w* ago|an hour ago))",
     lambda m: f"{m[1]} {PAST[m[2]]}{m[3] or ''}"),
    # two days on which the same was done, and a reading of the night beside that of now
    (rf"^((?:did|flipped|turned)(?: (?:it|them))?(?: on)?) ({DAY}) (?:and|&|,) ?({DAY})\b", r"\1 \2, \1 \3"),
    (r"^(?:the )?last (flip|turn|rinse) was (?:at )?(?=\d{1,2}[^,;]*\bnot \d)",
     lambda m: f"{PAST.get(m[1], m[1])} at "),
    (r"\b(sliced|carved)( it| them)? (?:and )?(?:its )?(?=(?:all |nice(?:ly)? (?:and )?)?pink\b)", r"\1\2, "),
    (r"^(?:(?:i|we|sorry|oops) )*(?:skipped|missed|forgot) (?:the |my )?(?:(morning)|evening) (?:one|flip|turn)$",
     lambda m: f"missed the flip {'this morning' if m[1] else 'last night'}"),
    (r"(?<!the )(?<!my )\b(?:fridge|refrigerate) (it|them)\b", r"put \1 in the fridge"),
    (r"^(?:nope|no|sorry|oops|i|we)[, ]+(?:(?:i|we) )?(?:fell asleep|overslept|dozed off|was asleep)$", "forgot it"),
    (r"\b(wrapped|foiled|flipped|rinsed|lit|off|on)(?: it)? (\d{1,2}[.:][0-5]\d),? (?:in "
     r"|with )?(?=(?:butcher )?(?:paper|foil))", r"\1 at \2 in "),
    # and «out of ice» alone has run out of it
    (r"\bout (?:of )?(?:(?:the )?(?:ice ?)?bath|the ice)\b|\bpulled out of (?:the )?ice\b"
     r"|\bout of ice(?=,? (?:and |now )*(?:in|into|to) (?:the )?fridge\b)", "out of the ice"),
    (r"^(flip|turn|rinse|wrap) ?[/|] ?(?=\d{1,2}[.:]\d\d)", lambda m: f"{PAST[m[1]]} at "),
    (r"^(flip|turn) (?:ok|good|fine),? (?:and )?(?=fridge\b)", r"\1 done, "),
    (r"(?<=[a-z]),? off (?:it|she|he) comes$", ", off"),
    (r"\b(?:did|done) (?:mine|ours|hers|his|theirs)\b", "did it"),
    # each of the days that were missed
    (rf"^((?:(?:i|we|sorry|oops) )*(?:missed|forgot)(?: the)?) ({DAY}) (?:and|&) (?=(?:{DAY})$)", r"\1 \2, \1 "),
    # done just now, and what was not done before
    (r"\b((?:flipped|turned|done|did)(?: it| them| the bag)?),? (?:lol |haha |but |and )*(?=(?:i )?(?:forgot"
     r"|missed)\b)", r"\1, "),
    (r"^(?:(?:i|we|was|were|bit|a|little|sorry) )*late (flipp|turn|rins|wrapp)ing(?: (?:it|them))?,? (?:at |about "
     r"|like )?(?=(?:1[0-2]|[1-9])\b)", r"\1ed it at "),
    (r"^(?:pulled|took) (?:it |her )?(?:off )?to wrap(?: it| her)?(?:,? (?:and )?(?:its |now )*back on(?: now)?)?$",
     "wrapped it"),
    (r"\bfoil[- ]?boat(?:ed)?\b(?! (?:or|vs|ok|good|better))(?!.*\?)", "wrapped in foil"),
    # «did flip 10 min ago», «did wrap at 160»: told without the one who did it
    (rf"^(?:(?:ok|yes|just|already) )*did (?P<deed>{'|'.join(PAST)})(?=$|[,.;]| (?:\d|(?:at|about|around|by|an?|half"
     rf"|this|last|just|now|already|too|also|late|early)\b))(?!.*\?)", lambda m: f"{PAST[m['deed']]} it"),
    # a flip of a part of the day, a mark behind what is eaten, a small number in words
    (r"^(?:(?:and|yes|ok|the|this|i|we|already) )*(?P<did>did (?:the |this )?)?(?P<part>morning|evening) (?:flip"
     r"|turn)(?(did)| (?:(?:is|was) )?done)(?: too| also| as well| already)?$", r"flipped this \g<part>"),
    (r"^ice (?:is |was )?(?:topped up|changed|renewed|refreshed)(?: now| again)?$", "topped up the ice"),
    (r"(?<=\d) in (?=(?:it|she|he|they|the \w+|that) (?:goes|went|go)\b)", ", in "),  # and no inches
    (r"^(?:every(?:body|one)|we|they|all|family|guests)s?(?: (?:is|are|were|was|got|have been|has been|all"
     r"|now))* (?:fed|stuffed)\b(?: and happy)?", "eaten"),
    (r"^(?:nothing (?:new )?to report|no news|all quiet(?: here)?|nothing new)$", "noted"),
    (r"^(?:(?:ok|now|going|straight) )*(?:in|into|to) fridge(?: now)?$|^fridge now$", "in the fridge"),
    (r"\bput (?:it|her|them|the \w+) in(?:to)? (?:the |some |butcher )?(foil|paper)\b(?: (?:w|with) (?:a |some )?\w+)?",
     r"wrapped it in \1"),
    (r"\b((?:flip|turn)\w*[^,;.]*?),? (?:and )?also (?:the )?(?=(?:last night|this morning|yesterday)s?\b)(\w+ ?\w*)$",
     r"\1, and \2 too"),
    (r"\b(?:bags?|meat|it|its)(?: is| are|s)? (?:now )?on (?:its|the|their) other side(?: now)?\b", "flipped it"),
    (r"\b(?:put|got|wrapped|have) (?:the |some |butcher )?(foil|paper) (?:a?round|over|on) (?:it|the meat|her)\b",
     r"wrapped it in \1"),
    (r"\bate (?:it )?(?=(?:it )?was\b)", "ate it, "),
    (r"\b(?:it )?was (?:so |absolutely |pure |straight )?fire\b(?! ?(?:out|gone|dead|off))", "it was delicious"),
    # the end of it, its cooker, its heat
    (r"\b(?:all )?(?:done and dusted|thats it (?:were|we are|im|all) done|(?:done,? )?(?:and )?thats a wrap"
     r"|done,? thats (?:it|all))\b", "finished"),
    (r"^(?:(?:its|it is|it|has|been) )*in since (?=\d)", "meat in since "),
    (r"^(?:(?:i|we|just) )*(?:checked|looked at|had a look at)(?: on)? (?:it|them|the bag)[, ]+(?:(?:its|it is|all"
     r"|they|are) )*(?:good|fine|ok|well)$", "all good"),
    # who minds it
    (r"^(?:no )?it was (?:my )?([a-z]{2,12}) (?:who|that) (flipped|turned|rinsed|did)(?: it"
     r"| them)?(?:,? (?:and )?not (?:me|i))?$", r"\1 \2 it"),
    (r"(?<=[a-z]),? (?:and |but )?not (?:me|i)$", TOLD),
    (r"\bput (?:in|into) (?=(?:the )?fridge\b)", "put it in "),
    (r"\bnever got (?:a?round )?to (?:it|flipping|turning)(?: it)?\b", "missed the flip"),
    (r"^(?:the )?cure (?:is |went |goes )?on(?= (?:at|since) \d|$)", "rubbed the cure on"),
    (r"(?<!wrapped )(?<!wrapped it )(?<!wrap )(?<!wrap it )\bin (foil|paper) at (?=1\d\d\b)", r"wrapped in \1 at "),
    # what is going to be done at another hour: no deed, and nothing to put right
    (r"^((?:(?:i|im|we|were|ill|well|ok) )*(?:gonna|going to|will|ill|wanna|want to|plan to|planning to"
     r"|rather) [^,;?\d]{3,24}"
     r" at [^,;?]{1,12}?),? (?:and )?(?:not|instead of|rather than) (?:at )?(?:quarter (?:to|past) "
     r"|half )?\d[\d:.]*(?: ?[ap]m)?$",
     r"\1"),
    # and once more
    (rf"\b(?P<deed>flipped|turned)(?P<it>(?: it| them| the bags?| both)?)(?P<at> (?:this morning |today )?(?:at "
     rf"|about |around )"
     rf"(?:{CLOCK})(?: this morning| today| earlier)?),? (?:and |then )*again (?:just |right )*now\b",
     r"\g<deed>\g<it>\g<at>, \g<deed>\g<it> just now"),
    # a dish, and nothing that came off
    (r"\bpulled (pork|ham|beef|chicken|turkey) (?=(?:for (?!\d)|tonight|tomorrow|sandwich|buns?\b|rolls?\b|tacos?"
     r"|party|night"
     r"|is (?:for|what)|on (?:mon|tue|wed|thu|fri|sat|sun)))", r"pulled\1 "),
    # «it went on half 8 not 8»
    (r"^(?P<of>(?:(?:it|the meat|meat|bird|she|he|they) )?(?:went|came|was|got) (?:on|off|in|out)|(?:meat|bird|fish"
     r"|it) "
     r"(?:on|off|in|out)) (?=(?:half|quarter|\d)[^,;]* not (?:at )?\d)", r"\g<of> at "),
    (r"^turned (?=at \d|just|this|last|\d)", "turned it "),
)  # fmt: skip
