"""What went wrong: fire out, power cut, left out, a leak, a dose twice, a cure that was forgotten."""

from dataclasses import dataclass
from typing import Any, Final

from bot import measures
from bot.intents import lasting, when
from bot.intents.context import Context
from bot.intents.intents import Happened
from core import patterns as re

_A_CURE: Final = r"(?:cure|curing salt|pink salt|pink|nitrites?)\b"
OUT_OF_THE_COLD: Final = (
    r"(?:counter|table|buffet|bench|worktop|porch|terrace|patio|deck|balcony|(?:door)?step|window ?sill)"
)
_WARM: Final = rf"{OUT_OF_THE_COLD}|side|stove|sink|floor|car|boot|trunk|garage|sun|kitchen|hall|shed|cellar|basement"
WARM_PLACE: Final = rf"(?:on|in) (?:the|my|a|our) (?:kitchen |garden |work )?(?:{_WARM})(?! (?:fridge|freezer))"
_PUT: Final = r"\b(?:added|(?<!should i )(?<!shall i )(?<!can i )(?<!could i )(?<!to )(?<!^)put|tipped|threw|stirred)"
_AT_TABLE: Final = (  # what is there once the meal is over
    r"(?:left ?overs?|the (?:rest|left)(?: of (?:it|them|the \w+))?|remains|carcass(?:es)?|bones|platter|plates?)"
)
_SERVED: Final = (
    r"(?:bird|turkey|chicken|duck|goose|fish|salmon|trout|fillets?|breasts?|legs?|thighs|wings|slices|food"
    r"|half (?:of )?(?:it|them|the \w+))"
)
_LAID: Final = "is|are|sits?|stands?|lies?|in|under|with|wrapped|covered|foil|film|paper|an?|plate|dish|tray|loosely"
_COVERED: Final = rf"(?: (?:{_LAID}))*"
_FOR_LONG: Final = r" (?:since|for|all|over ?night|during|the (?:whole|entire)|\d|an? |from)"
_WORD: Final = r"(?!(?:fridge|freezer|probe|thermometer|phone|not|never|was|were)\b)[a-z]+"  # none of them between
_AMOUNT: Final = (
    r"(?:(?:(?:half an?|an?|\d[\d./]*) ?)?(?:heaped |level )?(?:g|grams?|oz|tsps?|tbsps?|(?:tea|table)?spoon(?:ful)?s?"
    r"|pinch(?:es)?|scoops?) )?(?:of )?(?:the )?"
)
_DOSE: Final = r"(?:cure|curing salt|pink salt|pink|dose)"
_MORE_CURE: Final = rf"{_AMOUNT}(?:more|extra|another|additional) {_AMOUNT}{_DOSE}"
_WHAT: Final = re.Rules(
    (re.compile(words), what)
    for what, words in (
        ("fire_out", r"\b(?:fire|smoker|grill|pit|coals?|charcoal|flame|burner|gas|feuer)(?:s| is| has| have"
                     r"| had)? (?:just |all )?(?:went |gone |go |burnt |burned |died |was |ran |ist )?(?:out|died"
                     r"|dead|cold|aus)\b"
                     r"|\b(?:grill|smoker|cooker|pit) (?:was |is |been )?(?:off|down|stopped) for\b"
                     r"|\blost (?:the |my )?(?:fire|flame) for\b|\b(?:fire|grill|smoker) died\b"
                     r"|\bran out of (?:gas|charcoal|fuel|coal|pellets)\b"
                     r"|\bfire out\b|\bfeuer ist aus\b"
                     r"|\b(?:gas|propane|bottle|tank|charcoal|coals?|fuel|hopper)s? (?:is |are |has |was |all |just )*"
                     r"(?:empty|gone|finished|used up|burn(?:ed|t) (?:out|through|up|down))\b"
                     r"|\b(?:am|im|are|we|its|is|just|run|all) out of (?:gas|charcoal|propane|fuel|pellets|coal|wood)\b"
                     r"|\bno (?:more )?(?:gas|charcoal|propane|fuel|pellets|coal) left\b"
                     r"|^out of (?:gas|charcoal|propane|fuel|pellets|coal|wood)\b"),
        ("power_cut", r"\b(?:power|electricity|current) (?:cut|outage|failure|failed|went|is out"
                      r"|was out|was off|is off|has been off|out|off)\b"
                      r"|\b(?:power|electricity|current) (?:was |is |went |has been |had been )*(?:gone|lost"
                      r"|dead|down)\b"
                      r"|\b(?:no|without) (?:power|electric(?:ity|s)?)\b|\bblackout\b"
                      r"|\b(?:fridge|freezer) (?:broke|died|failed|was off|went off|is off|stopped|off)\b"
                      r"|\bfreezer door (?:was )?(?:left )?open\b"
                      r"|\b(?:fridge|it)(?: was| got| is)? (?:unplugged|switched off|turned off)\b"
                      r"|\bunplugged the fridge\b"
                      r"|\b(?:breaker|fuse|circuit)\b.{0,12}\b(?:tripped|blew|blown|went)\b|\blost power\b"
                      r"|\belectric(?:ity|s)? (?:went|was|is) (?:off|out)\b"
                      r"|\bstromausfall\b|\b(?:black|brown)[ -]?out\b|\bfridge (?:has )?(?:stopped working"
                      r"|packed (?:in|up)|conked out|gave up|is dead|is broken|broke down)\b"),
        ("warm_fridge", r"\bfridge (?:door )?(?:was |is |has been |stood |got )?(?:left )?(?:wide )?(?:open|ajar)\b"
                        r"|\b(?:left|had|kept) (?:the )?fridge (?:door )?(?:wide )?(?:open|ajar)\b"
                        r"|\bopened the fridge (?:all|over|for (?:\d|an?\b|hours))\b"
                        r"|\bdidnt (?:close|shut) the fridge\b"
                        r"|\bfridge (?:is|was|got|ran) (?:too )?warm\b"),
        ("warm_brine", r"\bbrine (?:is|was|got|went) (?:still |too |a bit |quite )*(?:warm|hot|lukewarm)\b"
                       r"|\b(?:warm|hot|lukewarm) brine\b"),
        ("left_out", r"\b(?:left|forgot|sat|been|was|sitting|stood|stayed|lay) (?:it |them |the (?:meat|bag|brisket"
                     r"|brine) )?out\b"
                     rf"|\b(?:left|forgot|sat|been|was|sitting|stood|stayed|lay|hung)(?: {_WORD}){{0,4}}?"
                     rf" {WARM_PLACE}\b"
                     rf"|\b(?:its|it is|meat is|bag is|still) on the (?!table|buffet){OUT_OF_THE_COLD}\b"
                     rf"|\b{_AT_TABLE}{_COVERED} {WARM_PLACE}"
                     rf"|\b(?:{_AT_TABLE}(?: (?:is|are|was|were|has|have|been|just|all|sitting|standing|lying))*"
                     rf" (?:still|(?=out\b))|{_SERVED}(?: (?:is|are|was|were))? still)"
                     rf"(?: (?:sitting|standing|lying|left))*(?: {WARM_PLACE}| ?\bout(?: on the \w+)?(?=$|{_FOR_LONG}))"
                     rf"|\bthawed (?:it |out )*{WARM_PLACE}\b"
                     r"|\b(?:had|kept) (?:it|them|the (?:meat|bag)) out\b(?! of the (?:brine|cure|bag))"
                     r"|\bforgot to (?:put|get|move) (?:it|them|the (?:meat|bag|brisket|ham|belly)) (?:back )?"
                     rf"(?:in|into) the fridge\b|^(?:on the )?{OUT_OF_THE_COLD} since\b"),
        ("leaked", r"\ba leak\b|\b(?:bag|tub|bucket) (?:has|had|got) (?:a |an )?(?:slow|small|little|tiny) drip\b"
                   r"|\bleaks? (?:in|from|at|on) the (?:bag|tub|bucket)\b|\b(?:bag|tub|bucket|it|one)(?:s"
                   r"| has| is| was)? (?:been )?(?:leak\w{0,3}|burst|split|ripped"
                   r"|torn)\b"
                   r"|\b(?:bag|tub|bucket|bottle)s? (?:has |have |is )?(?:lost|losing|loses) (?:\w+ ){0,3}(?:liquid"
                   r"|brine|juice|water|fluid)\b"
                   r"|\b(?:bag|tub|bucket|it)(?:s| is| was| has been)? (?:weep|seep|drip)(?:ing|ed|s)\b"
                   r"|(?<!no )(?<!glass of )(?<!cup of )\b(?:(?:juice|liquid|brine|water|fluid|puddle|drips?)\b.{0,10}"
                   r"\b(?:in|on|under|all over) (?:the )?(?:tray|shelf|bottom|plate|dish|drawer|floor)"
                   r"|brine\b.{0,10}\b(?:on|under|all over) (?:the )?fridge"
                   r"|(?:juice|liquid|water|fluid|puddle|drips?)\b.{0,10}\b(?:in|on|under|all over) (?:the )?fridge)\b"
                   r"|\b(?:tipped|knocked|kicked) (?:the )?(?:bag|tub|bucket|it)(?: over| down| off| out)\b"
                   r"|\b(?:bag|tub|bucket|it) (?:has |was |got |is )?(?:tipped|knocked|fell|fallen|toppled)"
                   r"(?: over| down)\b"
                   r"|\b(?:lost|spilled|spilt) (?:(?:about|maybe|some|like|only|just) )*(?:an? |half a |\d\S* ?)"
                   r"(?:cups?|pints?|quarts?|lit(?:re|er)s?|ml|l|tbsps?|tablespoons?|splash|dash|glass)"
                   r"\b(?! of (?:water|beer))"
                   r"|\b(?:half an?|an?|a few|some|\d\S*) ?(?:cups?|pints?|quarts?|ml|l|lit(?:re|er)s?|tbsps?"
                   r"|tablespoons?)(?: of (?:the )?(?:brine|liquid|juice|it))? (?:(?:is|was|are|has|have) )?"
                   r"(?:gone|lost|leaked|spilled|ran out|missing)\b"
                   r"|\bleaked\b|\bbag leak\b|\bleaking\b|\b(?:spilled|dripped|dripping|oozing) (?:out of|from"
                   r"|all over|everywhere)|\b(?:hole|rip|tear|split|puncture|slit)s? in (?:the|my|one|both|a|its|one of"
                   r" the) (?:bags?|tub|pouch|bucket)\b"
                   r"|\b(?:bags?|tub|pouch) (?:has|have|got|had|with) (?:a |an? \w+ )?(?:hole|tear|rip|split"
                   r"|leak)s?\b"),
        ("dosed_twice", r"\b(?:double|twice)[ -]?(?:dosed|salted|cured)\b"
                        r"|\b(?:doubled|twice the|double the|double) (?:the )?(?:cure|pink salt|dose|salt)\b"
                        r"|\b(?:dosed|salted|cured|added|put)\b.{0,24}\b(?:twice|two times|2 times|double)\b"
                        r"|\b(?:added|put|gave|threw|tipped|mixed)(?: it| in)? (?:a |the )?"
                        r"(?:second|2nd|other|another)(?: full| whole)? (?:dose|lot of cure)\b"
                        r"|\bcure\b.*\b(?:put|added|chucked|threw) (?:in )?(?:another|a second|some more) (?:lot"
                        r"|load|round|dose|go)\b"
                        r"|\bboth (?:added|put in) the cure\b"
                        r"|\b(?:also|too) (?:added|put in|weighed) the (?:cure|pink)\b"
                        r"|\b(?:added|put in) the (?:cure|pink salt|curing salt) (?:as well|too|also)\b"
                        rf"|\b(?:added|put|tipped|threw|chucked|stirred)(?: in)? (?:(?:an? (?:bit |little )?|some )?"
                        rf"{_MORE_CURE}|{_AMOUNT}{_DOSE} (?:in )?on top)\b|\b{_MORE_CURE} (?:went|is|got|gone) in\b"
                        rf"|{_PUT}\b[^,;?]{{0,30}}\b{_DOSE}\b[^,;?]{{0,9}}\b(?:again|a second time|once more|extra)\b"),
        ("cure_as_salt", r"\b(?:cure|pink salt|curing salt)\b.{0,20}\b(?:like|as|instead of|in place of|for)"
                         r" (?:the |all the )?(?:table |normal |regular |kosher |cooking )?salt\b"
                         r"|\b(?:all|only) (?:the salt (?:was|is)|of it (?:was|is)) (?:pink|cure|curing)"),
        ("cure_in_rub", r"\b(?:cure|pink salt|curing salt)\b.{0,12}"
                        r"\b(?:in|into|on|to) (?:the |my )?(?:rub|crust|bark|outside)\b"
                        r"|\b(?:rubbed|sprinkled|dusted) (?:it )?(?:with )?(?:the |some |more )?"
                        r"(?:cure|pink salt|curing salt)\b"),
        ("forgot_cure", rf"\bforgot (?:to (?:add|put)(?: in)? )?(?:the |any )?{_A_CURE}"
                        rf"|\bno {_A_CURE} (?:is |went |got )?in(?:to)? (?:it|the|there)\b"
                        rf"|\b(?:didnt|did not|never) (?:add(?:ed)?|put)(?: in)? (?:the |any )?{_A_CURE}"),
        ("wrong_salt", r"\b(?:used|added|put in|took) (?:the |some )?(?:pink )?(?:himalayan|sea salt"
                       r"|iodi[sz]ed(?: table)?(?: salt)?|regular salt|normal salt|plain salt|rock salt|kosher salt"
                       r"|cure ?(?:#|no\.? ?|number ?)? ?2|table salt|wrong (?:salt|cure)"
                       r"|saltpet\w{1,3}|nitrate)\b|\bwrong (?:salt|cure) (?:in|went)\b"
                       r"|\b(?:its|it is|it was|that is|thats|was) (?:the |really |actually )*(?:pink )?(?:cure|salt) ?"
                       r"(?:#|no\.? ?|number ?)? ?2\b"),
    )
)  # fmt: skip
_PLACE: Final = {"fire_out": "core_c", "left_out": "room_c", "warm_fridge": "room_c", "warm_brine": "room_c"}
_OF_THE_MEAT: Final = re.compile(r"\b(?:core|middle|inside|internal)\b")  # no warmth of the room
_NITRATE: Final = re.compile(r"\b(?:cure|salt) ?(?:#|no\.? ?|number ?)? ?2\b|\bsaltpet|\bnitrate\b")
_NOT_THE_OTHER: Final = re.compile(r",? ?\bnot (?:cure )?(?:#|no\.? ?|number ?)?1\b")  # «its cure no 2, not 1»
_DENIED: Final = re.compile(
    r"\b(?:not|isnt|hasnt|didnt|dont|couldnt|could not|nobody|never|no longer|if|what if|when|should|before)\b"
    r"|\b(?:will|ill|gonna|going to|lets|shall|letting|(?:plan\w*|want|wanna) to)\b(?=.* (?:go|die|burn) ?out\b)"
)
_COOKER: Final = re.compile(r"\b(?:pellets?|grill|smoker|cooker|auger|controller)\b")
_WE_WERE_OUT: Final = re.compile(
    r"^(?:(?:sorry|ok|just) )*(?:i|we) (?:was|were) out\b"
    r"|^(?:(?:i|we|sorry|ok|just|just back) )*(?:was|were) out(?:,|$| (?:and|so|last|at|with)\b)"
)
_PROBE_OUT: Final = re.compile(
    r"\b(?:probe|thermometer|sensor|display)s? (?:is|was|were|had been|fell|lay|sat|stood"
    r"|out)\b"
)
_SOMEBODY_OUT: Final = re.compile(  # «no flip today was out»: nothing that lies in the cold is said to be out
    r"(?<!it )(?<!meat )(?<!bag )(?<!bags )(?<!they )(?<!that )(?<!brisket )(?<!ham )(?<!flat )(?<!belly )(?<!piece )"
    r"\bwas out$"
)
_NOT_CURE: Final = re.compile(
    r",? (?:and )?(?:not|no|instead of) (?:the )?(?:curing (?:salt|one|stuff)|pink salt"
    r"|curing|pink|cure|right (?:one|stuff))$"
)
_BESIDE_THE_CURE: Final = re.compile(  # more salt, and no other in its place
    r"\b(?:as well|too|also|on top|besides|in addition|plus|along ?side|with (?:it|the cure|the pink"
    r"|the curing salt))\b"
)
_BEFORE_THE_COLD: Final = re.compile(
    r",? ?\bbefore (?:(?:it|i|we|she|he|they) (?:went|put|got|started|could|came)[^,;]*|(?:the |its )?(?:ice"
    r"|chill|fridge|bath)\b[^,;\d]*)"
)
_TO_OVEN: Final = re.compile(r"\b(?:in|into|to) (?:the |my )?oven\b")  # where it goes on at once
_ON_FIRE: Final = ("drying", "cooking", "resting")
_OVERNIGHT: Final = re.compile(r"\b(?:overnight|all night|über nacht)\b")


@dataclass(frozen=True)
class Told:
    """An incident, and the text without the words for it."""

    happened: Happened
    rest: str


_STILL_HOT: Final = re.compile(r"\b1[4-9]\d(?: ?f)?\b(?! ?(?:min|g\b))|\b[6-9]\d ?c\b")


def read_happened(text: str, context: Context) -> Told | None:
    """An incident, where a plain text tells of one."""
    text = _NOT_THE_OTHER.sub("", _NOT_CURE.sub("", _BEFORE_THE_COLD.sub("", text)))
    hit = next(_WHAT.hits(text), None)
    if hit is None:
        return None
    found, what = hit
    rest = f"{text[: found.start()]} {text[found.end() :]}".strip(" ,")
    if _DENIED.search(rest if what == "forgot_cure" else text):
        return None  # «never added the cure» denies the cure, and not that it was forgotten
    if what == "power_cut" and context.phase == "cooking" and _COOKER.search(text):
        what = "fire_out"  # what burns by the mains stands still
    if what == "wrong_salt" and _BESIDE_THE_CURE.search(text):
        return None
    still_hot = context.phase == "resting" and _STILL_HOT.search(text)  # «down to 152, sitting on the counter» rests
    if what == "left_out" and (still_hot or not_the_meat(text)):
        return None
    if what == "fire_out" and (context.phase not in _ON_FIRE or _TO_OVEN.search(text)):
        return None
    if what == "forgot_cure" and found[0].startswith("no ") and context.phase == "waiting" and not context.brine_made:
        return None  # then it is how it is wanted
    if what == "cure_in_rub" and context.phase in ("none", "waiting") and found[0].startswith("rubbed"):
        return None  # before it is in the cure that is how a dry one goes in
    began = lasting.by_clock(text, context)
    lasted = lasting.plainly(text) or (began[0] if len(began) == 1 else None)
    facts = _facts(what, text) | ({"hours": lasted} if lasted else {})
    said = None if lasted else when.past(text, context)
    return Told(Happened(what, facts, said.at if said else None), rest)


def not_the_meat(text: str) -> bool:
    """Whether it is a thermometer that lay out, or somebody who was."""
    return bool(_PROBE_OUT.search(text) or _WE_WERE_OUT.match(text) or _SOMEBODY_OUT.search(text))


def _facts(what: str, text: str) -> dict[str, Any]:
    facts: dict[str, Any] = {"overnight": True} if _OVERNIGHT.search(text) else {}
    if what == "wrong_salt":
        facts["salt"] = "nitrate" if _NITRATE.search(text) else "no_cure"
    temperatures = measures.of_kind(text, "temperature")
    if len(temperatures) == 1:
        place = _PLACE.get(what, "celsius")
        if place != "room_c" or not _OF_THE_MEAT.search(text):
            facts[place] = temperatures[0].value
    return facts
