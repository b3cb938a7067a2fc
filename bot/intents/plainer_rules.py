"""How shorthand and asides are written out, a rule a kind, in the order in which they are used; see `plainer`."""

from typing import Final

from bot.intents.cut_weights import share
from core import patterns as re

DEED: Final = (
    r"(?:flipped|turned|done|did|rinsed|wrapped|lit|pulled|took|taken|put|checked|soaked|rubbed|bagged|finished|sorted"
    r"|forgot|missed|sliced|\d{1,3}(?:\.\d)?(?: ?[cf]\b)?)"
)
_TURNED: Final = (  # what is done every day
    r"^((?:(?:i|we|ive|yes|yeah|already|she|he) )*(?:flip |turn )?(?:flipped|turned|did|done)"
    r"(?: (?:it|that|them|the (?:bags?|meat|flip)|already))*),? (?:right |just )?"
)
_UNIT_NEXT: Final = (
    r"(?! ?(?:%|°|/|:|\.\d|\d|c\b|f\b|kg|kilo|g\b|gr|lb|pound|oz|ounce|mm|cm|in\b|inch|\"|h\b|hr|hour|min|day|week"
    r"|people|ppl|flats?|points?|pieces?|slabs?|sides?|fillets?|racks?|chunks?|bell(?:y|ies)|breasts?|packs?|x\b|am\b|pm\b|ppm|tsp|tbsp|deg|celsius|fahr|oclock|uhr|st\b|nd\b|rd\b|th\b"
    r"|of\b"
    r"|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|okt|dez|mai))"
)
WEEKDAY: Final = (
    r"(?:(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?"
    r"|(?:mon|diens|donners|frei|sams|sonn)tag|mittwoch)"
)
MONTH: Final = r"(?:jan|feb|mar|mär|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)"
DAY: Final = rf"{WEEKDAY}|today|tomorrow|tonight|the \d{{1,2}}(?:st|nd|rd|th)"

_HOUR: Final = r"(?:(?:1[0-2]|[1-9])(?:[.:][0-5]\d)?|(?:1[3-9]|2[0-3])[.:][0-5]\d)"
_ABOUT_AT: Final = r"(?:(?:at|@|around|about|by|just after|just before|after|before|roughly|circa|ca) ?)*"
# of the fire and after it, where no thermometer reads so little: a small number beside them is an hour
_FIRE_DEED: Final = (
    r"(?:(?<!cut )(?<!split )(?<!sliced )(?:meat|it|its|they) (?:is |went )?in|put it in|bagged it"
    r"|lit(?: it)?|fire(?: is)? lit|(?:meat|brisket|it|its|flat) (?:is |went |has gone )?on|rub(?:bed)?(?: on)?"
    r"|foil on|wrapped(?: it)?"
    r"|on the (?:smoker|grill|pit)|put it on|took it off|pulled it|its off|sliced(?: it)?|started the chill)"
)
_ANY_DEED: Final = (
    rf"(?:{_FIRE_DEED}|(?:flipped|turned)(?: it| them| the bags?)?|done|did it|flip done|bag turned|rinsed)"
)
TOLD: Final = "told"  # taken out only of a line that tells of something done or read
RULES: Final = tuple(
    (re.compile(pattern), written)
    for pattern, written in (
        (r"\b(turned|flipped) (it|them|the bags?) over\b", r"\1 \2"),
        # shorthand
        (r"\b(yesterday|this|tomorrow|last|that|(?:mon|tues?|wednes|thurs|fri|satur|sun)day|mon|tues?|wed"
         r"|thu(?:rs?)?|fri|sat) eve\b", r"\1 evening"),
        (r"(?<=\w) n (?=\w)", " and "),
        (r"\bb4\b", "before"),
        (r"\b([2-9])x(?=\d)", r"\1 x "),
        (r"\b(on|off|in|out|lit|flipped|turned|done|wrapped|rinsed) (?=(?:1[0-2]|[1-9])\.[0-5]\d(?: ?[ap]m)?$)",
         r"\1 at "),
        (r"\b(?:the )?last (?:\d|few|couple of) (?:readings?|times|checks?)$", ""),
        (r"\b(probe|sensor|channel) ([1-4]) (?:(?:says|reads|shows|is|at|now|has) )*(?=\d{2,3}\b)", r"\1 "),
        (r"^(?:(?:i|we|just|now|ive) )*(?:turned|cranked|dropped|raised|lowered|bumped|brought) (?:it|her|him"
         r"|the (?:pit|grill|smoker|fire|heat|oven)) (?:up |down |back )*to (?=[1-3]\d\d\b)", "run the pit at "),
        (r"\b(\d{1,2}) (people|guests|persons) more\b", r"\1 more \2"),
        (r"\b((?:went|put it|got it|its|it is|meats?|brisket|flat) (?:is |are )?(?:on|in)) (?=(?:1[0-2]|[1-9])$)",
         r"\1 at "),
        (r"(?<=[a-z]) ?\+ ?(?=[a-z])", ", "),
        (r"\b(\d{1,2}(?:\.\d)?)[ -]?pounders?\b", r"\1 lb"),
        (r"\b(guests?|people|everyone)(?: are)? now (?=(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?(?: ?[ap]m)?$)", r"\1 at "),
        (r"\b(?:change|set|new|make)(?: the| my)? (?:date|day|deadline)(?: is| to| for)+ ", "move it to "),
        (r"^((?:(?:sorry|oops|i|we) )*(?:missed|forgot) [^,;]*?),? (?:sorry,? )?(?=(?:just )?(?:done|did it|flipped"
         r"|turned)"
         r"(?: it)? (?:just )?now$)", r"\1, "),
        (r"^(flip done|flipped(?: it)?|turned it) (?=(?:the |my )?(?:bags?|tub) "
         r"(?:is|are|has|was|looks?|smells?|feels?|leak\w*|still|seems?|got|swollen|puffy)\b)", r"\1, "),
        (r"^(?:(?:yes|yep|yeah|done),? )?(?:that was )?(?:ages|hours|a while|long|a long time) ago$", "done"),
        (r"\bsat (?=(?:on|out|nude|naked|bare|uncovered|there|for|in the (?:fridge|cooler|bag|brine|tub|car|sun"
         r"|kitchen))\b)",
         "stood "),
        (r",? ?\bfat (?:thumbs?|fingers?),? (?=\d)", " "),
        (r"\bun pause\b", "unpause"),
        (r"^(?:she|he) (?=went|came|is|was)", "it "),
        (r"\b(pit|grill|smoker|cooker)s? (?:wont|cant|doesnt|isnt|not) (?:go|get|going|getting|come)(?: up)?"
         r" (?:past|over|above|beyond) (?=\d{2,3}\b)", r"\1 "),
        (r"\bcant get (?:it|the pit|the smoker|the grill) (?:past|over|above|beyond|hotter than) (?=\d{3}\b)", "pit "),
        (r"^(?:the )?(?:party|dinner|lunch|meal)s? (?:is )?(?:off|cancelled|canceled)\b.*\bno (?:new )?(?:date"
         r"|day)\b.*$",
         "no deadline"),
        (r"\b(\d{1,2}(?:\.\d{1,2})?)k (?=of\b|flat|brisket|belly|ham|loin|pork|beef)", r"\1 kg "),
        (r"^(?:i |we )?(?:said|told you|wrote|typed|put) \d{1,3}(?:\.\d{1,2})?(?: ?(?:mm|cm|in|inch\w*))?,? (?:but"
         r"|and) "
         r"(?=(?:its|it is|it was|really|actually) [^,;]*\d ?(?:mm|cm|in\b|inch|\"))", ""),
        # 0740, «lit it, 8ish», «at 7 meat on», «7.40 flipped»: hours beside a deed
        (r"(?<![\d.,/:])\b0(\d)([0-5]\d)\b(?![.,%]| ?(?:g|kg|ml|f|percent)\b)", r"\1:\2"),
        (r"\b(at|since|by|around) (1\d|2[0-3])([0-5]\d)\b(?![.,%]| ?(?:g|gr|kg|ml|f|m|ft|feet|met\w+|foot|ppm)\b)",
         r"\1 \2:\3"),
        (rf"\b({_FIRE_DEED}),? {_ABOUT_AT}(?P<h>{_HOUR})(?:-\d{{1,2}})?(?:ish)?$", r"\1 at \g<h>"),
        (rf"\b({_ANY_DEED}),? {_ABOUT_AT}(?P<h>\d{{1,2}}[.:][0-5]\d)(?:ish)?$", r"\1 at \g<h>"),
        (rf"\b(?!done by )({_ANY_DEED}) (?:just after|just before|after|before|by|about|around) (?P<h>{_HOUR})$",
         r"\1 at \g<h>"),
        (rf"^{_ABOUT_AT}(?P<h>{_HOUR})(?:ish)?,? (?P<d>{_FIRE_DEED})$", r"\g<d> at \g<h>"),
        (rf"^{_ABOUT_AT}(?P<h>\d{{1,2}}[.:][0-5]\d)(?: ?[ap]m)?,? (?P<d>{_ANY_DEED})$", r"\g<d> at \g<h>"),
        (r"\bout the (?=(?:brine|bag|tub|cure|bucket|fridge|smoker|water|pickle)\b)", "out of the "),
        (r"\b(?:ya|yes|you|u|do you|dya) (?:think|reckon)[ ?]*$", ""),
        (r"^(?!.*\btak\w+ (?:it|her|them) to (?:19|20)\d\b)(?:(?:ok|so|lets|gonna|going to|ill|im|i|we|are|just) )*"
         r"(?:go(?:ing)?|run(?:ning)?|crank(?:ing)?|bump(?:ing)?"
         r"|rais(?:e|ing)|lower(?:ing)?|reduc(?:e|ing)|turn(?:ing)?|tak(?:e|ing)|drop(?:ping)?"
         r"|push(?:ing)?|chang(?:e|ing)|switch(?:ing)?|do(?:ing)?(?= \d+ instead))(?: (?:the )?(?:pit|heat|temp|fire|it"
         r"|smoker"
         r"|grill))?(?: (?:hotter|up|down|at|to|on|for))* (?P<n>[1-3]\d\d)(?: ?(?P<u>[cf]))?"
         r"(?: (?:on|in) the (?:pit|grill|smoker|fire))?(?: (?:now|instead|then|from (?:here|now)(?: on)?))*$",
         lambda m: f"run the pit at {m['n']}{m['u'] or ''}"),
        (r"\b(?:2day|2nite|2night)\b", lambda m: {"2day": "today"}.get(m[0], "tonight")),
        (r"\bl8r\b", "later"),
        (r"^y (?=so|is|do|are|not|\d)", "why "),
        (r"\bu\b(?! ?\d)", "you"),
        (r"\b(we|you|they|u) r\b", r"\1 are"),
        (r"\b(running|be|im|were|are|is) (?:about )?(\d{2,3}) (late|behind)\b", r"\1 \2 min \3"),
        (r"\b(dinner|lunch|supper|breakfast|brunch|tea|meal|food|party)s?(?: is)? (?=(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?"
         r"(?: ?[ap]m)?(?: now| instead| then| please| not (?:at )?\d{1,2}(?:[:.][0-5]\d)?)*$)", r"\1 at "),
        (r"\b(?:dnt|dint|didint)\b", "didnt"),
        (r"\b(?:gotta|hafta)\b", "have to"),
        (r"\b(?:coz|cos|cuz|bc)\b", "because"),
        # a date is one with its weekday: «tuesday, 4 october»
        (rf"\b({WEEKDAY}), (?=\d{{1,2}}(?:st|nd|rd|th|\.)? ?(?:of )?{MONTH}|{MONTH}[a-z]*\.? \d"
         r"|the \d{1,2}(?:st|nd|rd|th)|\d{1,2}[/.]\d{1,2}\b)", r"\1 "),
        # who is meant is the meat
        (r"\b(?:shes|hes|theyre|theyve) (?=(?:on|off|in|out|done|wrapped|resting|up|at|flipped|lit|rinsed|chilling"
         r"|soaking|still|stuck|sitting|all|now|back in|been)\b|\d)", "its "),
        (r",? (?:fat (?:thumbs?|fingers?)|fat fingered(?: it)?|my bad|my mistake|autocorrect|stupid phone"
         r"|misread(?: it)?|silly me)[ .!]*$", ""),
        # greetings before, thanks after
        (r"^(?:(?:hey+|hi+|hello|hiya|yo|ok so|so|oh(?: no)?|ah|um+|uh|hmm+|well(?=,| its| it| i | the| that| now)"
         r"|btw|fyi"
         r"|heads up|quick update|update|good (?:morning|evening|afternoon)|alright|all right|right|guys?|anyway)"
         r"(?: all| there| bot| guys)?[,:.!-]*\s+(?:just )?)+(?=\S)", ""),
        (r"[,. ]+(?:thanks|thank you|thx|ta|cheers|lol|haha+|hehe|mate|xx+|tho|though|fwiw|btw|i promise|i swear"
         r"|for what its worth|sorry for the wait|sorry about that|sorry its late)[ .!]*$", ""),
        (r"^(?:(?:no|nah|nope|sorry)[, ]+)+(?=(?:skip|not yet|not now|not done|not flipped|not turned|later"
         r"|still|leave it"
         r"|havent|cant)\b)", ""),
        (r"^(?:just )?(?:wanted to (?:say|let you know|tell you)|to let you know|letting you know|to report"
         r"|looks like|pretty sure|im pretty sure|i can confirm|confirming|reporting)(?: that)? ", ""),
        (r"\b(?:give or take|on the dot|or so|or thereabouts|dead on|bang on|more or less|ish)\b", ""),
        (r"^(?:can|could|would|will) (?:you|we|u) (?:please |pls )?(?=(?:remind|ping|ask|wake|text|move|push|shift"
         r"|postpone|delay"
         r"|cancel|undo|stop|pause|show|switch|use|change|set|skip|delete|send)\b)(?P<rest>[^?]*)\?*$", r"\g<rest>"),
        (r"^(?:cancel|drop|remove|forget|scrap|delete|clear) (?:the |my )?(?:deadline|date|meal time)$", "no deadline"),
        (r"^((?:(?:sorry|oops|i|we) )*forgot [^,;.\d]*?) (?=(?:but |and |so )?(?:just|only|now) (?:did|flipped"
         r"|turned|doing|flipping)\b)", r"\1, "),
        (r"\b(?:im |i am )?(flipp|turn)ing(?: (?:it|them))?(?: right| just)? now\b", r"\1ed it now"),
        (r"\b(forgot|missed it)[,. ]+(?:im |i am )?doing (?:it|that|them)(?: right| just)? now\b", r"\1, did it now"),
        (r"\b(flipped|turned|did (?:it|the \w+)|done|rinsed|lit|wrapped)((?: it| them| both)?),? (?:but )?"
         r"(?:a bit |bit )?late,? (?:(?:like|about|around|more like|say|maybe|at) )+"
         r"(?=(?:1[0-2]|[1-9])(?:[:.]\d\d)?(?: ?[ap]m)?$)", r"\1\2 at "),
        (r"^((?:a )?(?:quarter|half) (?:to|past) \w{1,6}|(?:1[0-2]|[1-9])(?:[.:]\d\d| ?[ap]m))"
         r" (?:that|it) was\b(?! \d)", r"did it at \1"),
        (r"\b(flipped|turned|did (?:it|the \w+)|done|flip|rinsed|lit|wrapped)((?: it| them| both)?)"
         r" (?:about|around|like|roughly|circa|ca)"
         r" (?=(?:1[0-2]|[1-9])(?::\d\d)?(?: ?[ap]m)?$)", r"\1\2 at "),
        (r"\bthat \d{2,3} was (?=(?:the |in the )?(?:pit|grill|smoker|meat|core|fridge|brine)$)", "that was "),
        (r"\bas of (?=\d)", "since "),
        (r"\b(?:thru|through) (?=(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*\b)", "until "),
        # what was called for, and when it suits
        (r"^(?:ok |yes |ill do it |not now )*(?:when|once|as soon as) (?:im|i am|i get|were|we get|well be"
         r"|ill be) (?:back |home |in |there )+"
         r"(?:at|around|by) (?=\d)", "remind me at "),
        (r"^(?:ok |yes |ill do it |not now )*(?:right |just )?(?P<w>after|before) (?P<m>dinner|lunch|supper"
         r"|breakfast)$",
         r"remind me \g<w> \g<m>"),
        (r"^(?:please )?(?:call|ping|buzz|nudge|text|tell|remind) me (?:again )?(?:with|over|round|around|at) (?:my )?"
         r"(?P<m>breakfast|lunch|dinner|supper)(?: then| please)?$", r"remind me at \g<m>"),
        # said late, and why
        (r"^(?:(?:i|we|sorry|oops|ah|oh) )*(?:totally |just )?(?:forgot to|didnt|never) (?:tell|say|mention|log"
         r"|write|note|send|text|record|enter|report|type|give)(?: you| it| this| that| these| the last one)?"
         r"(?: down| in| up| earlier| before)*"
         r"(?: that| but)?[,:;.]? (?=(?:i|we|it|the|he|she|they|core|meat|pit|fridge) \w|at \d|\d)", ""),
        (r"(?<=\w)(?<!^i)(?<!^we)(?!.*\bmatter),? ?(?:but|and|just)? ?(?:i |we )?(?:totally |completely |just )?"
         r"(?:forgot to|did not|didnt|never) (?:tell|say|log|mention|report|write"
         r"|press|record|text|let|note|hit|tap|confirm|update|answer|reply)\b[^.;,\d]*", " "),
        (rf"{_TURNED}(?:before (?:(?:going to )?(bed)(?:time)?|(?:my |the )?(?:work|school|church|leaving|shift))"
         r"|(?:before|after) (?:breakfast|coffee)|first thing|(?:when|after|once) (?:i|we) (?:got|woke) up)$",
         lambda m: f"{m[1]} at {'bedtime' if m[2] else 'breakfast'}"),
        (r"(?<=\w),? (?:when|before|while|because|since|as soon as|once) (?:i|we|she|he|they|my \w+)"
         r" (?!put it|(?:just )?(?:opened|lifted)\b)"
         r"[^\d?,;.]*(?=$|,| now \d)", TOLD),
        (r"(?<=\w),? (?:before|after) (?:work|bed|bedtime|school|leaving|going out|the gym|shift|church)\b",
         TOLD),
        (r"\b((?:\d{1,3}|an?|half an) ?(?:m?mins?|minutes?|h|hrs?|hours?)) back\b(?! (?:at|to|up|on|in)\b)", r"\1 ago"),
        (r"(?<=\w),? (?:but )?(?:the )?(?:actual |real )?time was (?:more like|about|around|nearer)? ?(?=\d)", " at "),
        (r"(?<=[a-z]) ?(?:a bit )?earlier, (?=(?:at|around|about)? ?\d)", " "),
        (r"(?<=[a-z]), (?=(?:at|around|about) \d{1,2}(?::\d\d)?(?: ?[ap]m)?$)", " "),
        # from what to what it went: what it is now
        (r"\b(?:(?:up|down|climbed|rose|risen|dropped|fell|jumped|back|now"
         r"|crept) )+to (\d{1,3}(?:\.\d)?(?: ?[cf]\b)?) from"
         r" \d{1,3}(?:\.\d)?(?: ?[cf]\b)?", r"now \1"),
        (r"\b(?:went|(?<!was )(?<!is )(?<!been )(?<!were )gone|climbed|rose|risen|dropped|fell|jumped|crept|up"
         r"|down) from \d{1,3}(?:\.\d)?(?: ?[cf]\b)? (?:up |down )?to"
         r" (?=\d)(?![\d.]+ ?(?:kg|kilos?|lbs?|pounds?|g)\b)"
         r"(?!\d{1,3}(?:\.\d)?(?: ?[cf])? (?:in|over|within) (?:\w+ )?(?:\d|an?\b|half))", "now "),
        (r"\b(?:gave|given|giving) (?:it|them|the \w+) (?:an? |another )?(?:(?:good|quick|nice|final|thorough|proper"
         r"|wee) )*"
         r"(flip|turn|rinse|soak)\b", r"did the \1"),
        (r"^(on|off) at (\d{1,2}[:.]\d\d(?: ?[ap]m)?),? (?=pit|core|meat|with|\d)", r"\1 at \2, "),
        # half of a piece whose whole was weighed
        (r"\b(?P<part>half|a quarter|a third) (?:of )?(?:an?|the|my) (?P<mass>\d{1,2}(?:\.\d{1,2})?) ?"
         r"(?P<unit>lbs?|pounds?|kgs?|kilos?)\b", share),
        # numbers that are written apart
        (r"\bnegative (?=\d)", "-"),
        (r"\b(?:last (?:night|evening)|yesterday evening) and (?:again )?(?:this morning|just now|now|today)\b",
         "both times"),
        (r"\bit was (?:at )?(\d{1,2}(?::\d\d)?(?: ?[ap]m)?) (?:when |that )?(?:i|we) "
         r"(did it|flipped|turned it|rinsed|lit it)\b", r"\2 at \1"),
        (r"\bhalf one\b", "half 1"),
        (r"\bbetween (\d{1,4}(?:\.\d{1,2})?) and (?=\d{1,4}(?:\.\d{1,2})? ?(?:mm|cm|inch|in\b|kg|kilo|lb|pound|g\b"
         r"|gr|%))", r"\1 to "),
        (r"\b(lunch|dinner|supper|breakfast|brunch),? not (?:lunch|dinner|supper|breakfast|brunch),? (?=\d)",
         r"\1 at "),
        (r"\b(took|takes|for|within|after|over|in|about|only) (\d{1,2}) ?h(?:rs?|ours?)? ?([0-5]\d)(?: ?m(?:ins?)?)?\b",
         lambda m: f"{m[1]} {60 * int(m[2]) + int(m[3])} min"),
        (r"\b(\d{1,2})h([0-5]\d)\b(?! ago)", r"\1:\2"),
        (r"\b(?P<b>at|since|til|till|until|around|by|from|before) (?P<h>1?\d|2[0-3]) (?P<m>[0-5][05])\b" + _UNIT_NEXT,
         r"\g<b> \g<h>:\g<m>"),
        (r"(?<![\d.])(\d{1,2}) ?(?:kg|kilos?) ([1-9]\d\d)\b" + _UNIT_NEXT, r"\1.\2 kg"),
        (r"(?<![\d.])(\d{1,2}) ?(?:lbs?|pounds?) ?(\d|1[0-5])\b(?!\.\d)(?!-\d| \d/\d)" + _UNIT_NEXT, r"\1 lb \2 oz"),
        (r"\b(1[0-9][0-9]|[1-9]\d)[oO]\b", r"\g<1>0"),
        (r"\b(1)[lI](?=\d)", r"\g<1>1"),
        (r"\b(?:the )?(?:fire|pit|smoker|grill)s? (?:has |is |have |just )*(?:died|dying|dropped|dropping|fell|fallen"
         r"|gone|going|went|down|sunk|sinking|cooled|slipped|crept)(?: (?:right|all the way|back|off|away|down|up))*"
         r" (?:to|at) (?=\d{2,3}\b)", "pit "),
        (r"(?<=\d) ?mils?\b", " mm"),
        (rf"\b({WEEKDAY}) in (?:a|1|one) week\b|(?<!for )\b(?:a|1|one) week (?:on|from) ({WEEKDAY})\b",
         lambda m: f"{m[1] or m[2]} week"),
        (r"\bmore like (\d{1,4}(?:\.\d{1,2})?(?: ?(?:mm|cm|in|inch|kg|lb|g|c|f))?) than (?=\d)", r"\1 not "),
        (r"\bon the nose\b", ""),
        (r"\b(on|off|in|lit|wrapped|going|burns|burning|water|ice"
         r"|bath) since (?:about )?(\d{1,3}) ?(min(?:ute)?s?|h|hrs?|hours?)\b(?! ago)",
         r"\1 \2 \3 ago"),
        (rf"\b({DAY}), (?=(?:at )?(?:(?:1[0-2]|[1-9])(?:[:.][0-5]\d)? ?[ap]m\b|(?:[01]?\d"
         rf"|2[0-3])[:.][0-5]\d\b))", r"\1 "),
        (r"\b(thickness|weight) (?:was|is) wrong,? (?:(?:its|it is|should be|really|rather) )+", r"\1 is "),
        (r",? ?(?:so )?(?:you|u) dont (?:need|have) to (?:remind|ping|ask|tell|call) me(?: again| about it)?$", ""),
        (r"\b(?:the )?(?:first|1st|second|2nd|other) (?:probe|one|thermometer|sensor)(?: (?:says|reads|is"
         r"|at))* (?=\d{2,3}\b)", "core "),
        (r"(?<=\d),? (?:the )?(?:second|2nd|other) (?=\d{2,3}\b)", " core "),
        (r"\b(flip|turn|bag) (?:no|nr|number|num)\.? ?\d{1,2}\b", r"\1"),
        (r"\b(?:the )?(?:smoker|fire|grill|pit|cooker) (?:wont|cant|will not|doesnt) (?:start|be lit|be on|light"
         r"|come on)(?: up)?"
         r" (?:till?|until|before) (?=\d)", "light it at "),
        (r"\bnothing(?:s| is| has)? (?:happens|happening|happened|moves|moving|moved|going on|changes|changed)"
         r"(?:,? (?:since|for|in|at all|over)(?: (?:the )?(?:last )?(?:an?|half an|\d{1,2}|ages"
         r"|a while)(?: (?:hours?|hrs?|h|min\w*))?)?)?,?"
         r" (?=.*\d\d)", "still "),
        (r",? ?\bafter (?:half an?|an?|\d{1,3}) ?(?:h|hrs?|hours?|min\w*) (?:in|on|of) (?:the )?ice(?: ?bath"
         r"| ?water)?\b", ""),
        (r"(?<!bottom )(?<!top )(?<!beef )(?<!eye )(?<!of )\bround (?=(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?(?: ?[ap]m)?$)",
         "around "),
        (r",? ?(?:(?:can|could|will|would) (?:you|u) help(?: me| us)?(?: with (?:it|that|this))?)(?: please"
         r"| pls)?[ ?!.]*$",
         ""),
        (r"\b(?:when|if) im (?:up|awake)\b", "in the morning"),
        (r"\b((?:1[0-2]|[1-9])(?:[:.][0-5]\d)?)(?: oclock)? in the morning\b", r"\1 am"),
        (r"\b((?:1[0-2]|[1-9])(?:[:.][0-5]\d)?)(?: oclock)? in the (?:evening|afternoon)\b", r"\1 pm"),
        (r"^((?:(?:ill|please|just|gonna|going to|will|only|ok|can you) )*(?:remind|ping|ask|call|tell|text|buzz"
         r"|wake|do|flip|turn)"
         r"\b[^\d]*) in the (morning|evening|afternoon)$", r"\1 this \2"),
        (rf"\b((?:{WEEKDAY})(?: week)?) (?:about|prob|probs|probably|maybe|like|say) (?:at )?(?=(?:1[0-2]"
         rf"|[1-9])\b{_UNIT_NEXT})", r"\1 at "),
        (r"\b(?:the )?fires? (?:is |at |is at |now )?(?=\d{3}\b|\d{2} ?(?:c\b|°|deg))", "pit "),
        # nothing moved, and since when is said loosely
        (r"\b(?:the )?(?:temp(?:erature)?|its?|meat|core|needle|probe)? ?(?:hasnt|has not|havent|didnt|isnt|wont|not)"
         r" (?:really )?(?:mov(?:ed?|ing)|budg(?:ed?|ing)|chang(?:ed?|ing)|gone (?:up|anywhere)|ris(?:en|ing)"
         r"|climb(?:ed|ing))(?: (?:off|from|past|above|over|beyond))?"
         r"(?: (?:in|for|since|at) (?:an?|the last|over an|\d+|half an|ages|a while)"
         r"(?: (?:hours?|hrs?|h|min\w*|while)\b)?)?,?"
         r" ?(?=.*\d\d)", "still "),
        # how it runs, and how far it has come: beside the number that stands now
        (r"(?<=\d\d),? (?:and|an|n|&) (?:climbing|rising|falling|dropping|holding|steady|counting"
         r"|going (?:up|down))\b", ""),
        (r"\b(?:its |it |pit |thing )?(?:has |is |just )?(?:run|running|ran|got|getting) (?:off|away)"
         r"(?: (?:on|from|with) (?:me|us))?,? (?=\d{3}\b)", "pit "),
        (r"^(?:its |it |temp |has |just )*(?:went|gone|go|jumped|climbed|risen|rose|come|came|crept|dropped|fell)"
         r" (?:up|down)? ?(?:by )?\d{1,2}(?: (?:degrees?|deg))?"
         r" in (?:the last |about )?(?:half an? (?:hr|hour)|half hr|an? (?:hr|hour)"
         r"|\d{1,2} (?:hrs?|hours?|mins?|minutes?)),? "
         r"(?=(?:(?:and|so|now|its|at|is|core|meat|pit) )*\d{2,3}\b)", ""),
        # nobody knows since when
        (r",? (?:and |but )?(?:dunno|dont know|do not know|not sure|no idea|no clue|unsure|who knows)"
         r" (?:since when|how long|for how long)"
         r"[ .!]*$", ""),
        # a day that is not, and the one instead
        (rf"^(?:{DAY})s? (?:is |now )*(?:off|out|no good)(?: now)?[,.;]+ ?(?:so |but |lets "
         rf"|make it )*(?=.*\b(?:{DAY})\b)", ""),
        (rf"\b(?:\w+ )?(?:cant|cannot|cant do|wont|couldnt|not) (?:make|do|work for"
         rf"|come)? ?(?:it )?(?:on )?(?:{DAY})\b"
         rf"[,.; ]*(?:so |but |can we |lets |please )*(?=.*\b(?:{DAY})\b)", ""),
        (r"\bremind me (?=what|why|how|when)", ""),
        (r"\bwhat the (dose|recipe|plan|time|strength) (?:is|was)(?: again)?\b", r"whats the \1"),
        (r"\b(?:celsius|c) not (?:f|fahrenheit)$", "in celsius"),
        (r"\b(?:fahrenheit|f) not (?:c|celsius)$", "in fahrenheit"),
        (r"\b(?:pink stuff|pink powder|the pink$)", "pink salt"),
        (r"\b\d{1,3}[- ](?:something|odd)\b", "something"),
        (r"\bmy other half\b", "partner"),
    )
)  # fmt: skip
