"""Questions: about the batch in hand («what now», «why 11 days», «is it safe»), or about the trade, for the entries."""

from typing import Final

from bot.intents import asked_batch, filing, yard
from bot.intents.context import RAW, Context
from bot.intents.feels import UNMOVED
from bot.intents.foretold import is_fuelled
from bot.intents.intents import Ask, Intent, Unclear
from core import patterns as re

_NOW: Final = (
    r"^/?(?:and )?(?:now|status|next|update|today|jetzt)$|\bwhat have (?:i|we) to do\b|\bwhat(?:s| is| do i do"
    r"| do we do| should i do| to do)? (?:now|next"
    r"|up next|due)\b|\bnow what\b|\bnext step\b|\bwas (?:jetzt|nun|als nächstes)\b"
    r"|\bwhere (?:are|am) (?:we|i)\b(?: at| now)?$|\bwhat(?:s| is) (?:the )?status\b|\bnächster schritt\b"
    r"|\bwhen(?:s| is) (?:the |my |our )?next (?:one|flip|step|check|reading|thing|reminder|turn)\b"
    r"|^(?:so )?hows (?:it|everything|that|this) (?:look(?:ing)?|going|doing|coming along)$"
    r"|\bwhats up next\b|\bwhat (?:do|must|should) (?:i|we) (?:have to |need to |still have to )?do(?: today| now"
    r"| about (?:it|that|this)| then)?$"
    r"|\banything (?:to do"
    r"|due)\b|\bwhat day (?:are we|is it)\b"
)
_PLAN: Final = (
    r"^/?(?:the |my )?(?:plan|schedule|timeline|zeitplan|full plan|whole plan|ablauf)(?: (?:please|pls|again|bitte))*$"
    r"|\b(?:show|send|give|gimme|resend|see|repeat|list)(?: me)?(?: the| my)?(?: whole| full)? (?:plan|schedule"
    r"|timeline|week)\b"
    r"|\bhow (?:long|many days|many hours|much longer) (?:til|till|until|to|before) (?:the |i |we "
    r"|its )?(?:next )?(?:rinse|flip|turn|soak|light|fire"
    r"|smoke|cook|wrap|rest|take|slice|come)\w*$"
    r"|\bwhen do (?:i|we) (?:rinse|flip|light|start|take it out|slice|chill|put)\b|\bdays (?:left|to go)\b"
    r"|\bhow many (?:more )?days$"
    r"|\b(?:whats|hows|how is|how does|what is) the (?:plan|schedule)\b"
    r"|\bwhats left\b|\beverything (?:thats )?left to do\b|\bwhat (?:day|time|hour) (?:do|does|will"
    r"|shall|should) (?:i|we|it) (?:rinse|flip"
    r"|light|start|take|slice|chill|put|come|go)\b"
)
_WHY: Final = (
    (
        "days",
        r"\b(?:why|warum|how come|explain|how did you get)\b.{0,40}\b(?:days?|so long|cure (?:so )?long|weeks?|tage"
        r"|the cure)\b|\bwhy (?:not )?(?:sooner|shorter|longer)\b|\bwhy so long\b|\bhow did you (?:get"
        r"|work out) (?:that|this|the days)\b",
    ),
    (
        "dose",
        r"\b(?:why|warum|how come|explain|how did you get)\b.{0,24}\b(?:grams?|g|dose|ppm|that much|so (?:much"
        r"|little) (?:cure|salt)|this much|mg/kg|much cure|much salt)\b",
    ),
    (
        "hours",
        r"\b(?:why|warum|how come|explain)\b.{0,24}\b(?:hours?|h|cook|stunden|light (?:it )?(?:so )?early|so early"
        r"|that early|that late)\b",
    ),
    (
        "chill",
        r"\b(?:why|warum|how come|explain)\b.{0,16}\b(?:that chill|the chill|ice bath|cool it (?:so )?(?:fast"
        r"|quick\w*)|unwrap)\b",
    ),
)
_TOPICS: Final = (
    ("now", _NOW),
    ("settings", r"^/?(?:my )?(?:settings|einstellungen)$|^(?:show|what are)(?: me)?(?: the| my)? settings$"),
    ("forget", r"^/?(?:please )?(?:forget|delete|erase) (?:me|my data|all my data|everything about me)$"
               r"|^vergiss mich$"),
    ("batches", r"^/?(?:batches|list|chargen)$|\b(?:which|what|list|show)(?: me)?(?: the| my| all)? batches\b"),
    ("plan", _PLAN),
    ("safe", r"^is (?:it|this|that|everything|all) (?:still )?(?:all )?(?:ok|okay|alright|fine|good|right)"
             r"(?: (?:like this|like that|this way|as it is|so))?$"
             r"|^(?:(?:but|well|look|trust me),? )*(?:i know what (?:i am|im) doing|trust me"
             r"|(?:ive|i have|we have|weve) always done it (?:like this|this way|so))$"
             r"|^/?(?:safe|safety|sicher)$|\b(?:is|are|still|was) (?:it|this|that|they|my (?:meat|brisket|pastrami"
             r"|batch)|the (?:meat|brisket|pastrami|batch))?(?: still| all)? ?(?:safe|ok to eat|okay to eat"
             r"|good to eat|fine to eat)\b|\bcan (?:we|i) (?:still )?eat (?:it|this|that|them)$"
             r"|\b(?:all|everything|still) safe\b|\b(?:any of (?:it|them|this)|anything|is (?:it|this)) unsafe\b"
             r"|\bsafe to eat\b|\bist (?:es|das) (?:noch )?sicher\b|\bam i safe\b"),
    ("eta", r"\b(?:is|was) (?:this|that|it) (?:already |now |in )?(?:the |a )?stall\b"
            rf"|^(?:its |it |temp |still |been )*(?:stalled|stuck|{UNMOVED})(?: again| still| now| at all)*$"
            r"|^/?eta\b|^/?ready$"
            r"|(?:^(?:(?:so|and|ok(?:ay)?|well|hey|but|now|right|about|roughly|bot|yo) )*|(?<=\d )|(?<= [fc] ))"
            r"how (?:much )?long(?:er)?(?: (?:left"
            r"|still|to go|now|is left|till its done|until its done|will it take|does it take|till its ready"
            r"|until (?:its ready|dinner|lunch)))?$|\bhow much longer\b|\bhow much time(?: is)?(?: left)?$"
            r"|\bwhen(?: will| is|s)? (?:it|dinner|the meat|lunch|the brisket|this|everything)(?: going to| gonna"
            r"| be)*(?: be)? (?:ready|done|finished)\b|(?<!temp )(?<!temperature )\bis it (?:done|ready)(?: yet)?\b"
            r"|\bare we there yet\b|^whens? (?:is )?(?:food|dinner|lunch|supper|grub|eats)(?: up| ready| on)?$"
            r"|\bready when\b|\btime left\b"
            r"|\bwann (?:ist (?:es|das) )?fertig\b|\bwie lange noch\b|\bwhen do(?:es)? (?:we|it) (?:eat|finish)\b"
            r"|\bwhen (?:can|do) we eat\b|\bwill (?:it|we) make (?:it|dinner|lunch|\d{1,2}(?:[:.]\d\d)?)$|\b(?:will"
            r"|are|am) (?:it|we|i|they|both|(?:the|my|our) (?!pit|fire|fridge|brine|smoker|grill)\w+)"
            r" (?:both |all )?(?:going to |gonna )?(?:be )?(?:ready"
            r"|on time|done|make it|finish(?:ed)?)(?: (?:on"
            r"|in) time)?\b|\bwe on (?:time|track)\b|\bon track\b"),
    ("picture", r"\bhow (?:(?:has |is )?the )?(?:temp(?:erature)?s?|meat|core|pit) (?:has |have |is )?(?:been )?"
                r"(?:going|doing|developing|moving|risen|run)\b"
                r"|^/?(?:(?:cure|cook|chill) )?(?:curve|graph|chart|picture|plot|bild|kurve)"
                r"(?: of (?:the |my )?(?:cure|cook|chill|slice|meat|brine))?(?: (?:please|pls))?$"
                r"|\b(?:show|send|see|draw|plot|give)(?: me)?(?: the| a| my)?"
                r"(?: (?:cook|cure|chill|cooking|curing|temperature|temp))?"
                r" ?(?:curve|graph|chart|picture|plot|diagram)\b"),
    ("thickness", r"\b(?:what|which) thickness\b|\bhow thick (?:is it|did i say|was it|is the meat)\b"),
    ("yield", r"\byield\b|\bhow much (?:weight )?(?:did it lose|has it lost|is left after)\b|\bweight loss\b"),
    ("pit", r"\bwhats? (?:has )?(?:my |the )?(?:pit|smoker|grill) (?:been )?(?:doing|at|like)\b|\bhow(?:s| is"
            r"| has) (?:my |the )?(?:pit|fire|smoker)(?: (?:doing|been|going))?$|\bpit (?:trend|history|temps?"
            r"|readings?)$|\bwhats my pit\b|\bhow hot is (?:it|the pit|my pit|the smoker|the grill)\b"),
    ("log", r"^/?(?:log|history|protokoll)$|\bdid (?:(?:my |our )?"
            r"(?!(?:you|u|it|th\w+|an?|my|our|his|her|last|first|not|just|all|both)\b)\w+) (?:already )?(?:flip|turn"
            r"|rinse|check|wrap|do|add|put|light|say|log|record|soak|weigh)\b|\bhave (?:i|we) (?:flipped|turned"
            r"|rinsed|checked|wrapped|done)\b"
            r"|\b(?:has|was) (?:it|this|the \w+|that)(?: been)? (?:flipped|turned|rinsed|checked|wrapped"
            r"|done)(?: (?:yet|today|already|this morning))*\b"
            r"|\bwho(?:s| has| have)? (?:flipped|turned|did|rinsed|lit|wrapped)\b|\bwhen did (?:i|we|it)\b"
            r"|(?<!delete )(?<!delete that )(?<!delete the )(?<!remove the )(?<!remove that )\blast (?:reading|flip"
            r"|temp)\b|(?<!dunno )(?<!know )(?<!idea )(?<!clue )(?<!sure )\bhow long since\b"
            r"|\bhow long (?:has|have) (?:it|i|we) been\b|\bwhat did (?:i|we) (?:say|do"
            r"|record|put|log|write|type)\b|\b(?:show|send)(?: me)?(?: the| my)? (?:log|history|readings)\b"
            r"|\bhow many (?:flips|days in)\b"),
    ("dose", r"^/?(?:dose|doses|recipe|grams|rezept)$|\bwhats (?:the|my|our) (?:dose|recipe)\b|\bhow much (?:cure|salt"
             r"|pink(?: salt)?|sugar|water|curing salt)(?: (?:do i need|i need|do i (?:add|use|put in)"
             r"|should i (?:add|use|put in)|again|for this"
             r"|goes in|was it|do we need))?$|\bhow many grams?\b(?! of (?:protein|fat))|\b(?:show"
             r"|send)(?: me)?(?: the)? (?:dose|recipe)\b"),
    ("cautions", r"^/?(?:cautions?|warnings?|risks?)$|\bwhat (?:should|do) i (?:watch|look) (?:out )?for\b(?! when)"
                 r"|\bwhat can go wrong\b|\bany (?:warnings|cautions|risks)\b"),
)  # fmt: skip
_WHY_COMPILED: Final = re.Rules((re.compile(words), about) for about, words in _WHY)
_TOPICS_COMPILED: Final = re.Rules(
    (re.compile(words), topic)
    for topic, words in (*asked_batch.TOPICS, *yard.TOPICS, *filing.TOPICS, *_TOPICS, *asked_batch.LATER)
)
_BY_AN_HOUR: Final = re.compile(
    r"\b(?:by|for|at|before|in time for) (?:\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?$|noon|lunch|dinner|supper)"
)
_SLOW: Final = re.compile(  # of what is on the fire: when it is ready, and what holds it up
    r"\btak(?:ing|es) (?:so|too|this|forever|ages)\b|^(?:its|it is|why is it|this is) (?:so|too|really|very) slow\b"
)
_WHY_ALONE: Final = re.compile(r"^/?(?:why|warum|how come|wieso)[ ?!]*$")
_ABOUT_PICTURE: Final = (
    ("chill", r"chill|cool"),
    ("cure", r"cure\b|curing|brine|salt|slice"),
    ("cook", r"cook|smok|pit|temp|heat"),
)
_MARKS: Final = re.either(
    r"\?|\bdoes (?:it|that|this|the \w+) (?:take|need|matter|change|fit|feed|last|cook|cure|cost|still|have|make|go)\b"
    r"|(?:^|[ ,])(?:would|will) (?:an?|the|my|this|that|\d[\d./]*) (?:\w+ ){0,8}?"
    r"(?:fit|do|be|last|feed|work|go|hold|keep|taste)\b"
    r"|^(?:would|will) (?:an?|the|my|this|that)\b|^(?:was|were) (?:the|my|our)\b"
    r"|^(?:could|should|would) (?:i|we) have\b"
    r"|\bwas (?:that|it|this) (?:too|ok|okay|right|wrong|enough|bad|safe|fine)\b"
    r"|(?:^|[,;:.] )(?:is it )?(?:ok|okay|safe|fine|alright|cold enough|ready) to (?!go\b)[a-z]{2,}\b"
    r"|[,;:.] (?:so |and |but )?(?:(?:is|are|has|can|could|will|would|should|shall|was|were|am|may|does) (?:it|that"
    r"|th(?:is|[eo]se)|s?he|they|we|i|you|u|there)|(?:did|do|have) (?:s?he|they|we|i|you|u|(?:any|some)(?:one|body)))\b"
    r"(?! (?:at|on|in|by|not)? ?\d)|\by/n$|(?:^|[,;] )any (?:chance|idea|way|news|word|point|sense|harm|problem|risk)\b"
    r"|^reckon (?:it|we)|\bdoes any\w*\b|\bhours (?:until|till?|to)\b"
    r"|\bremind me (?:is|was|what|how|when|where|which|who|did)\b|\bstill (?:ok|okay|safe|good|fine)\b"
    r"|\bremind me (?:of )?(?:the|my|our) (?:\w+ ){0,2}?(?:salt|cure|dose|weight|thickness|dates?|amounts?|numbers?"
    r"|recipe|target|plan|temp\w*)\b"
    r"|^(?:has|have|had|was|were|will|would|am) (?:it|i|we|they|that|this|(?:any|some)(?:one|body)|you|s?he)\b(?! \d)"
    r"|\bhow (?:much|long|many|do|does|to|thick|thin|salty|often|hot|cold|can|should|come|check|is|are|did|big"
    r"|about|far|soon|late|early|warm|old)\b|\b(?:what|whats|why|whens|which|whos)\b|\b(?:should|can|could|may|shall"
    r"|must|would) (?:i|we|it|you|u|they)\b|\b(?:do|did) (?:i|we|you|they|he|she)\b"
    r"|^did (?:the|my|our) \w+ (?:ever |really )?(?:stay|get|go|drop|hit|reach|rise|freeze|warm|run|keep)\b"
    r"|^did (?:both|all|either)(?: of them)? (?:get|go|come|have|need)\b"
    r"|^did (?:it|they) (?!(?:at|about|around|by|an?|half|this|last|yesterday|today|tonight|just|now|already|too|also"
    r"|twice|again|before|after|earlier|late|early|in|on|with|without|wrong|myself|as|and|but|for|so|then|ok|all|both"
    r"|when|while|yes|sorry|thanks|mon\w*|tue\w*|wed\w*|thu\w*|fri\w*|sat|saturday|sun|sunday)\b)[a-z]"
    r"|\bis (?:it|that|this|there|my|the)\b(?! (?:in|on|at) the)(?=.*\b(?:ok|okay|safe|enough|normal|alright|bad"
    r"|fine|better|good|done|ready|yet|too)\b)|^(?:when|where|who|is|are|does|do(?! (?:it|that|the|them|both|a)\b)"
    r"|can|could|wie|was ist|warum|wann|wo"
    r"|wieviel|darf|kann|soll)\b|\bwhen$|\bwhen (?:start|do|does|should|will)\b"
    r"|(?<!tastes )(?<!taste )(?<!looks )(?<!smells )(?<!feels )(?<!seems )(?<!all )(?<!just )(?<!salt )(?<!to be )"
    r"(?<!:\d\d )"
    r"\b(?:ok|okay|safe|right|normal|or not"
    r"|or no|yes or no)\s*\?*$(?<=.{16})|\bhelp me\b|\b(?:explain|tell me(?! (?:at|in|again|later|tomorrow|not)\b)"
    r"|difference between|best(?! (?:one|yet|ever|batch|so far|of all|ive|weve|we|i)\b)|calories|kcal|protein)\b"
)
# «flat or point for pastrami», «lump vs briquettes», «gas grill ok»: a choice or a doubt without a figure asks
_CHOICE: Final = re.compile(
    r"^(?=\D+$)(?!.*\b(?:or (?:so|something|whatever|else|later)|one or two|didnt|not|no|done|flip\w*|turn\w*|i|we|sat"
    r"|sun|mon|tue|wed|thu|fri|today|tomorrow)\b)(?:[a-z]+ ){1,4}(?:or|vs|versus) (?:[a-z]+ ?){1,5}[ ?]*$"
    r"|^(?=\D+$)(?:[a-z]+ ){1,4}(?:ok|okay|fine|good enough) (?:for|to|with|in|instead|as)\b"
    r"|^(?=\D+$)(?:gas|pellet|electric|charcoal|plastic|metal|sea|table|rock|tap)"
    r" (?:[a-z]+ ){0,2}(?:ok|okay|fine)[ ?]*$"
    r"|^(?:\w+ ){0,3}(?:cure|salt|powder|number|no|nr) ?#?[12] (?:or|vs|versus) (?:number |no |nr |cure )?#?[12]\b"
    r"(?! ?(?:kg|kilos?|g|lbs?|pounds?|oz)\b)"
)
_NOT_KNOWN: Final = re.compile(
    r"^(?:i |we )?(?:dont know|do not know|dunno|no idea|not sure|no clue) (?:how|what"
    r"|which|when)\b"
)
NO_MOVE: Final = re.compile(  # asks whether or what, and moves no meal
    r"^(?:can|could|should|may|might) (?:it|this|that|they|the (?:meat|bag|cure)) (?:stay|sit|be left|lie|go)\b|"
    r"^(?:will|is|are|would) (?:it|we|they|both|dinner|this|(?:the|my|our) \w+)\b"
    r"|\b(?:than|as) planned\b.*\b(?:matter|ok|okay|bad|problem|fine)\b|\bdoes (?:it|that|this) matter\b"
    r"|\b(?:behind|late)\b.*\b(?:right|correct|(?:are|am|arent) (?:we|i))\W*$"
    r"|^(?:(?:gonna|going to|all) )*(?:be )?(?:ready|done)\b.*\?$"
    r"|^(?:what|which|who|why|where)\b(?! about\b)"
    r"|^(?:could|should|would) (?:i|we) have\b|^if\b.*\b(?:do|does|will|would|can|could|should|is|are) (?:i|we|it)\b"
    r"|^(?:can|could|may|should) (?:i|we) (?:start|light|put|take|flip|leave|pull|wrap|rinse|go|skip|begin)\b"
    r"|^(?:can|could|may) (?:we|i|they|the kids) (?:already |just )?(?:eat|have|serve) (?:it|this|that|them|some"
    r"|the (?:rest|leftovers|remains|other half))\b"
)
_ALL_WELL: Final = re.compile(
    r"^(?:(?:morning|hi|hey),? )?(?:is )?(?:all|everything) (?:good|well|ok|fine) ?\?+$"
    r"|^(?:so |and )?(?P<how>how(?: are)? we (?:doing|doin|looking|getting on)"
    r"|(?:how is|hows|how are|howre) (?:it|everything|things|that one|that|she|they)"
    r"(?: (?:doing|coming|coming along|getting on|getting along|today|now))?)[ ?]*$"
)
_IS_IT_COLD: Final = re.compile(  # of what lies in its chill
    r"\bis \d{2,3}(?: ?[cf])? (?:ok|okay|fine|alright|good|too (?:warm|hot)|(?:good|cold|low|cool) enough)"
    r"(?: by now| yet| now)?$"
)
_OFF_AT: Final = re.compile(r"^(?:(?:so|ok|take it|pull it|pull|come) )*(?:off )?at \d{2,3}(?: ?[cf])? ?\?+$")
_BARE_WET_OR_DRY: Final = re.compile(r"^(?:wet or dry|dry or wet|brine or dry)\s*\?*$")


def read_topic(text: str, context: Context) -> Intent | None:
    """A question about the batch in hand, where a plain text is one; one with its own numbers is about the trade."""
    found = find_topic(text, context.phase)
    return found[1] if found else None


_PULLED_WHEN: Final = re.compile(  # out of the cure, where it is not cooked yet
    r"^(?:so )?(?:when|(?:what|which|wat) (?:day|date|time)|how soon)(?: (?:do|can|should|must|will|does|is|shall|to))*"
    r" (?:(?:i|we|it|they|the meat) )?(?:be )?pull(?:ed)?(?: (?:it|them|the meat|that))?(?: out)?$"
)
_WHY_HERE: Final = {"cooking": "hours", "resting": "chill", "chilling": "chill"}  # what takes so long there


def find_topic(text: str, phase: str) -> tuple[str, Intent] | None:
    """A question about the batch in hand, and what was said before it in the same breath («158, how much longer»)."""
    bare = text.strip(" ?!.")
    if _BARE_WET_OR_DRY.search(text.strip()):
        return "", Unclear("word", bare)
    if _WHY_ALONE.search(bare):
        return "", Ask("why", _WHY_HERE.get(phase, ""), text)
    if well := _ALL_WELL.match(text):
        return "", Ask("catch_up" if well["how"] else "now", text=text)
    if phase == "cooking" and _OFF_AT.match(text):
        return "", Ask("pull_at", text=text)
    if phase == "chilling" and _IS_IT_COLD.search(bare):
        return "", Ask("cooled", text=text)
    if phase in RAW and _PULLED_WHEN.match(bare):
        return "", Ask("out", text=text)
    if phase == "cooking" and _SLOW.search(bare):
        return "", Ask("eta", text=text)
    for _, about in _WHY_COMPILED.hits(bare):
        if len(bare.split()) <= 12:
            here = _WHY_HERE.get(phase, about) if bare == "why so long" else about
            return "", Ask("why", here, text)
    if asked_batch.may_leave(bare, phase):
        return "", Ask("bed", text=text)
    for found, topic in _TOPICS_COMPILED.hits(bare):
        told = topic == "fuel" and phase == "cooking" and is_fuelled(text)
        if not told and not yard.is_ahead(topic, phase) and not _foreign(topic, bare[found.start() :]):
            against = topic == "eta" and _BY_AN_HOUR.search(bare)
            return _before(bare, found), Ask("in_time" if against else topic, _about(topic, bare), text)
    return None


def _before(text: str, found: re.Match[str]) -> str:
    return re.sub(r"(?: and| so| but|,|;|\.|!)+$", "", text[: found.start()].strip()).strip()


def is_question(text: str) -> bool:
    """Whether a plain text asks something; «dont know how thick» tells that nobody knows."""
    asks = any(_MARKS.hits(text)) or is_choice(text)
    return asks and not (_NOT_KNOWN.match(text) and not text.endswith("?"))


def is_choice(text: str) -> bool:
    """Whether a plain text puts a choice or a doubt, and no figure."""
    return bool(_CHOICE.search(text))


def _about(topic: str, text: str) -> str:
    known = {"picture": _ABOUT_PICTURE, "record": filing.FORMS}.get(topic, ())
    return next((about for about, words in known if re.search(words, text)), "")


_WITH_FIGURES: Final = frozenset({"log", "plan", "now", "pit", "weight", "got", "batches", "skip_flip", "away"})


def _foreign(topic: str, text: str) -> bool:
    """Whether a question brings numbers of its own («135 for 40 min safe»): then it is not about this batch."""
    if topic == "chill":
        text = re.sub(r"\b(?:under|below|down to|to|till|until|at) \d{1,2} ?[cf]?$", " ", text)
    if topic in ("pull", "pull_at"):
        text = re.sub(r"\bat \d{2,3} ?[cf]?\??$", " ", text)
    if topic == "fuel":
        text = re.sub(
            r"\b\d{1,2} (?=(?:more |extra )?(?:briquettes?|lumps?|chunks?|chips|coals?|logs|splits"
            r"|handfuls?)\b)",
            " ",
            text,
        )
    if topic in ("eta", "wrap"):
        text = re.sub(r"\b(?:by|for|at|before) \d{1,2}(?:[:.]\d\d)? ?(?:am|pm)?\b", " ", text)
        text = re.sub(r"\b(?:from|at|past|off) \d{2,3}(?: again| still| now| at all)*$", " ", text)
    return topic not in _WITH_FIGURES and bool(re.search(r"\d", text))
