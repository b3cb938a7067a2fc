"""What is wished otherwise: of the plan, of the talk, and of what was said a moment ago."""

from typing import Final

from bot.intents.rewriting.words import DAY, WEEKDAY, rules

_OPENS: Final = (
    r"^(?:(?:no|nah|nope|nvm|never ?mind|oops|wait|sorry|ok|so|right|actually|hang on|hold on|ugh|argh?|gah),? )*"
)
_IM: Final = r"(?:(?:im|ill|i|we|well|were|we are|gonna|going to|going|will|lets|just|so|think|rather) )*"
_UNITS: Final = r"(?:celsius|fahrenheit|centigrade|kilos?|kgs?|pounds?|lbs?|metric|imperial|inches|mm)"
_HOUR: Final = r"(?:half )?\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m| oclock)?"
_PART: Final = r"(?: (?:morning|lunchtime|lunch|noon|afternoon|arvo|teatime|evening|night))?"
_FULL_HANDS: Final = (
    r"^(?:(?:ive |i )?(?:got|have) )?(?:my )?hands (?:are )?(?:full|dirty|messy|greasy|covered)(?: (?:with"
    r"|in) [a-z ]{3,20}?)?"
    r",? (?:so )?(?=(?:remind|ping|try|call|later|ask|give|snooze|in \d|in half|not now)\b)"
)


def _away(found: object) -> str:
    """Away from the one day to the other, and what is said behind it as a statement of its own."""
    return f"away from {found['a']}{found['ap'] or ''} until {found['b']}{found['bp'] or ''}"  # type: ignore[index]


RULES: Final = rules(
    # of the wrap, the cure and the meal
    (rf"{_OPENS}no (?P<not>foil|paper)(?: this time| now| today)?,? {_IM}(?:(?:go|use|using|do|doing|wrap|wrapping"
     rf"|try|with|in"
     r"|it|for) )*(?:the |butcher )?(?P<but>paper|foil)(?: instead| this time)?$", r"\g<but> instead of \g<not>"),
    (rf"{_OPENS}{_IM}wrap(?:ping)?(?: it)? (?:in|with) (?:the |butcher )?(?P<but>paper|foil),? (?:and )?(?:not"
     rf"|instead of) "
     r"(?:in )?(?P<not>foil|paper)$", r"\g<but> instead of \g<not>"),
    (rf"{_OPENS}skip (?:the )?wrap(?:ping)?(?: it)?,? (?:and )?(?:leave|leaving|keep) (?:it|her) (?:naked|bare|open"
     rf"|unwrapped"
     r"|as it is)\b[a-z ]*$", "no wrap"),
    (rf"{_OPENS}(?:(?:i )?changed my mind,? )?{_IM}(?:do|doing|go|make|making)(?: (?:it|this|with|a))* (?P<way>wet|dry)"
     r"(?: (?:cure|brine|instead|after all|now|then))*$",
     lambda m: "wet brine instead" if m["way"] == "wet" else "dry cure instead"),
    (r"^(?:is there )?any chance (?:of |that )?(?:we|i|you|us) (?:can|could|getting|having) ", "can we "),
    (r"^(?:can|could) (?:we|i) (?:have|eat|get) (?:it|this|the \w+) (?:a (?:bit|little|day|tad) |any )?(?:sooner"
     r"|earlier|quicker)"
     r"(?: than (?:planned|that|we said|you said))?$", "can we eat it sooner"),
    # who is away, and who does it meanwhile
    (rf"^(?:(?:we|i|im|were|we are|ill be|well be|all) )*(?:off|away|out|gone|going|heading|headed"
     rf"|leaving|flying|driving|travell?ing|camping|fishing)\b(?! the (?:fire|smoker"
     rf"|grill))(?: (?!back\b|until\b|till?\b"
     rf"|from\b)[a-z]+){{0,4}}? (?:from )?(?:on )?(?P<a>{DAY})(?P<ap>{_PART}),? (?:and |then )?"
     rf"(?:till?|until|to|thru|back|home|return(?:ing)?)(?: (?:again|home|on))* (?P<b>{DAY})(?P<bp>{_PART})", _away),
    (rf"\b((?:{WEEKDAY}){_PART}) (?=(?:my |our |the )?(?:(?:neighbou?r|brother|sister|wife|husband|dad|mum|mom|son"
     rf"|daughter|mate|boy|lad|girl|nephew|niece|cousin|uncle|aunt|buddy|roommate|father|mother"
     r"|partner|missus|kids?|flatmate)(?: [a-z]{2,12})?|[a-z]{2,12}) (?:is |will |will be |has |does |takes |minds )?"
     r"(?:doing|do|mind|minding|turning|flipping|has|does|takes) (?:the |it\b|them\b))", r"\1, "),
    (r"\b(?!(?:it|who|he|she|that|flip|turn|there|here|what|one|kid|bag|meat)s)([a-z]{3,12})s (?=(?:doing|minding"
     r"|watching|looking"
     r" after|turning|flipping) (?:the|it|them)\b)", r"\1 is "),
    (r"\bneighbou?r (?:lady|guy|man|woman|kid|girl|boy|bloke)\b", "neighbour"),
    # when it is called again
    (_FULL_HANDS, ""),
    (r"^(?:(?:no|nah|nope|not|now|later|busy|cant|ok|yet)[, ]+)+(?=(?:(?:a )?quarter|half|\d{1,2}) (?:past"
     r"|to) \d{1,2}\b"
     r"|\d{1,2}(?:[:.]\d\d)? ?(?:am|pm|oclock)\b)", "remind me at "),
    (r"\bskip (?:the )?(tonight|tomorrow|today|this (?:evening|morning))s(?= |$)(?! (?:flip|turn|one|check|reading))",
     r"skip the flip \1"),
    # when nobody shall be called, by which clock, in which units
    (rf"^(?:please )?(?:dont|do not|stop|quit|no)(?: be| you)? (?:buzz|text|ping|messag|call|wak|ring|bother"
     rf"|nag)(?:e|ing|s)?(?: me"
     rf"| us)?(?: up)? before (?P<am>{_HOUR})(?: (?:of|in) (?:a|the) morning)?,? (?:or|and|nor) (?:past|after"
     rf"|later than) "
     rf"(?P<pm>{_HOUR})(?: (?:at|of a|in the) (?:night|evening))?$", r"quiet from \g<pm> to \g<am>"),
    (r"\b(im|i am|we are|were) (?:(?:out|over|up|down|off|away) )+(?=in (?!the |an? |my |bed\b"
     r"|town\b)[a-z]{4})", r"\1 "),
    (r"^((?:im|we are) in [a-z ]{3,24}?)(?: now)?,? (?:(?:so|and|now|please) )*(?:use|go by|set|take"
     r"|switch to) (?:that|this|its"
     r"|their|the local) (?:clock|time(?: ?zone)?|zone)$", r"\1"),
    (r"^((?:im|we are) in [a-z ]{3,24}?),? not (?:in )?(?!the\b)[a-z]{4,16}$", r"\1"),
    (rf"^(?:please |can you )?(?:do|give|show|tell|talk|speak)(?: to)? (?:us"
     rf"|me)(?: it)?(?: all)?(?: in)? (?={_UNITS}\b)", "use "),
    (rf"(?<=\w),? (?:(?:ta|please|thanks|cheers|cos|because|i) )*(?:cant|dont|never|hate) (?:think|do|work|get|read"
     rf"|understand"
     rf"|thinking)(?: in)? {_UNITS}$", ""),
    # what was said a moment ago
    (rf"{_OPENS}(?:(?:my )?(?:fat|big|clumsy|stupid) (?:thumbs?|fingers?)|butter fingers),? (?=\d)", "no, "),
    (rf"{_OPENS}(?:i |we )?(?:didnt|havent|did not|have not)(?: (?:actually|really))? (?:do|done|did) (?:it"
     rf"|that)(?: yet)?"
     r"(?:,? (?:i |we )?(?:got|was|were|had) [a-z ]{3,30})$", "actually didnt do it"),
    (rf"{_OPENS}(?:thats|that is|that was|its|something is)?(?: ?(?:not right|wrong|off|rubbish))?,? ?(?:that"
     rf"|the) last (?:bit|one"
     r"|thing|part|entry|reading|number|lot)s?(?: (?:wasnt|isnt|was not|is not|cant be|was|is|looks) (?:right"
     r"|correct|true|wrong"
     r"|off|rubbish))?$", "that last one is wrong"),
    (rf"{_OPENS}(?:undo (?:that|it)|scratch that|take that back),? (?=(?:it"
     rf"|that) was (?:for )?the [a-z ]{{2,20}}$)", "no, "),
    (r"^((?:no, )?(?:it|that) was the [a-z]{2,12}) (?:that )?(?:i|we) (?:turned|flipped|did|meant)$", r"\1"),
)  # fmt: skip
