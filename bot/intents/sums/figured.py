"""A line with the figures of its words, as the sums want them: «a level tablespoon», «80 g per litre», «145pm»."""

from typing import Final

from core import patterns as re

_ONE: Final = re.compile(
    r"(?:(?<!\d )(?<!half )(?<!quarter )(?<!quid )(?<!bucks )(?<!euros )(?<!dollars )\b(?:an?|one) |^)"
    r"(?:level |whole |full |single )?"
    r"(?=(?:cup|gallon|gal|quart|qt|lit(?:er|re)|kilo|pound|(?:tea|table)spoon"
    r"|tsp|tbsp|minute|hour|hr|week)\b)|(?<!half )\b(?:an?|one) (?=min\b)"
)
_PARTS: Final = {"half": 30, "3 quarters": 45, "quarter": 15}
_PART_OF_AN_HOUR: Final = re.compile(  # «half an hour», and no «hour and a half»
    r"(?<!and )(?<!and a )\b(?:a )?(half|3 quarters|quarter)(?: of)?(?: an)?(?: |-)(?:hour|hr)\b"
)
_HOUR: Final = re.compile(
    r"(?:(?<=\bat )|(?<=\bnow )|(?<=\bits ))(\d{1,2})\.([0-5]\d)\b(?! ?(?:kg|lb|%|c\b|f\b|cm|mm|in|thick|deep|across))"
    r"|\b(1?\d)\.([0-5]\d)(?= (?:its|it is|it was|core|meat|now)? ?\d{2,3}(?![\d.]| ?(?:kg|g|lb|oz|mm|%)))"
)
_SPOON_FOR_SPOON: Final = re.compile(  # «a tablespoon not a teaspoon»: what somebody would mistake is curing salt
    r"\b(?:an? )?(?:tablespoons?|tbsps?) (?:not|instead of|rather than|for) (?:an? )?(?:teaspoons?|tsps?)\b"
    r"(?! (?:\w+ )?salt\b)"
)
_MORE_HOURS: Final = re.compile(r"\bin (\d{1,2}) more\b(?! ?(?:h|min|day))")  # «took 2 hours, then 40 in 3 more»
_GLUED_HALF: Final = re.compile(r"(?<![\d.:])(1[0-2]|[1-9])([0-5]\d) ?([ap]m)\b")
_AT_A_PIT: Final = re.compile(r"\b(\d{3})(?: f| c)? (h(?:ou)?rs?\b)")  # «pit at 300 hrs?» asks for the hours
_LEVEL: Final = re.compile(r"\b(\d[\d./]*) (?:level|flat) (?=t(?:b?sp|easpoon|ablespoon))")
_DEGREES: Final = re.compile(r"\b(\d{2,3}) ?(?:°|degrees?|deg) (?:salt )?brine\b")
_SHARE_WANTED: Final = re.compile(  # «cure wants 0.25 % of 2750 g»
    r"\b(cure|salt|sugar)(?: (?:wants|needs|is|at|to be))? (\d+(?:\.\d+)?) ?(?:%|percent|pct) of (?:the )?(?=\d)"
)
_MINE_BARE: Final = re.compile(  # «18 g for 7.2 kg i got 3»: in the unit of the recipe's
    r"\b(\d[\d.]* ?(kg|kilos?|lbs?|pounds?)\b.*\b(?:i have|ive|i got|mines?|mine is|only have) (?:only |just |got )*"
    r"\d+(?:\.\d+)?)(?=\W*$)"
)
_POINT: Final = re.compile(r"(?<![\d.])\.(?=\d)")  # «.25% cure»
_RATIO: Final = re.compile(r"\b(\d{1,2}) ?: ?(\d{1,3})\b(?=.*\bsalt\b.*\b(?:water|brine)\b|.*\b(?:brine|salt)\b)")
_SHOWN_IN: Final = re.compile(  # «scale only in oz it says 0.25»
    r"\bin (oz|ounces|lbs?|pounds)\b([^\d]{1,24}\b(?:says|reads|shows) )(\d+(?:\.\d+)?)"
    r"(?=$|[ ,?]+(?!oz|lbs?|pounds?|g\b|kg))"
)
_A_VOLUME: Final = re.compile(  # «80 g salt a liter»
    r"\b(g|grams?|oz|ounces?|salt|sugar|cure|cups?|tbsps?|tsps?) an? "
    r"(?=(?:lit(?:er|re)|l|gallon|gal|quart|qt|kilo|kg|lb|pound)\b)"
)
_SHARED: Final = re.compile(  # «at 2.5 salt», «2.5 % salt» and others beside it without their sign
    r"(?<![\d.])[0-3]\.\d{1,2} (?=(?:salt|sugar)\b)|\d ?(?:%|percent|pct) (?=(?:salt|sugar)\b)"
)
_SHARED_TOO: Final = re.compile(
    r"(?<![\d.])([0-3](?:\.\d{1,2})?) (?=(?:salt|(?:brown |white )?sugar)\b)"
    r"|(?<![\d.])(0\.\d{1,3}) (?=(?:cure|curing|pink|prague)\b)"
)  # «and 1 sugar» beside it
_BOTH_SHARES: Final = re.compile(r"\b(\d(?:\.\d{1,2})?) (and|n|&) (?=\d(?:\.\d{1,2})? ?(?:%|percent|pct))")
_NUMBER_ONE: Final = re.compile(r"\bnumber one\b")
_IN_INCHES: Final = re.compile(r"(?<=\d) in(?= (?:days|thick|how|dry|hours)\b)")  # «flat 2 in days»
_SALTED_AT: Final = re.compile(  # «salt for 3 lb at 2»
    r"^(?=.*\bsalt\b)(?=.*\d ?(?:kg|kilos?|lbs?|pounds?)\b)(.* at [1-4](?:\.\d{1,2})?)(?=\W*$)"
)
_THE_NTH: Final = re.compile(r"\b(by|on|for|from) (?=\d{1,2}(?:st|nd|rd|th)\b)")
_BACKWARDS: Final = re.compile(
    r"\bto (?P<to>\d{2,3})(?P<u> ?[cf])? from (?P<from>\d{2,3})\b(?! ?(?:kg|g|lb))"
)  # «3 h to 70 from 135»
_WANTED_TOO: Final = re.compile(  # «3 l at 8 % want 5»
    r"(\d ?(?:%|percent|pct)[^,;]{0,16}? (?:wants?|needs?|should be|down to|up to|to) (?:it )?\d{1,2}(?:\.\d)?)"
    r"(?=\W*$|,| water| how| what)"
)
_CURED_AT: Final = re.compile(r"\b(cured (?:it )?(?:at|to|with) [0-3]\.\d{1,2})(?! ?(?:%|percent|pct|kg|g|lb|oz|in))")
_SANDWICHES: Final = re.compile(  # «2 sandwiches each, 100 g»: so much of the two
    r"\b([1-6]) (?:sandwich(?:es)?|rolls|buns|bagels)(?: each| per (?:person|head)| a head)?,? (?:of |at |with )?"
    r"(\d{2,3}) ?g\b(?: each)?"
)
_TONIGHT: Final = re.compile(  # «at 9:40 tonight»
    r"(?<=\bat )(1[01]|[4-9])(:[0-5]\d)? (?=tonight\b|this evening\b|in the evening\b)"
)
_MORNING: Final = re.compile(r"(?<=\bat )(1[01]|[1-9])(:[0-5]\d)? (?=(?:this|in the) morning\b)")
_BAG_OF_CURE: Final = re.compile(  # «a 1 lb bag of prague powder»
    r"(\d[\d.]* ?(?:kg|g|grams?|lbs?|pounds?|oz|ounces?))"
    r" (?:bag|packet|pack|tub|jar|pouch|sack|tin|sachet|envelope|box|bottle)"
    r" of (?:the )?"
    r"(?=(?:prague|pink|cure|curing)\b)"
)
_HOT_LITRE: Final = re.compile(  # «a hot litre of brine», «2 boiling gallons»
    r"\b(an?|one|\d{1,2}(?:\.\d)?) (hot|boiling|boiled|heated|simmering) (lit(?:er|re)s?|gallons?|gals?|quarts?|qts?)\b"
    r"(?: of)?"
)
_AIMED_AT: Final = re.compile(  # «aiming 150», of a line about curing salt
    r"(?=.*\b(?:cure|curing|nitrite|pink|prague|ppm)\b)(.*\baim\w*(?: for| at)?) (1[0-9]\d)\b"
    r"(?! ?(?:f|c|ppm|degrees|g)\b)"
)
_STRENGTH_AT: Final = re.compile(r"(?=.*\b(?:ppm|cure|pink|nitrite)\b).*\bat (?:6\.25|5\.88)\b")  # and no hour
_MIXED_THICK: Final = re.compile(  # «4 1/2 thick»
    r"(?<![\d./])(\d) ([1-7])/([248])(?= (?:thick|at (?:the|its) thickest|at the thick end)\b)"
)
_DAYS_AN_INCH: Final = re.compile(
    r"\b\d{1,2} days? (?:an|per|a|to the|each|for every) inch\b"
)  # a rule, and no time told
_SHARE_IS: Final = re.compile(  # «what percent salt is 40 g in 2 kg»
    r"\b(?:what|how many) (?:%|percent|pct)(?:age)?(?: of)? salt (?:is|are) (?=(\d[\d.]* ?(?:g|grams?|oz|ounces?)\b))\1"
)
_PUMPED_AT: Final = re.compile(  # «inject 2 oz per pound»
    r"\b(inject\w*|pump\w*)\b(.{0,14}?) (\d[\d.]*) ?(oz|ounces?|ml|g|grams?) (?:per|a|to the|each|for every) (?:1 )?"
    r"(lb|pound|kg|kilo)\b"
)
_IN_GRAMS: Final = {
    "o": 28.35,
    "m": 1.0,
    "g": 1.0,
    "l": 453.6,
    "p": 453.6,
    "k": 1000.0,
}  # by the first letter; NIST SP 811
_PER: Final = re.compile(r"\b(per|to the|each|every) (?=(?:lit(?:er|re)|gallon|gal|quart|qt|cup)\b)")


def _pumped(found: re.Match[str]) -> str:
    share = 100.0 * float(found[3]) * _IN_GRAMS[found[4][0]] / _IN_GRAMS[found[5][0]]
    return f"{found[1]}{found[2]} {share:.3g} %"


def _hour(found: re.Match[str]) -> str:
    return f"{found[1] or found[3]}:{found[2] or found[4]}"


_AS_FIGURES: Final = (
    (_HOT_LITRE, r"\1 \3 of \2"),
    (_SPOON_FOR_SPOON, "1 tbsp of cure"), (_MINE_BARE, r"\1 \2"), (_POINT, "0."),
    (_BOTH_SHARES, r"\1 % \2 "), (_SHOWN_IN, r"in \1\2\3 \1"),
    (_GLUED_HALF, r"\1:\2 \3"), (_AT_A_PIT, r"\1 , \2"), (_DEGREES, r"\1 degrees salometer brine"),
    (_SHARE_WANTED, r"how much is \2 % \1 on "), (_WANTED_TOO, r"\1 %"), (_CURED_AT, r"\1 %"),
    (_NUMBER_ONE, "number 1"), (_IN_INCHES, " inch"), (_SALTED_AT, r"\1 %"), (_THE_NTH, r"\1 the "),
    (_BACKWARDS, r"from \g<from> to \g<to>\g<u>"), (_A_VOLUME, r"\1 per "), (_ONE, "1 "), (_PER, r"\1 1 "),
    (_LEVEL, r"\1 "), (_TONIGHT, r"\1\2 pm "), (_MORNING, r"\1\2 am "),
    (_DAYS_AN_INCH, "how many days to cure"), (_SHARE_IS, r"how salty is \1 of salt"),
    (_BAG_OF_CURE, r"\1 "), (_AIMED_AT, r"\1 \2 ppm"),
)  # fmt: skip


def figured(text: str) -> str:
    """«a level tablespoon of salt», «80 g per litre», «145pm» with their figures."""
    text = _PART_OF_AN_HOUR.sub(lambda m: f"{_PARTS[m[1]]} minutes", text)
    text = _MORE_HOURS.sub(r"in \1 hours", text) if "hour" in text else text
    text = _RATIO.sub(r"\1 kg salt \2 kg water", text) if "ratio" in text else text
    text = _MIXED_THICK.sub(lambda m: f"{int(m[1]) + int(m[2]) / int(m[3]):g}", text) if " thick" in text else text
    text = _PUMPED_AT.sub(_pumped, text)
    text = _SANDWICHES.sub(lambda m: f"{int(m[1]) * int(m[2])} g each", text)
    for words, figures in _AS_FIGURES:
        text = words.sub(figures, text)
    text = _SHARED_TOO.sub(lambda m: f"{m[1] or m[2]} % ", text) if _SHARED.search(text) else text
    return text if _STRENGTH_AT.search(text) else _HOUR.sub(_hour, text)
