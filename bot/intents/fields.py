"""Fields of a batch's setup as they are stated in words: thickness, cure strength, method, wrap, chill, eaters ….

`stated` reads what stands in any sentence about a batch; what could not be taken is named, never guessed.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any, Final

from bot import measures
from bot.intents import brinings, percents, waits
from bot.intents.lengths import THICK_AND_THIN
from bot.intents.temperatures import set_points
from bot.measures import Measure
from core import patterns as re

_A_NUMBER: Final = re.compile(r"(?<![\w.])\d{1,3}(?:\.\d{1,2})?(?![\d:/])")
_WORDS: Final[tuple[tuple[str, Any, str], ...]] = (
    ("method", "inject", r"\binject(?:ed|ion|ing|or)?\b|\bpump (?:it|in)\b|\bspritzpökeln\b"),
    ("method", "dry", r"\bdry[ -](?:cure|cured|curing|rub cure|bag|brine|brined|equilibrium)\b|\btrocken ?pökeln\b"
                      r"|\b(?:make|do|go|doing|going) (?:it )?dry\b|\b(?:zip\w* |vac(?:uum)? )?bag[ -]cur(?:e|ed|ing)\b"
                      r"|\bcur(?:e|ed|ing) (?:it )?in (?:a|the) (?:(?:zip\w*|vac(?:uum)?) )?bag\b"
                      r"|\bmethod:? (?:is )?dry\b|\bdry method\b|(?<!\bto )\bdry (?:instead(?! of)|then|please|pls)\b"
                      r"|\b(?:dry|bag|bagged|rub),? (?:not|no|instead of|rather than) (?:a |in |the )*(?:brine|wet)\b"),
    ("method", "brine", r"\bwet[ -](?:cure|cured|brine)\b|\b(?:make|do|go) (?:it )?wet\b|\bin a brine\b"
                        r"|\bbrine (?:it|instead|cure|then|please|pls)\b|\b(?:make|do) it (?:a )?(?:brine|pickle)$"
                        r"|\bmethod:? (?:is )?(?:brine|wet)\b|\b(?:brine|wet) method\b"
                        r"|\bwet (?:instead|then|please|pls)\b"),
    ("nitrite_target", 0.0, r"\b(?:without|no) (?:nitrite|curing salt|pink salt)\b(?! (?:left|in the))|\buncured\b"
                            r"|\b(?:no|without) cure\b(?! (?:#|no\b|number|\d|left|in\b|yet|on))"
                            r"|\bplain salt\b|\bnitrite[- ]free\b"
                            r"|\b(?:skip(?:ping)?|leav(?:e|ing) out|drop(?:ping)?) (?:the |all )?(?:cure|curing salt"
                            r"|pink salt|nitrite)\b"),
    ("brine_strength", None, r"\bequilibrium(?: brine)?\b"),
    ("pierced", True, r"\b(?:i |we |ive |have )(?:already )?(?:pierced|pricked|jaccarded|needled|tenderi[sz]ed)\b"
                      r"|\b(?:its|it is|it was|meat is|mechanically)"
                      r" (?:pierced|pricked|jaccarded|needled|tenderi[sz]ed)\b"
                      r"|^(?:pierced|jaccarded|needled)$"),
    ("skin_on", True, r"\b(?:skin|rind)[ -]on\b|\bmit schwarte\b"),
    ("skin_on", False, r"\b(?:skins?|rind)(?: is)?[ -](?:off|less)\b|\b(?:no|without) (?:skin|rind)\b|\bskinless\b"
                       r"|\bohne schwarte\b"),
    ("sugar_fraction", 0.0, r"\b(?:no|without|zero|skip(?: the)?|leave out(?: the)?) (?:added )?sugar\b"
                            r"|\bsugar[- ]?free\b"),
    ("sealed_faces", 0, r"\b(?:no fat cap|fat cap (?:is )?off|fat ?cap (?:trimmed|removed))\b|\bfully trimmed\b"),
    ("sealed_faces", 1, r"\bfat ?cap\b|(?<!dripping )(?<!drips )\bfat(?: side)? on\b(?! (?:the|my) (?:fire|coals?))"
     r"|\bfettdeckel\b"),
    ("frozen", False, r"\b(?:never (?:been )?frozen|thawed|not frozen|defrosted|aufgetaut|fresh not frozen)\b"),
    ("frozen", True, r"\b(?:frozen|tiefgekühlt|gefroren)\b|\bnot (?:yet |quite |fully |all )*(?:thawed|defrosted)\b"),
    ("wrap", "paper", r"^paper not foil$|\bpaper (?:instead|wrap)\b"
                      r"|\b(?:butcher|pink|peach|baking) ?paper\b|\b(?:wrap(?: it)?|use|with|(?:swap|switch|change"
                      r"|go)(?: (?:it|that|the wrap|wrap))? (?:to|with|over to)) (?:in |the )?paper\b"),
    ("wrap", "foil", r"^foil not paper$"
                     r"|\b(?:wrap (?:it )?in|use|(?:swap|switch|change|go)(?: (?:it|that|the wrap"
                     r"|wrap))? (?:to|with|over to)|with|foil instead|do) (?:the |tin |tinfoil )?foil\b"
                     r"|\bfoil (?:instead|wrap|it)\b|\balufolie\b"),
    ("wrap", "none", r"\b(?:no wrap(?:ping)?|no (?:foil|paper)(?: (?:and|or|nor))? (?:no )?(?:foil|paper)|dont wrap"
                     r"|unwrapped|without (?:a )?wrap|leave it naked|(?:not|wont|never) (?:be |going to |gonna )?"
                     r"wrap(?:ping)?(?: it| this)?(?! yet))\b"),
    ("chill", "ice", r"\bice[ -]?(?:bath|water)\b|\bchill (?:it )?(?:in|on|with) ice\b|\beisbad\b"),
    ("chill", "fan", r"\b(?:with|use|under) (?:a |the )?fan\b|\brack and fan\b"),
    ("chill", "rack", r"\b(?:cool|chill|fridge)(?: it)? (?:on|uncovered on) (?:a |the )?rack\b"),
    ("chill", "foil", r"\b(?:cool|chill)(?: it)? (?:in (?:the )?(?:foil|wrap)|wrapped)\b"),
    ("purpose", "pulled", r"\b(?:pulled(?! (?:it|them|him|her|the|my|our|this|out|back|off|up|at|from|\d))"
                           r"|shredded|for pulling)\b"),
    ("purpose", "thin", r"\b(?:thin(?:ly)? sliced?|thin (?:cold )?slices|deli thin|shaved|by machine"
                        r"|(?:on|with) (?:the|a) (?:slicer|machine)"
                        r"|slic(?:ed?|ing) (?:it )?(?:really |very |paper |nice and |super )?thin(?:ly)?)\b"),
    ("purpose", "cold", r"(?<!not )\b(?:slic(?:ed?|ing) (?:it )?cold|cold[ -]slic(?:ed|ing)|cold slices|cold cuts?"
                        r"|(?:eat(?:en|ing)?|serv(?:ed?|ing)) (?:it )?cold"
                        r"|(?<!warm )(?<!hot )for (?:cold )?sandwiches|cold sandwiches"
                        r"|cold,? not hot)\b"),
    ("purpose", "hot", r"(?<!not )\b(?:slic(?:ed?|ing) (?:it )?(?:hot|warm)|hot off the (?:smoker|grill|fire"
                       r"|pit)|(?:hot|warm) (?:slices|sliced|(?:\w+ )?sandwich(?:es)?)"
                       r"|eat(?:en|ing)? (?:it )?(?:hot|warm)|serv(?:ed?|ing) (?:it )?(?:hot|warm)|straight off)\b"),
    ("at_risk_eaters", False, r"\bno (?:at risk|one at risk|risk groups?)\b|\b(?:nobody|no one) (?:is )?at risk\b"
                              r"|\b(?:only|all) healthy adults\b"),
    ("at_risk_eaters", True, r"\b(?:pregnant|toddlers?|babies|baby|elderly|chemo|immun\w{0,14}|over 65|grandma"
                             r"|grandpa|small kids|little kids|transplant|dialysis|hiv|(?:has|have|had|with|got)"
                             r" (?:\w+ )?(?:cancer|leuk\w{4,5}|lupus|diabetes)|cancer patients?|diabetics?|"
                             r"(?:kids?|children|child) (?:are |is )?under \d|"
                             r"(?:kids|children) (?:are )?(?:eating|coming|will eat))\b"),
    ("vacuum", False, r"\b(?:not vacuum|no vacuum|out of (?:the|its) vacuum|opened the vacuum)\b"),
    ("vacuum", True, r"\b(?:vacuum|vac)[ -]?(?:packed|sealed)(?: (?:it|them|half|some|most|all|the (?:fish|salmon|trout"
                     r"|fillets?|rest|other half)|\d+ ?(?:packs?|pieces|fillets?|lbs?|kg|g|oz)"
                     r"|(?:two|three|four) \w+)\b|$)"
                     r"|\b(?:packed|sealed) (?:it|them|the (?:fish|salmon|trout)) (?:in|under) (?:a )?vacuum\b"),
    ("cooker", "ceramic", r"\b(?:ceramic|kamado)\b|\bkeramik\w{0,6}\b"),
    ("cooker", "gas", r"\bgas (?:cooker|grill|smoker|bbq|oven)\b|\b(?:to|using|on) (?:the )?gas\b|\bpropane\b"
                      r"|\bgasgrill\b"),
    ("cooker", "electric", r"\belectric (?:smoker|cooker|oven|grill)\b|\belektro(?:smoker|grill)\b"
                           r"|\b(?:in|use|using) (?:the|my|our) oven\b"),
    ("cooker", "pellet", r"\bpellets? (?:grill|smoker|cooker|bbq|barbecue)\b(?! (?:gives|makes|wont|doesnt|keeps|has))"
                         r"|\b(?:on|using) (?:the |my )?pellets\b|\b(?:smoker|grill|cooker) is (?:a )?pellet\b"),
    ("cooker", "kettle", r"\bkettle\b|\bkugelgrill\b"),
    ("cooker", "steel", r"\b(?:drum|bullet|water|barrel|cabinet|vertical|steel) (?:smoker|cooker)\b"
                        r"|\b(?:ugly|the|my) drum\b|\bstahlgrill\b"),
    ("cooker", "offset", r"\boffset\b|\bstick ?burner\b"),
)  # fmt: skip
# «not injecting after all»: what is denied holds no more, and what is done instead is asked
_NOT_THAT: Final = re.compile(
    r"\b(?:not|no|dont|wont|without|never|isnt|arent|cant|instead of|rather than)(?: (?:to|be|going|gonna|the|a|any"
    r"|using"
    r"|in|going to|having|it))* ?$"
)
_TURNED_DOWN: Final = ("method",)
_PATTERNS: Final = re.Rules((re.compile(words), (name, value)) for name, value, words in _WORDS)
_CURE_DAYS: Final = re.compile(
    r"\b(?P<days>\d{1,2}(?:\.\d)?) -?days? (?:of |in an? )?(?:cure|curing|brine|brining)\b"
    r"|\b(?:leave|keep|want|lass) (?:it|them|the meat|es) (?:in )?(?:there |the (?:salt|cure|brine|bag) )?(?:for )?"
    r"(?P<left>\d{1,2}(?:\.\d)?) (?:days|tage)\b"
    r"|\b(?<!been in the )(?<!its in the )(?<!been in )(?:cure|brine) (?:it "
    r"|them )?(?:for )?(?P<for>\d{1,2}(?:\.\d)?) (?:days?|tage)\b"
    r"(?! (?:now|already|so far|ago|left))"
)
_NO_DEADLINE: Final = re.compile(
    r"\b(?:no (?:deadline|rush|hurry|date)|whenever(?: its ready)?|any ?time|open end(?:ed)?|kein termin)\b"
)
_UNKNOWN_COOKER: Final = re.compile(r"\b(?:campfire|pit oven|tandoor)\b")


@dataclass
class Stated:
    """Setup fields that were stated, by slot what was typed and could not be taken, and the text without either."""

    fields: dict[str, Any] = field(default_factory=dict)
    unclear: dict[str, str] = field(default_factory=dict)
    rest: str = ""


def stated(text: str) -> Stated:
    """Every field but meat, mass and deadline that a plain text states."""
    out = Stated(rest=text)
    found = measures.find(text)
    for words, (name, value) in _PATTERNS.fitting(text):
        hit = words.search(text) if name not in out.fields else None
        if hit and _NOT_THAT.search(text[: hit.start()]):
            out.unclear |= {name: hit[0]} if name in _TURNED_DOWN else {}
        elif hit:
            out.fields[name] = value
            out.rest = words.sub(" ", out.rest)
    out.unclear = {slot: typed for slot, typed in out.unclear.items() if slot not in out.fields}
    lying, out.rest = brinings.stated(text, out.rest)
    fields, out.rest = waits.stated(text, out.rest)
    if out.fields.get("method", "brine") != "brine":
        fields.pop("method", None)
    out.fields.update(fields)
    for reader in _READERS:
        reader(text, found, out)
    out.fields = brinings.of_brine(out.fields, text) | lying
    if cups := brinings.by_the_cup(text):
        out.unclear["brine"] = cups
    if cooker := _UNKNOWN_COOKER.search(text):
        out.unclear["cooker"] = cooker[0]
    if _NO_DEADLINE.search(text):
        out.fields["deadline"] = None
    return out


def _lengthwise(text: str, found: tuple[Measure, ...]) -> list[str]:
    """The numbers that may be lengths: all but those with another unit."""
    others = [range(m.start, m.end) for m in found if m.kind != "length"]
    return [n[0] for n in _A_NUMBER.finditer(text) if not any(n.start() in other for other in others)]


def _shares(text: str, found: tuple[Measure, ...], out: Stated) -> None:
    fields, unclear = percents.shares(text, found)
    out.fields |= fields
    out.unclear |= unclear
    if not {"nitrite_target", "cure_nitrite_fraction"} & out.fields.keys() and (words := percents.open_strength(text)):
        out.unclear["strength"] = words


def _lengths(text: str, found: tuple[Measure, ...], out: Stated) -> None:
    if THICK_AND_THIN.search(text) and any(m.kind == "length" for m in found) and len(_lengthwise(text, found)) > 1:
        out.unclear["thickness"] = text[:40]
        return
    for measure in found:
        if measure.kind != "length":
            continue
        if measure.low is None and measure.value > 0 and "thickness" not in out.fields:
            out.fields["thickness"] = measure.value
        else:  # two thicknesses, a range, or nothing that can be thick
            out.unclear["thickness"] = text[measure.start : measure.end]
            out.fields.pop("thickness", None)
            return


def _set_points(text: str, found: tuple[Measure, ...], out: Stated) -> None:
    out.fields.update(set_points.stated(text, found))


def _cure_days(text: str, found: tuple[Measure, ...], out: Stated) -> None:
    if hit := _CURE_DAYS.search(text):
        out.fields["cure_days"] = float(hit["days"] or hit["left"] or hit["for"])


_READERS: Final[tuple[Callable[[str, tuple[Measure, ...], Stated], None], ...]] = (
    _shares, _lengths, _set_points, _cure_days,
)  # fmt: skip
