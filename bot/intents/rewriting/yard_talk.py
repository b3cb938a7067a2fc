"""How people talk in a yard: where a thermometer lies, where the meat rests, whom they leave the flips to."""

from typing import Final

from bot.intents.rewriting.words import WEEKDAY, rules

_MEAT: Final = r"(?:meat|ham|bag|bags|belly|bacon|brisket|flat|loin|tub|joint|bird|turkey|fish)"
_RESTS: Final = r"(?:tucked|bundled|nestled|stashed|parked|swaddled|buried|wrapped up)"

_FRIDGE_STUFF: Final = r"(?:milk|butter|eggs?|cheese|beers?|veg\w*|salad|yog\w*|jam|juice|leftovers|mayo\w*|lettuce)"

RULES: Final = rules(
    (r"\bbro(?= in law\b)", "brother"),
    # of what lies in a fridge only a fridge is read
    (rf"^(?:(?:its|it is|reads|now|got|shows) )*(\d{{1,2}}(?:\.\d)?(?: ?[cf])?)(?: (?:on|by) (?:the |my "
     rf"|our )?(?:\w+ )?"
     rf"thermometer)? (?:next to|beside|by|behind|near|with|in with|among) (?:the |my )?{_FRIDGE_STUFF}\b"
     rf"(?: (?:and|in) [a-z ]+)?$", r"fridge \1"),
    # a thermometer beside the meat, and the meat in its box
    (rf"(?<![\d.])(\d{{2}}(?:\.\d)? ?[cf]?) (?:right )?(?:next to|beside|alongside|by) (?:the"
     rf"|my) {_MEAT}\b", r"fridge \1"),
    (r"\b(?:stuck|put|dropped|poked|dunked|popped|stood) (?:the |my |a )?(?:thermometer|probe) (?:in|into) the brine,? "
     r"(?:and |its |it is |it |still |says |reads |shows )*(?=\d)", "brine is "),
    (rf",? (?:and )?{_RESTS} (?:(?:up|away|it|in towels) )*(?:in|into) (?:the |a |my )?(?:beer |ice |big |old )*"
     r"(?:cooler|cool box|esky|chilly bin)(?: (?:with|in|under) (?:some |old |a few )*(?:towels?|blankets?))?",
     ", in the cooler"),
    (r"(?<=\b1[4-9]\d),? (?:just )?(?:sitting|resting|standing) on the (?:counter|side|bench|board|table|worktop)$",
     ""),
    # missed, and made good
    # who has it meanwhile, and what a clock is to be
    (rf"^(?:(?:im|i am|we are|were|now|ok|well|right) )*(?:off|going|heading|gone|driving|flying|away) (?:over |up "
     rf"|down |out )?"
     rf"(?:to|at) (?:my |our |the )?[a-z]+(?: [a-z]+)?,? (?:ill be |be )?back (?:on )?(?=(?:{WEEKDAY}"
     rf"|tomorrow)\b)", "back "),
    (r"^(?:(?:im|i am|we are) )*(?:heading|popping|nipping|running|driving|off) to (?:the |my "
     r"|our )?([a-z]+)(?: practice| game)? "
     r"(?=(?:un)?till? (?:\d|noon))", r"at the \1 "),
    (r"\b((?:(?:un)?till?|back at) [^,;?]{1,12}?),? (?=(?:my |the )?(?:brother|sister|mother|father|son"
     r"|daughter)(?: in law)? (?:is "
     r"|will be |s )?(?:watching"
     r"|minding|on|has|watches|minds|looking after|with) (?:the )?(?:pit|fire|smoker|grill)\b)", r"\1, "),
    (r"((?:(?:un)?til+|back) [^,;?]{3,24}?),? (?P<who>[a-z]{2,12}) (?:from )?next ?door (?=(?:does|has|flips|turns"
     r"|minds|takes"
     r"|is doing|will do|doing)\b)", r"\1, \g<who> "),
    (rf"((?:un)?til+ (?:{WEEKDAY})(?: night| evening| morning| arvo)?),? (?:and |so |but )?my (?:boy|lad|girl|kid"
     rf"|pal|guy|man) "
     r"(?=[a-z]+ (?:is|has|will|does|s) )", r"\1, "),
    (r"^(?:(?:i|we|have|ive|weve|just) )*(?:moved|relocated)(?: (?:out|over|down|up|back))? to ([a-z]+(?: [a-z]+)?)"
     r"(?: (?:last|this) (?:week|month|year)| now| recently)?,? (?:so )?(?:please )?(?:fix|change|set|update|mind)"
     r" (?:your|the|my) (?:clock|time|zone|time ?zone)\b.*$", r"my time zone is \1"),
    (r"^(?:(?:please|can you|could you) )*(?:talk|speak|write)(?: to me)? in (celsius|fahrenheit|centigrade"
     r"|metric|imperial)\b"
     r"[^\d?]*$", r"use \1"),
    (r"^(celsius|fahrenheit|centigrade|metric|imperial)(?: please| pls)?,? (?:because|cos|since|as|i|im|we|were)"
     r" [^\d?]*$", r"use \1"),
    (r"^use (celsius|fahrenheit|centigrade|metric|imperial),? (?:i|im|we|cos|because|coz|since) [^\d?]*$", r"use \1"),
    (r"^(?:(?:so|ok|lets|and) )*say (?:it|the core|the middle|shes?) (hits|gets to|reaches|reads|is) (?=\d)",
     r"if it \1 "),
    (r"!+ (?=(?:have|did) (?:i|we) (?:kill|ruin|wreck|spoil))", "? "),
    # the wrap
    (r"^(?:(?:no|nah|ok|actually|so),? )*(?:forget|scrap|ditch|never ?mind|skip) (?:the |about (?:the )?)?(?:foil"
     r"|paper|wrap\w*)"
     r"(?:,? (?:im |ill |were |we are |just )*(?:leaving|leave|going|keeping|keep) (?:it |her )?(?:naked|bare"
     r"|open|unwrapped|as is))?$",
     "no wrap"),
    (r"\blike (\d{1,2}(?:[:.]\d\d)?) (?=tonight|this evening|tomorrow)", r"at \1 "),
    (r",? (?:sorry )?(?:cant|couldnt) (?:type|see|text|write) (?:with|in|without) (?:these |my |the |greasy |big )*"
     r"(?:gloves?|mitts?|mittens|glasses|sun|hands|thumbs)\b$", ""),
    (r"(?<=[a-z0-9]),? (?:whoops|whoopsie|woops|oopsie|oops|yikes|argh|dang)$", ""),
)  # fmt: skip
