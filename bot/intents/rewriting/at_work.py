"""What was done or left undone, told in other words: «rolled it over», «all cut up», «havent touched it in 2 days»."""

from typing import Final

from bot.intents.rewriting.words import rules
from core import patterns as re

_MANY_DAYS: Final = r"(?:(?P<n>\d{1,2}|an?|a couple of|a few) (?P<u>days?|nights?))"
_BAGS: Final = r"(?:bags?|packs?|packets?|parcels?|tubs?|boxes|lots|portions)"


def _missed(found: re.Match[str]) -> str:
    """Each half of two days at most by its day; of more the flip alone."""
    many = {"a": 1, "an": 1, "a couple of": 2, "a few": 3}.get(found["n"]) or int(found["n"])
    return "missed the flips yesterday" if many == 1 else "missed the flips"


RULES: Final = rules(
    # turned in the cure, and kneaded
    (r"\b(?:rolled|swung|swapped|spun|flopped|heaved) (it|them|her|the (?:bags?|belly|bellies|meat|slabs?"
     r"|pieces?"
     r"|ham)) (?:over|round|around|onto its other side)\b", r"turned \1 over"),
    (r"\b(?:squished|squeezed|squashed|sloshed|kneaded|smooshed|mushed|jiggled|worked) (?:it|them|the bags?|the meat"
     r"|everything)"
     r"(?: (?:around|about|round|well|through|up|a bit|good|properly))*\b(?! out)", "massaged it"),
    (r"\b(?:an?d )?(?:given|gave) (?:it|them)? ?(?:a |an )?(?:good |nice |quick |proper )*(?:massage|rub down|knead"
     r"|squeeze"
     r"|squish)\b", "and massaged it"),
    (r"^(?:(?:thats|yes|yep|right|ok|and) )*both (?:the |of the )?(?:flips?|turns?)(?: (?:is|are|were|all))*(?: done"
     r"| sorted"
     r"| in)?(?=$| (?:for )?today| this| already| now)(?: (?:for )?today)?", "flipped both times"),
    (r"\bdid both(?: of them)? (?=today|yesterday|this)(?P<d>today|yesterday|this \w+)(?:,? (?:am|morning"
     r"|in the morning) "
     r"(?:and|&|plus) (?:pm|evening|night|in the evening))?$", r"flipped both times \g<d>"),
    (r"^(?:(?:yes|yep|ok|sorry|i|we|have) )*(?:only |just |finally |now )+(?:now )?(?:got|getting"
     r"|gotten)(?: a?round)? to"
     r"(?: do(?:ing)?)? (?:the |it|that|my )*(?P<d>flip|turn|rinse|soak|rub|wrap)(?:p?ing)?(?: (?:it"
     r"|them))?(?: just)? ?"
     r"(?:now)?(?:,? (?:it |which |that )?(?:was|were) (?:supposed|meant"
     r"|due) (?:to(?: be)?(?: done)? )?[a-z ]{3,24})?$",
     r"did the \g<d> now"),
    (r"(?<=\w),? (?:it |which |that )?(?:was|were) (?:supposed|meant) to(?: be)?(?: done)? (?:this morning|last night"
     r"|earlier|yesterday|hours ago|before)$", ""),
    # nobody turned it
    (rf"^(?:(?:i|we|oops|sorry|uh oh|just|really|so|and|its|it|has|been|been a|bag|bags|the),? )*(?:havent|hasnt"
     rf"|have not"
     rf"|didnt|not|never|nobody|no one)(?: (?:been|even|really|actually|has|have))* (?:touch|flipp?|turn|mov"
     rf"|look)(?:e?d)?"
     rf"(?: (?:it|them|at it|the bags?|over))*(?: (?:in|for|since|the last|over"
     rf"|now))* {_MANY_DAYS}(?: now)?$", _missed),
    (rf"^(?:(?:i|we|oops|sorry) ?,? ?)*(?:missed|forgot|skipped)(?: the)?(?: flips?)?(?: (?:for|in|over))?(?: the)? "
     rf"(?:last|past) {_MANY_DAYS}$", _missed),
    (rf"^(?:(?:its|it is|been|about|must be|oops) )*{_MANY_DAYS} since (?:i|we|anyone|anybody|somebody) (?:last )?"
     r"(?:touched|flipped|turned|moved) (?:it|them|the bags?)$", _missed),
    # how it was read, and of which fridge
    (r"\b(fridge|brine|pit|meat) (?:itself|herself|proper|temp itself)\b", r"\1"),
    (r"^(?:(?:i|we|sorry|oops) )*(?:nodded|dozed|dropped|drifted) off(?: (?:on|in) (?:the"
     r"|my) \w+)?(?: for a bit)?,? (?:and |so )?"
     r"(?=\w.*\d)", ""),
    (r"\bice (?:bath )?(?:only |just )?(?:went|got|was) (?:in|on) (?=(?:at|around|about) (?:half |quarter past "
     r"|quarter to )?\d)",
     "chill started "),
    (r"\b(?:lil|little|wee|beer|garage|spare|big|kitchen|basement|shed|bar) fridge(?: (?:thermometer|gauge|display"
     r"|dial))?\b"
     r"(?= (?:is|at|on|says|reads|shows|sitting|sat|still|now|\d))", "fridge"),
    (r"\b(fridge|pit|bbq|smoker|grill|core|brine)s? (?:is |are |just |still )*(?:sitting|sittin|sat|sits|holding"
     r"|running)"
     r" (?:on|at) (?:about )?(?=\d)", r"\1 "),
    (r"^(?:its |it |has |its )*(?:lost|dropped|down|fallen|cooled|gone down) (?:a (?:bit|few|little|touch|couple)"
     r"|some|slightly)"
     r"(?: (?:degrees|deg))?,? (?=(?:its|now|at|it is|so) (?:\w+ )?\d)", ""),
    (r"\bbrown paper\b", "butcher paper"),
    (r"\b(wrapped [^,;]{0,40}?(?:ago|back)),? (?:it|she|he|meat|core) was (?:on|at|reading"
     r"|about) (?=\d{2,3}\b)", r"\1 at "),
    # off the fire, and cut
    (r"\b(?:yanked|whipped|hauled|hoiked|fished|dragged|plucked) (?:it )?(?=(?:at )?\d{2,3}\b)", "pulled it "),
    (r"\blike (?:soft |warm |hot |room temp )?(?:buttah|buttr|buter)\b",
     "like butter"),
    (r"^(?:(?:its|it is|thats|the lot|everything|meat|now) )*(?:all (?:cut|chopped|hacked) up|(?:cut|chopped"
     r"|hacked) (?:it"
     r"(?: all)?|them(?: all)?|all of it|the lot) up)\b", "sliced it"),
    (rf"\b(\d{{1,2}} {_BAGS})(?: of it)?(?: (?:is|are|went|gone|now|all))* in(?:to)? (?:the "
     rf"|my )?(?:deep )?freez(?:er?|e)\b",
     r"froze \1"),
    (r"\bdeep freeze\b(?! dr)", "freezer"),
    # out of the ice, and where it lies
    (r"\bout of the ice,? (?:and )?(?:its )?(?:now )?(?:on|onto) (?:a |the )?(?:wire )?rack(?:,? (?:on "
     r"|in )?(?:the )?(?:bottom"
     r"|top|middle|lower|upper) shelf)?$", "out of the ice, on a rack in the fridge now"),
    (r"\b(?:dumped|chucked|threw|tipped|lobbed|poured|bunged|piled)(?: (?:in|on))? (?:some )?more ice(?: (?:in|on"
     r"|over it"
     r"|on top))?\b", "added more ice"),
)  # fmt: skip
