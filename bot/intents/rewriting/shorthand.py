"""Shorthand, and numbers and units that are written together or apart."""

from typing import Final

from bot.intents.rewriting.share import share
from bot.intents.rewriting.words import UNIT_NEXT, rules

RULES: Final = rules(
    (r"(?<=\w) n (?=\w)", " and "),
    (r"\b([2-9])x(?=\d)", r"\1 x "),
    (r"(?<=[a-z]) ?\+ ?(?=[a-z])", ", "),
    (r"\b(\d{1,2}(?:\.\d)?)[ -]?pounders?\b", r"\1 lb"),
    (r"\b(\w+) (?:as (?:hell|heck|anything)|af)\b", r"very \1"),
    (r"\braining cats (?:and|n|&) dogs\b", "raining hard"),
    (r"\brn\b", "right now"),
    (r"\b(?:lil|lilbit|liddle)\b", "little"),
    (r"\bun pause\b", "unpause"),
    (r"^y (?=so|is|do|are|not|\d)", "why "),
    (r"\bu\b(?! ?\d)", "you"),
    (r"\b(we|you|they|u) r\b", r"\1 are"),
    # half of a piece whose whole was weighed
    (r"\b(?P<part>half|a quarter|a third) (?:of )?(?:an?|the|my) (?P<mass>\d{1,2}(?:\.\d{1,2})?) ?(?P<unit>lbs?"
     r"|pounds?|kgs?|kilos?)\b", share),
    # numbers that are written apart
    (r"\bnegative (?=\d)", "-"),
    (r"\bhalf one\b", "half 1"),
    (r"\bbetween (\d{1,4}(?:\.\d{1,2})?) and (?=\d{1,4}(?:\.\d{1,2})? ?(?:mm|cm|inch|in\b|kg|kilo|lb|pound|g\b|gr|%))",
     r"\1 to "),
    (rf"(?<![\d.])(\d{{1,2}}) ?(?:kg|kilos?) ([1-9]\d\d)\b{UNIT_NEXT}", r"\1.\2 kg"),
    (rf"(?<![\d.])(\d{{1,2}}) ?(?:lbs?|pounds?) ?(\d|1[0-5])\b(?!\.\d)(?!-\d| \d/\d){UNIT_NEXT}", r"\1 lb \2 oz"),
    (r"\b(1[0-9][0-9]|[1-9]\d)[oO]\b", r"\g<1>0"),
    (r"\b(1)[lI](?=\d)", r"\g<1>1"),
    (r"(?<=\d) ?mils?\b", " mm"),
    (r"\bmore like (\d{1,4}(?:\.\d{1,2})?(?: ?(?:mm|cm|in|inch|kg|lb|g|c|f))?) than (?=\d)", r"\1 not "),
    (r"\bon the nose\b", ""),
    (r"\b(?:pink stuff|pink powder|the pink$)", "pink salt"),
    (r"\b\d{1,3}[- ](?:something|odd)\b", "something"),
    (r"\bmy other half\b", "partner"),
    # numbers and units that are written together or apart
    (r"(?<=\d)-(?=(?:kilos?|kg|lbs?|pounds?|grams?|g|inch(?:es)?|mm|cm|oz|ounces?|litres?|liters?)\b)", " "),
    (r"\bone and 3 quarters?\b", "1.75"),
    (r"(?<=[a-z]) ?\+ ?(?=\d)", ", "),
    (r"^\+ ?(\d{1,2}) ?(days?|d|hours?|hrs?|h)$", r"\1 \2"),
    (r"(?:^|(?<=\d)|(?<= ))(core|meat|pit|fridge|brine)(\d{1,3})(?=$|[^\w.]|core|meat|pit)", r" \1 \2 "),
    (r"(?<![\w.])(\d{1,3}(?:\.\d)?) ?(?:deka|dag|dkg)\b", lambda m: f"{float(m[1]) * 10:g} g"),
    # a weight in short
    (r"(?<![\w.])(\d{1,2}(?:\.\d{1,3})?) ?k\b(?! ?(?:m\b|run|people|cal|ppm))(?= of\b|.*\b(?:smoked?|cured?|bacon"
     r"|pastrami|ham|crown|bird|turkey|chicken|flat|brisket|belly|loin|pork|beef|for)\b)", r"\1 kg"),
    (r"\bw/o\b", "without"),
    (r"\bw/? (?=[a-z]{2})", "with "),
    (r"\b(why|how|what|when|where|who)d (?=(?:it|they|that|we|i|you|the \w+)\b)", r"\1 did "),
    (r"\b(?<!and )(?<!and a )(?:a )?half (?:of )?(?:an? |one )?(?:percent|pct|%)(?!\w)", "0.5 %"),
    (r"\b([1-9]) and (?=[1-7]/(?:2|4|8|16)\b)", r"\1 "),
    (r"(?<![a-z])icy(?= (?:in|at|inside)\b|$)", "frozen"),
    (r"\bcure (?:no\.? ?|nr\.? ?|num ?|number )(?:2|two)\b", "cure #2"),
    (r"(?<=\d),(?=\d{3} ?(?:ft|feet|foot|m|met(?:er|re)s?)\b)", ""),
    (r"\bcorn(?:ed)?beef\b", "corned beef"),
)  # fmt: skip
