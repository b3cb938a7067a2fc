"""The words for what was done, a pattern a step, in the order in which they are looked for."""

from typing import Final

from bot.intents.context import FALLING, Context
from core import patterns as re
from core.plan.steps import Kind

_NAMED: Final = (
    r"(?:flats?|briskets?|pieces?|slabs?|bell(?:y|ies)|hams?|joints?|loins?|pork|birds?|turkeys?|chickens?|ducks?|fish)"
)
_IT: Final = rf"(?:it|them|her|him|both|everything|bags?|meats?|(?:the|my|our) (?:bags?|meats?|lot|{_NAMED}))"
_DRY_GOODS: Final = r"(?:the |my )?(?:cure|curing salt|pink salt|salt|sugar|everything)"
_RUBBED_ON: Final = (
    r"\brubbed (?:(?:it|them|the meat) )?(?:all )?(?:down )?(?:in |on |with )?(?:all )?(?:of )?(?:the )?(?:dry )?"
    r"(?:cure|curing salt|pink salt|salt)\b"
)
_COOKER: Final = (
    r"(?:the |my |our |up )*(?:(?:pellet|gas|electric|charcoal|kettle|offset|drum) )?"
    r"(?:smoker|grill|pit|cooker|barbecue|bbq|kettle|burners?|pellets|fire|coals?|charcoal)"
)
HEATS: Final = (  # «fired up the smoker», «turned the grill on», «got it going», «the smoker is heating up»
    rf"\b(?:fir(?:ed|ing) up|(?:turn|switch)(?:ed|ing) on|start(?:ed|ing)(?: up)?|preheat(?:ed|ing)"
    rf"|(?:heat|warm)(?:ed|ing) up) {_COOKER}\b|\b(?:(?:turned|switched) {_COOKER} on|fired {_COOKER} up)\b"
    rf"|\b(?:got|getting) {_COOKER} (?:going|burning|hot)\b"
    rf"|\b{_COOKER}s? (?:(?:is|are|now) )*(?:heating|warming|coming) up\b"
    rf"|\b{_COOKER}s? (?:(?:is|are|now) )*(?:preheating|fired up)\b"
    r"|^(?:(?:ok|just|i|we|so|and|now|im|ive|have) )*(?:fir(?:ed|ing) (?:it|her|this thing|the thing|the beast|that) up"
    r"|fir(?:ed|ing) up)(?: (?:now|early|already|just now))*$"
)
# what was said to be done, in the order in which it is looked for
OTHER_OFF: Final = re.compile(  # «put it off til 8», «scraped it off»: no meat comes off the fire by it
    r"\b(?:put(?:ting)?|h[eo]ld(?:ing)?|push\w*|call\w*|turn\w*|switch\w*|shut\w*|scrap\w*|wip\w*|wash\w*|cut"
    r"|trim\w*|shak\w*|shook|brush\w*|burn\w*|knock\w*) (?:it|them|that|this|the \w+) off\b"
    r"(?! (?:the )?(?:heat|fire|grill|smoker|pit)\b)"
)
DEEDS: Final = re.Rules(
    (re.compile(words), kind)
    for kind, words in (
        (Kind.FLIP, rf"\b(?:flipp?e?d|did (?:turn|flip) {_IT}|turned (?:{_IT}|{_NAMED})\b(?! (?:down|up|off|on)\b)"
                    rf"|turned over|turnt"
                    rf"|massaged"
                    rf"|flip(?:s|ping)? (?:is "
                    rf"|are |was )?(?:done|sorted|ok|okay))\b"
                    r"|^(?:(?:both|bag|bags|meat|it|all|pieces|sides?) )*(?:is |are )?turned(?:$| (?=(?:at "
                    r"|around )?\d{1,2}[:.]\d\d))|^flip$"),
        (Kind.OUT, r"\b(?:pulled|lifted|taken|took|removed|came|got|fished|drained) (?:it |them |the meat )?(?:from"
                   r"|out of) (?:the |its )?"
                   r"(?:brine|cure|salt|bag|bucket|tub|pickle)\b|^out and drained\b|\bout of the (?:brine|cure|bag"
                   r"|salt|bucket|tub|pickle)\b|^(?:(?:its|meat is|all|now) )*out of (?:brine|cure|bag|pickle)"
                   r"(?: now)?$"
                   r"|\b(?:took|taken|taking) (?:it|them|the meat) out(?! of)\b"
                   r"|^(?:(?:its|meats?|meat is) )?out(?: now)?$"),
        (Kind.INTO_CURE, r"\bsubmerged\b|^(?:(?:the|its|all|ok|now) )*salts?(?: is| are)? on\b"
                         r"|^(?:(?:i|we|have|ive|just|all|its|is|it) )*salted(?: it| them"
                         r"| the \w+)?(?: now| up)?(?=$| (?:at|around|about|since) \d| \d+ ?[hm]\w* ago"
                         r"| (?:last night|this morning|yesterday))"
                         r"|\bin (?:it|they|she|he) (?:go(?:es)?|went)\b|\bin(?:to)? the (?:brine|cure|bag|bucket"
                         r"|tub|pickle)\b|(?:^|\b(?:meat|fish|fillets?|side|it|its|is|are|them|went|lies|laid|now) )"
                         r"in(?:to)? the (?:dry )?salt\b"
                         r"|(?:\b(?:meat|its|it|them|went|going|put|popped) in(?:to)? (?:brine|cure)\b"
                         r"|^(?:its )?bagged(?=$| and\b| at \d{1,2}[.:])|\band bagged(?: it)?$)"
                         r"|(?<!double )(?<!double-)(?<!re)(?<!re-)\b(?:bagged (?:it|up)"
                         r"|started curing|its curing)\b|\b(?:put|got) (?:it|them|the meat) in\b(?! the)"
                         r"|\bmeats? (?:went |is |goes )?in\b(?! the| (?:[a-z]+ )?(?:paper|foil|film|wrap|cloth))"
                         r"|^(?:its )?in(?: now)?(?=$| at \d)"
                         r"|\b(?:it|they|meat|flat|brisket|ham|belly|bag) (?:all )?went in\b(?! the (?:fridge|oven"
                         rf"|bin))|{_RUBBED_ON}"
                         r"|\b(?:meats?|its?|they|them|all|everything|the lot|flats?|pieces?)(?:s| is| are| has| have"
                         r"| all|ve)* (?:gone|been put|dropped) in\b(?! the (?:fridge|oven|bin|freezer))"
                         r"|\b(?:everything|the lot|all)s? (?:is )?in(?: now)?$|\b(?:is |its )?going in(?: now)?$"),
        (Kind.RINSE, r"\b(?:rinsed|washed (?:it|off)|rins(?:e|ing) (?:is )?done)\b"),
        (Kind.SOAK, r"\b(?:soaked|soak(?:ing)? (?:is )?(?:done|over)|desalted)\b"),
        (Kind.EVEN, r"\b(?:sealed (?:it|them|the meat)|(?:its|it is|meat is|all) sealed|vacuum(?:ed| packed| sealed)"
                    r"|bagged (?:it )?to rest|equali[sz]ing|evening out|resting)\b|^sealed$"),
        (Kind.RUB, r"^(?:no rub,? )?(?:just|only) (?:salt (?:and|&|n) )?(?:cracked |black )?pepper(?:,? no rub)?$"
                   r"|\b(?:pepper|coriander|spices?|crust)\b[^\d,;]{0,24}\bon(?=$|[,;])|\b(?:rubbed|rub(?:s"
                   r"| is)? (?:now )?on|seasoned)\b"),
        (Kind.DRY, r"^(?:(?:its|nice and|now|is|all|the|surface) )*tacky(?: now)?$"
                   r"|\b(?:shiny|glossy|dry) (?:and|but|n|&) (?:a (?:bit|little) |slightly |nicely )?(?:tacky|sticky)\b"
                   r"|\bpellicle (?:is )?(?:formed|there|on|done)\b"
                   r"|\bh(?:u|a)ng(?:ing|s)? (?:(?:it|them) )?(?:up )?in (?:the )?fridge\b"
                   r"|\b(?:patted(?: it)? dry|dried(?: it)?|drying (?:is )?(?:done|now)|air[ -]?drying"
                   r"|(?<!wet )(?<!damp )(?<!dripping )(?<!soggy )(?:drying )?(?:on|onto) (?:the |a )?(?:wire )?rack"
                   r"(?: uncovered)?)\b"),
        (Kind.LIGHT, r"^(?:(?:im|i am|we are|just|now) )*lighting(?: it| the \w+)?(?: up)?(?: now)?$"
                     rf"|{HEATS}"
                     r"|\b(?:lit|lighted)\b(?! up)|(?<!more )(?<!some )\b(?:fire|charcoal|coals?)(?:s| is"
                     r"| are)? (?:now )?(?:lit|going(?! (?:down|out|off|low|bad|cold|weak))|on|started|burning|burns"
                     r"|glowing)\b"
                     r"|\bstarted the (?:fire|smoker|grill)\b|\b(?:smoker|grill|pit) is (?:on|lit|going)\b"
                     r"|^(?:the |my )?(?:smoker|grill|pit|oven|bbq)s? (?:on|lit|going)(?: now)?$"),
        (Kind.WRAP, r"\bwrapped\b|\bwrapping (?:it |them )?(?:up )?(?:now|in (?:butcher )?(?:paper|foil))\b"
                    r"|\bfoiled\b|\b(?:paper|foil)(?: is|s| went| has gone)? (?:on\b|a?round (?:it|them|the meat)\b)"
                    r"|\bwrapping (?:is )?done\b|\bits in (?:the )?(?:foil|paper)\b|^(?:foil|paper) at (?=\d)"
                    r"|^(?:now )?in (?:the )?(?:foil"
                    r"|paper)(?: now)?$"),
        (Kind.OFF, rf"\b(?:pulled (?:{_IT}|at)|took (?:{_IT}|the meat)? ?off|taken off|off the (?:smoker|heat|grill"
                   rf"|pit|fire)|(?:out of|from) the (?:smoker|oven|stock ?pot|pot))\b"
                   r"|\b(?:taking |took |pulling )?(?<!washed )(?<!rinsed )(?<!dried )(?:meat|brisket|it"
                   r"|flat)s? (?:is )?(?:now )?off\b"
                   r"|^pulled\b|^(?:(?:its|it is|meats?|now) )*coming off(?: now)?$|^off\b(?! (?:the (?:phone|call"
                   r"|hook|sofa|road|train|bus|plane|clock)|to|work|topic"
                   r"|out|for|home)\b)|\b(?:from|vom|of) (?:the )?(?:grill|smoker|pit|feuer)(?: genommen| geholt)?$"),
        (Kind.MEAT_ON, rf"\b(?:meat|brisket|flat|it)s? (?:is |are |went |just went )?(?:now )?on(?! (?:(?:the|my"
         rf"|a) )?(?!(?:grill|smoker"
                       rf"|pit|grate|cooker|fire|bbq|barbecue|kettle|rails?|hooks?|offset|heat|low)\b)(?:rack"
                       rf"|counter|ice|top"
                       rf"|(?<=the )\w+|(?<=my )\w+))\b"
                       rf"|\b(?:put|got) (?:{_IT}|the meat) on\b(?! (?:the |a |my )?(?:ice|rack|counter|top|board"
                       rf"|table|floor|ground|plate|tray|side|scales?|worktop|bench|cutting))"
                       r"|\bon (?:it|they) go(?:es)?\b|^(?:(?:it|its|meat|brisket) )?(?:goes|going) on(?: now)?$"
                       r"|\b(?:has been|been|is|its) on since\b|\bliegt drauf\b|^drauf\b"
                       r"|\bin(?:to)? the (?:stock ?)?pot\b|^(?:(?:its|now|meat is) )*simmering(?: now| away)?$"
                       r"|(?<!\d )(?<!turned )(?<!switched )(?<!turning )\b(?:on|in) the (?:smoker"
                       r"|grill|pit|grate|cooker)\b|^on(?: now)?$|^on (?:at"
                       r"|since) (?=\d)"),
        (Kind.SLICE, r"\b(?:sliced|carved|cut it up)\b|\b(?:slicing|carving)(?: it| them)? (?:up )?now\b"
                     r"|^(?:(?:ok|im|we are|were|just|finally) )*(?:slicing|carving)(?: it| them| up)*$"),
        (Kind.SERVE, r"\b(?:eaten|served|we ate|ate (?:half|some|most|part|a bit|a third|all|the lot)"
                     r"|(?<!dog )(?<!dogs )(?<!cat )ate (?:it|the|some|half|most)|all gone|scoffed"
                     r"|(?:gave|given|took) (?:half|some|most|the rest|a bit|it all)(?: of it)? (?:away|to))\b"),
        (Kind.REST, r"\b(?:resting|into (?:the |a )?cooler(?! (?:with|of|full|w|and) .{0,12}\bice)"
                    r"|in the cooler(?: ?box)?"
                     r"|(?:towels?|its|wrapped) in (?:a )?cooler|rest started|started (?:the )?rest)\b"),
        (Kind.CHILL, r"(?<!chill )(?<!chill it )(?<!cool )(?<!cool it )\b(?:in(?:to)? (?:the |an )?ice(?: ?bath"
                     r"| ?water)?"
                     r"|in the chill(?:er)?|chilling|ice ?bath (?:is )?(?:started|going)|started (?:the )?(?:chill"
                     r"|ice ?bath)|(?:it|meat) on ice|(?:cooler|sink|tub|bucket) (?:with|w|of|full of"
                     r"|and) (?:the )?ice)\b"
                     r"|\bon (?:a |the )?(?:wire )?rack\b.{0,16}\b(?:shelf|fridge)\b"
                     r"|^(?:(?:in|now|ok|an|the) )*ice ?(?:bath|water)(?: now| (?:is )?(?:done|started|ready))?$"
                     r"|^(?:(?:in|on|now|ok|an|the|its|been|meat) )*ice(?: ?(?:bath|water))? "
                     r"(?=(?:since|for|about) |\d{1,3} ?m?min|an hour|half an)"
                     r"|^(?:(?:ok|now|and|i|ive|we|weve|have|just) )*start(?:ed|ing)? (?:the |to )?"
                     r"(?:chill|cool)(?:ing)?\b"
                     r"|\bchill(?:ing)?(?: is| has)? (?:started|begun)\b"),
        (Kind.BRINE, r"^(?:(?:i|we|ok|just|have|ive) )*made it(?: with (?:hot|warm|boiling|cold|tap) water)?$"
                     r"|\b(?:made|mixed|brewed|cooked) (?:up )?(?:the |a )?(?:brine|pickle)\b"
                     r"|^(?:(?:ok|the|my|cure) )*(?:brine|pickle)s? (?:(?:is|are|now|just|all|still|sitting) )*"
                     r"(?:on the (?:stove|hob|cooker)|in the (?:fridge|pot)|cool(?:ing|ed(?! to))|cooked|boil(?:ed|ing)"
                     r"|simmering|heating|dissolved|chilling)\b|\b(?:boiled|heated|dissolved|stirred|simmered) (?:up )?"
                     r"(?:the |my |it in the )?(?:brine|pickle|salts?)\b"
                     r"|^(?:now |ok |im )*cooling (?:down )?(?:the |my )?(?:brine|pickle)\b"
                     r"|^(?:(?:ok|im|i am|we are|now|just|home|back) )*(?:making|mixing) (?:up )?(?:the |a )?(?:brine"
                     r"|pickle)(?: (?:now|right now|up))*$|\b(?:brine"
                     r"|pickle)s? (?:is )?(?:made|ready|mixed|done)\b"
                     rf"|\b(?:weighed|measured) (?:out )?(?:{_DRY_GOODS}\b|it all|it out)"
                     rf"|\b{_DRY_GOODS}(?: is| are|s)? (?:all )?(?:weighed|measured)(?: out)?\b"
                     r"|^(?:(?:all|ok|its|is|now) )*(?:weighed|mixed)(?: out| up| together)?$"
                     r"|\bmixed (?:it|everything)\b(?: all| up| together)*$"),
        (Kind.BRINE_CHECK, r"\bbrine(?: is|s)? (?:cold|cool|chilled)\b"),
        (Kind.THAW, r"\b(?:its|is|fully|all|meat) (?:now )?(?:thawed|defrosted)\b|^(?:thawed|defrosted)\b"),
        (Kind.FRIDGE_CHECK, r"\b(?:checked|looked at) (?:the )?fridge\b"),
    )
)  # fmt: skip
LIT: Final = next(words for words, kind in DEEDS if kind is Kind.LIGHT)
_NOUNS: Final = {
    "flip": Kind.FLIP, "flips": Kind.FLIP, "turn": Kind.FLIP, "turns": Kind.FLIP, "turning": Kind.FLIP,
    "flipping": Kind.FLIP, "rinse": Kind.RINSE, "rinsing": Kind.RINSE, "soak": Kind.SOAK, "soaking": Kind.SOAK,
    "rub": Kind.RUB, "rubbing": Kind.RUB, "wrap": Kind.WRAP, "wrapping": Kind.WRAP,
    **dict.fromkeys(("weigh the salt", "weigh the cure", "do the salt", "do the cure", "salting"), Kind.BRINE),
    "mixing": Kind.BRINE, "weighing": Kind.BRINE, "lighting": Kind.LIGHT,
    "brine": Kind.BRINE, "slice": Kind.SLICE, "slicing": Kind.SLICE, "light": Kind.LIGHT, "fire": Kind.LIGHT,
    "reading": Kind.READING, "readings": Kind.READING,
    "fridge check": Kind.FRIDGE_CHECK, "brine check": Kind.BRINE_CHECK, "fridge": Kind.FRIDGE_CHECK,
    "mid check": Kind.MID_CHECK, "check": Kind.FRIDGE_CHECK, "drying": Kind.DRY, "rest": Kind.REST, "thaw": Kind.THAW,
}  # fmt: skip
_NOUN: Final = re.compile(rf"\b(?:{'|'.join(sorted(_NOUNS, key=len, reverse=True))})\b")


def noun(text: str) -> str | None:
    """The step that a plain text names by its noun."""
    found = _NOUN.search(text)
    return str(_NOUNS[found[0]]) if found else None


def called(text: str, context: Context) -> str | None:
    """The step by its noun; a check beside hot meat is that of the fire or the chill, where no fridge is named."""
    named = noun(text)
    if context.phase == "cooking" and named == Kind.FRIDGE_CHECK and "fridge" not in text:
        return str(Kind.READING)
    cools = context.phase in FALLING and named == Kind.FRIDGE_CHECK and "fridge" not in text
    return str(Kind.CHILL_CHECK) if cools else named


TO_A_PLACE: Final = re.compile(  # «moved it to the fridge at 2»: the meat, and no meal
    r"\b(?:mov(?:e|ed|ing)|shift(?:ed|ing)?|brought|bring|transferred|slid|shoved?|went|gone|put|got)\b[^,;\d]{0,16}"
    r"\b(?:to|into|onto"
    r"|in|on)"
    r" (?:the |a |an |my )?(?:fridge|freezer|ice|rack|cooler|oven|cellar|garage|shelf|water|bath|tub|bag|board|counter"
    r"|grill|smoker|pan|tray)\b"
)
WITH_MEAT: Final = re.compile(r"\b(?:put|putting|take|taking|light|lighting|smok\w+|rins\w+) (?:it|them|the)\b")
