"""Talk beside the fire: fuel, vents, stall, wrap, hold, chill; the lid, a flare, the weather, how it is lit."""

from typing import Final

from bot import measures
from bot.intents import when
from bot.intents.context import FALLING, Context
from bot.intents.intents import Ask, Change, Happened, Intent
from core import patterns as re

WINDY_M_S: Final = 7.0
BREEZE_M_S: Final = 4.0
_FIRE: Final = r"(?:pit|fire|smoker|cooker|grill|temp(?:erature)?|heat|coals?)"
_IT: Final = r"(?:it|this|the (?:meat|brisket|flat|point|pastrami))"
_FUEL: Final = r"(?:charcoal|coals?|lump|fuel|gas|propane|wood|briquettes?|chunks?|chips|splits|logs)"
_I: Final = r"(?:i |we )?"
_IS: Final = r"(?: is|s| keeps?| runs?| has been)?(?: running| getting| still)?"
_HOW: Final = r"(?:way |too |a bit |very |really |slowly )?"
_BEHAVES: Final = (
    r"(?:hot|cold|low|high|cool|dropping|falling|climbing|rising|dying|going out|unstable|spiking|sinking"
    r"|creeping (?:up|down))"
)

_ASKED: Final[tuple[tuple[str, tuple[str, ...]], ...]] = (
    ("fuel", (
        r"^/?(?:fuel|charcoal|wood)$",
        rf"\bhow (?:much|many) (?:more )?{_FUEL}\b",
        rf"\b(?:enough|more) {_FUEL}\b",
        rf"\bwill (?:the |my )?(?:fire|{_FUEL}) (?:last|be enough|hold out)\b",
        rf"\brefuel\b|\badd(?:ed|ing)\b.{{0,12}}\b{_FUEL}\b",
        r"\btop up the (?:coals?|charcoal|fire)\b",
    )),
    ("light", (
        rf"\b(?:when|what time|how early) (?:do|should|must|shall|to) {_I}(?:light|start the fire|fire (?:it )?up)\b",
        r"\bhow long (?:does it take )?to (?:light|get (?:it|the pit) (?:up )?to temp)\b",
    )),
    ("wrap", (
        rf"\b(?:should|shall|do|can|could|must|when|whether) (?:do |should )?{_I}(?:to )?(?:already )?wrap\b",
        r"\bwrap (?:it |them )?(?:in (?:foil|(?:butcher )?paper) )?(?:now|yet|already|or not)\b\??$",
        r"\b(?:what if|what about|how about) (?:i |we )?(?:wrap\w{0,4}|foil\w{0,3})\b",
        rf"\b(?:what|how much) (?:does|would|will|do) {_I}(?:wrap\w{{0,4}}|foil|paper|a wrap|the wrap)\b",
        r"\bwrap(?:ping)?(?: it)?,? or (?:wait|not|leave|keep|go|bare|naked|no)\b",
        r"\b(?:(?:keep |carry on )?going|wait|it|bare|naked),? or wrap\b",
        r"\bis wrapping worth\b",
    )),
    ("stall", (
        r"^(?:the )?stall$",
        r"\bwhen (?:does|will|is|comes) (?:the |it )?stall\b",
        r"\bhow long (?:does|will|is|do) (?:the |this |a )?stall\b",
        r"\bis (?:this|it|that)(?: in)? (?:already )?(?:the|a) stall\b",
        r"\b(?:is|has) (?:the|this|my) stall (?:over|done|finished|ended|ending|behind)\b",
        r"\b(?:is it|are we|am i) (?:out of|past|through|over) (?:the|this) stall\b",
        rf"\b(?:is|has) {_IT} (?:already |now )?(?:stalling|stalled|stuck)\b",
        r"\b(?:am i|are we|is it) in (?:the|a) stall\b",
        rf"\bwhy (?:is|has) {_IT} (?:stalled|stuck|not (?:moving|climbing|rising))\b",
    )),
    ("fire", (
        rf"^(?:(?:the|my) )?{_FIRE}{_IS} {_HOW}{_BEHAVES}\b[^\d]*$",
        r"\b(?:losing|lost) (?:the |my )?(?:fire|heat|temp)\b(?! for)",
        rf"\b(?:should|shall|can|must|do) {_I}(?:turn|bring|crank|get|push) (?:the |my )?(?:heat|fire|pit|temp|it)"
        r" (?:up|down)\b",
        rf"\b(?:should|shall|can|must|do) {_I}(?:raise|lower) (?:the |my )?(?:heat|fire|pit|temp)\b",
        rf"^{_I}(?:have |just |ve )*(?:opened|closed|shut|cracked|touched|adjusted|bumped|nudged|tweaked|moved)"
        r" (?:up )?"
        r"(?:the |both |a |top |bottom |lower |upper )*(?:vents?|dampers?|air)"
        r"(?: (?:a bit|a little|more|up|wide|fully|now|down))*$",
        rf"^{_I}(?:have |just |ve )*(?:turned|brought|dialled|dialed|knocked|backed|choked)"
        rf" (?:it|(?:the |my )?{_FIRE}) (?:down|up|back)(?: (?:a bit|a little|a touch|a notch|slightly|some|now))*$",
        rf"\bcant (?:keep|hold|get|control) (?:the |my )?{_FIRE}\b",
        r"\b(?:open|close|touch|move|adjust|do (?:i|we) do) (?:with )?(?:the )?vents?\b\??$",
        r"\bwhat (?:about|do i do with|to do with) the (?:fire|vents?)\b",
    )),
    ("run", (
        r"\b(?:what|which) (?:temp(?:erature)?|heat) (?:do|should|shall|must|to) (?:i |we )?"
        r"(?:run|hold|keep|set|cook|smoke)(?: (?:it|the pit|the smoker|the grill|the cooker|this))?(?: at)?\??$",
        r"\bhow hot (?:do|should|shall|must) (?:i |we )?(?:run|keep|hold) (?:it|the (?:pit|smoker|grill|fire))\b",
        r"\b(?:how hot|what temp(?:erature)?|where) should (?:the |my )?(?:pit|smoker|grill|cooker) (?:be|run|sit)\b",
    )),
    ("pull_at", (
        rf"(?:^(?:so )?|(?<=\d )|(?<= [fc] ))(?:should|shall|can|must|do) (?:i|we) (?:now )?(?:pull|take) {_IT}"
        r"(?: off)?(?: now| yet| already| at \d{2,3}.{0,3})?\??$",
    )),
    ("pull", (
        rf"\b(?:when|(?:at )?what (?:temp(?:erature)?|core)) (?:do|should|shall|to) {_I}(?:pull|take) {_IT}\b",
        rf"\b(?:what|which) (?:temp(?:erature)?|core) (?:do|should|to) {_I}(?:pull|take {_IT} off|cook to)\b",
        rf"\b(?:what|where) (?:do|should|shall) {_I}(?:pull|take)(?: {_IT})?(?: off)? ?(?:at|it)\b(?! \d)",
        r"\bwhat(?: temp(?:erature)?| core)? (?:am i|are we) (?:looking|aiming|going|shooting|waiting) for\b",
        r"(?<!to )\bpull temp(?:erature)?\b",
        r"\bwhats? (?:is )?(?:the |my |our |its )?(?:target|goal)(?: temp(?:erature)?| core)?\b",
        r"^(?:the )?target(?: temp(?:erature)?)?$",
        r"\bhow (?:do|will|would|can|could|shall|should) (?:i|we) (?:know|tell|see)(?: (?:when|if|that))? "
        r"(?:its|it is|theyre|this is|the \w+ is)(?: really| properly| actually| fully)? "
        r"(?:done|cooked|ready|finished)\b",
        r"\bwhat (?:do|should) (?:i|we) look (?:out )?for\b.*\b(?:done|cooked|ready)\b",
    )),
    ("probe_out", (
        r"\bprobe(?:s| is| has| was| came| fell| slipped| slid| popped)*(?: back)? out\b(?! of range)",
        r"\b(?:pulled|knocked|bumped|lost) (?:out )?the probe\b",
    )),
    ("reading", (
        r"\bnext reading\b(?: when)?$",
        r"\bwhen (?:do|should|shall) (?:i|we) (?:read|measure|probe|check)"
        r"(?: (?:it|the (?:core|meat|pit|temp\w*)))?(?: again| next)?$",
    )),
    ("hold", (
        rf"\bhow (?:do|can|should|could|long can|long do|to) {_I}(?:hold|keep) {_IT}(?: warm| hot)?\b(?! in the)",
        rf"\b(?:hold|keep) {_IT} (?:warm|hot)\b",
        r"\b(?:ready|done) (?:too|way too|so|far too|much too) (?:early|soon)\b",
        r"\bhow long (?:can|may|will|does) (?:it|the meat) (?:rest|stay hot|stay warm|hold)\b",
        r"\bhow long (?:do|should) (?:i|we) rest\b",
    )),
    ("ice", (
        r"\benough ice\b(?! bath)|\b(?:need|get|add|want) (?:some )?more ice\b|\bmore ice\b.{0,8}\?$",
    )),
    ("chill", (
        r"\benough ice bath\b",
        rf"\bhow (?:do|should|can|to) {_I}(?:chill|cool) {_IT}\b",
        r"\b(?:will|does) (?:it|this) (?:chill|cool)(?: down)? (?:in time|(?:fast|quick(?:ly)?) enough)\b",
        r"\bhow long (?:does|will|to|is) (?:the )?(?:chill|cool)(?:ing)?\b",
        r"\bis it cooling (?:fast|quickly) enough\b",
        r"\b(?:how long|when|how much longer) (?:is it |will it (?:be|take) |to (?:get )?|does it take )*(?:at "
        r"|down |till |until |to )+"
        r"(?:40|4|3|39|38)(?: ?[cf])?$|^(?:is )?(?:it|its|this) (?:is )?(?:cold|cool) enough(?: yet| now)?$",
    )),
)  # fmt: skip
NEAR_THE_FIRE: Final = frozenset({"drying", "cooking", "resting", "chilling"})
EARLIER: Final = frozenset({"fuel", "light"})  # asked of a batch long before its fire
TOPICS: Final = tuple((topic, "|".join(ways)) for topic, ways in _ASKED)

_LID: Final = re.compile(
    r"\b(?:opened|lifted|had|took) (?:up )?(?:the )?(?:lid|cooker|smoker|grill|dome)(?: off| open| up)?\b"
    r"|\blid (?:was |is |has been |had been |came )?(?:open|off|up|opened)\b"
    r"|\b(?:took|had) (?:a |another )?(?:quick |little )?(?:peek|look (?:inside|in))\b|\bpeeked\b"
    r"|\b(?:spritze?d|mopped|basted|sprayed|rotated)\b"
    r"|\b(?:turned|spun|flipped) (?:it|them|the \w+) a?round\b|^(?:did the )?spritz(?: done)?$|\bforgot to (?:close"
    r"|shut"
    r"|put) (?:back )?(?:the |it )?lid\b"
    r"|\bleft (?:the )?(?:lid|cooker|smoker|dome) (?:open|off|up|ajar)\b"
)
_NO_LID: Final = re.compile(r"\b(?:dont|never|not|should|can i)\b")
_FLARE: Final = re.compile(
    r"\bflar(?:e|ed|ing)(?:[ -]?up)?\b|\bflames\b(?! ?out)|\b(?:grease|fat) fire\b|\bfire (?:shot|leapt) (?:up|out)\b"
)
_NO_FLARE: Final = re.compile(r"\b(?:no|not|if|avoid|prevent|without|blue|went|died|gone)\b")
_UNWRAPPED: Final = re.compile(
    r"\b(?:unwrapped|took (?:it |the meat )?out of (?:the |its )?(?:foil|paper)|(?:foil|paper|wrap) (?:is |came )?off"
    r"|took (?:off )?the (?:foil|paper|wrap)(?: off)?)\b"
)
_CUT: Final = re.compile(
    r"\b(?:halved|split"
    r"|cut (?:it |them |the meat |the piece )?(?:flat|thinner|in|into|to|down)"
    r"|sliced (?:it |them |the meat )?(?:flat|thinner))\b"
)
_TENDER: Final = r"(?:(?:fork |butter )?tender|soft|like (?:soft )?butter|buttery|jiggly|zart|weich)"
_FEEL: Final = r"(?:(?:its|it is|feels|the|probes?|fork|skewer|meat|now|nice and|really|very|all|slides|goes|in|is) )*"
_TOUGH: Final = re.compile(
    rf"^{_FEEL}(?:(?:not (?:yet )?(?:quite )?|(?:nearly|almost|getting|close to) ){_TENDER}|still (?:tough|tight"
    rf"|hard|firm)"
    r"|tough(?: as (?:old )?(?:boots?|leather|nails|a shoe|shoes?))?|tight"
    rf"|wont (?:go|slide) in|doesnt (?:go|slide) in)(?: yet| enough)?$"
)
_SOFT: Final = re.compile(
    rf"^{_FEEL}(?:{_TENDER}|(?:turns|twists)(?: in it)?)(?: easily| without force)?(?: now| already| enough)*$"
)
_HERE: Final = r"(?: (?:here|now|today|outside|hard))*$"
_WIND: Final = (
    (WINDY_M_S, (
        rf"^(?:(?:its|it is|it got|getting|very|really|so|quite|too) )*(?:windy|stormy|gusty|blowing){_HERE}",
        r"\b(?:strong|lots of|a lot of|much) wind\b",
        r"\bwind (?:picked|is picking|came) up\b",
    )),
    (BREEZE_M_S, (rf"^(?:(?:its|it is|a|bit|little|slightly) )*(?:breezy|breeze|bit windy){_HERE}",)),
    (0.0, (
        r"\bno wind\b",
        rf"^(?:(?:its|it is|the|wind|is) )*(?:calm|still){_HERE}",
        r"\bwind (?:died|dropped|is gone|went)(?: down)?\b",
    )),
)  # fmt: skip
_WINDS: Final = tuple((speed, re.compile("|".join(ways))) for speed, ways in _WIND)
_OUTSIDE: Final = re.compile(r"\b(?:outside|outdoors|out here|in the yard)\b")
_LIGHTERS: Final = tuple(
    (name, re.compile(words))
    for name, words in (
        ("chimney", r"\bchimney(?: starter)?\b"),
        ("torch", r"\b(?:gas |propane )?torch\b|\bweed burner\b|\bblow ?torch\b"),
        ("wand", r"\b(?:electric|loop) (?:lighter|starter|wand)\b|\bheat gun\b|\bhot air (?:lighter|gun)\b"),
        ("cubes", r"\bcubes?\b|\bfire ?lighters?\b|\b(?:fire ?)?starters?\b"),
    )
)
_LIGHTS_WITH: Final = re.compile(
    r"\b(?:light(?:ing)?|start(?:ing)?)(?: (?:it|the fire|up|mine|my fire|charcoal|the coals?))* (?:with|by|using|in) "
    r"|\b(?:i|we|ill|lets) (?:use|have|got) "
)


def read_feel(text: str, context: Context) -> Ask | None:
    """«probe tender», «still tough»: how it feels, beside the fire and after it."""
    if context.phase not in ("cooking", "resting"):
        return None
    if _TOUGH.match(text):
        return Ask("tough", text=text)
    return Ask("tender", text=text) if _SOFT.match(text) else None


def read_yard(text: str, context: Context) -> Intent | None:
    """The lid, a flare, the weather or the way of lighting, where a clause of a batch's talk tells of one."""
    if context.phase in ("none", "stored"):
        return None
    return read_feel(text, context) or _event(text, context) or _weather(text) or _lighter(text)


def is_ahead(topic: str, phase: str) -> bool:
    """Whether a topic of the yard is about another day than a batch's phase: then it is about the trade."""
    known = topic in (name for name, _ in _ASKED)
    return known and phase not in NEAR_THE_FIRE and (topic not in EARLIER or phase in ("none", "stored"))


def _event(text: str, context: Context) -> Intent | None:
    if context.phase in FALLING:
        return _cut(text)
    if context.phase not in ("drying", "cooking"):
        return None
    if _FLARE.search(text) and not _NO_FLARE.search(text):
        return Happened("flare")
    if context.phase == "cooking" and _LID.search(text) and not _NO_LID.search(text):
        said = when.past(text, context)
        return Happened("lid", at=said.at if said else None)
    if context.phase == "cooking" and _UNWRAPPED.search(text) and not _NO_LID.search(text):
        said = when.past(text, context)
        return Happened("unwrapped", at=said.at if said else None)
    return None


def _cut(text: str) -> Happened | None:
    """«cut it flat to 25 mm», «halved it»: off the fire no slicing for the table, but a piece that cools faster."""
    if _NO_LID.search(text) or not _CUT.search(text):
        return None
    thick = [m.value for m in measures.find(text) if m.kind == "length"]
    return Happened("cut", {"thickness": max(thick)} if thick else {})


def _weather(text: str) -> Intent | None:
    if _OUTSIDE.search(text):
        bare = re.sub(r"\b(?:its|it is|only|just|about|around)\b", "", _OUTSIDE.sub("", text)).strip(" ,")
        told = measures.sole(bare, "temperature")
        return Change({"outside_c": told.value}) if told else _wind(text)
    return _wind(text)


def _wind(text: str) -> Intent | None:
    return next((Change({"wind_m_s": speed}) for speed, words in _WINDS if words.search(text)), None)


def _lighter(text: str) -> Intent | None:
    if not _LIGHTS_WITH.search(text):
        return None
    return next((Change({"lighter": name}) for name, words in _LIGHTERS if words.search(text)), None)
