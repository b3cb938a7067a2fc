"""How people talk in a kitchen and over a fence, as one writes it: «yanked er», «a turkey boob», «tea at six».

Only words that can mean nothing else are written anew; what a word decides is for the readers to say.
"""

from typing import Final

from bot.intents.rewriting.words import CLOCK, UNIT_NEXT, WEEKDAY, rules

_DEED: Final = r"(?:turned|flipped|rolled|spun|put|took|pulled|yanked|wrapped|got|threw|stuck|lit|rinsed|dunked|gave)"
_BIRD: Final = r"(?:chicken|chook|turkey|duck|goose|bird)"
_MEAL: Final = r"(?:eat(?:s|ing|in)?|dinner|lunch|supper|meal|tea|serv(?:e|ing)|grub|nosh|ready (?:for|by))"
_GLUED: Final = r"(?P<h>0?[4-9]|1\d|2[0-3])(?P<m>[0-5]\d)"  # 130 to 350 may be degrees

RULES: Final = rules(
    # who and what
    (rf"\b({_DEED}) (?:er|her|him|ya)\b(?! (?:over )?(?:to|the fire|for)\b)", r"\1 it"),
    (r"\b(turkey|chicken|duck) boobs?\b", r"\1 breast"),
    (rf"\bhole (?={_BIRD}s?\b)", "whole "),
    (r"\bmates? ?rates?\b", ""),
    (r"(?<=\d)( ?(?:kg|kilos?|g|grams?|lbs?|pounds?|oz|ounces?)) (?:a pop|apiece|a go|a throw)\b", r"\1 each"),
    (r"(?<=\d) ?grams? each\b", " g each"),
    (r"\bme (?=brother|sister|mum|mom|dad|wife|missus|mrs|husband|son|daughter|hands|mate|neighbou?r|nan|gran|fridge"
     r"|bag)", "my "),
    (r"\b(?:the )?(?:bairns|nippers|ankle biters|littl(?:e|'?) ?uns|rugrats)\b", "kids"),
    (r"\btwas\b", "it was"), (r"\btis\b", "it is"),
    (r"\b((?:dry|wet)[ -](?:rub )?cured?) for (?=(?:bacon|pastrami|ham|corned beef|back bacon|duck|turkey)\b)", r"\1 "),
    (r"^(?:(?:ive|i|we) )?(?:gotta|have to|hafta) (?=an? (?:[a-z]+ ){0,3}(?:hunk|slab|lump|piece|chunk|brisket|flat"
     r"|belly|ham)\b)", "got "),
    (r"\bo (?=(?:beef|pork|turkey|meat|salmon|ham|bacon|cure|salt|mine)\b)", "of "),
    (r"^(?:(?:aw|oh|ah|well) )?(?:shoot|crap|darn|bugger|blast|rats|bollocks|argh?|oof|yikes|uh oh|whoopsie|ah geez"
     r"|jeez|crikey|blimey|d'?oh),? (?=(?!the\b|it\b|this\b|me\b|us\b|all\b|that for\b)\w)", "oops, "),
    # deeds
    (r"\b(?:yanked|whipped|hauled|hoiked|fished|dragged) (it|them|that|the (?:meat|flat|brisket|bird|ham|fish|belly))\b"
     r"(?! (?:in|on|over))", r"pulled \1"),
    (r"\b(?:spice|spices|seasoning|crust|coating|pepper)s? (?:is|are|s|has gone|went) on\b", "rubbed it"),
    (r"\bno (?:cover|lid|wrap) on(?: it)?\b|\b(?<=fridge )no cover\b", "uncovered"),
    (r"\bsack(?:ed|ing)? off (?=(?:the )?(?:wrap|flip|turn|rins|soak|foil|spritz))", "skip "),
    # of whom it is asked to come back
    (r"\b(?:try|hit|bug|nag|buzz|poke|chase|prod|shout|holler(?: at)?|give) (?:us|me)(?: a (?:shout|nudge|buzz|bell"
     r"|poke|holler|ping|call))?(?: again)?(?: about (?:it|that))? (?=in \d|in an?\b|in half|at \d|about \d|around \d"
     r"|in the (?:morning|evening|afternoon)\b|after\b|when\b|once\b|later\b|tomorrow\b|tonight\b)", "remind me "),
    (r"\bgimme a (?:shout|nudge|buzz|bell|poke|holler|ping|call)(?: about (?:it|that))?\b", "remind me"),
    (r"^hang (?:about|fire|on a (?:sec|mo))[,.]? (?=\w)", "wait, "),
    # hours that are glued together behind what only an hour follows
    (rf"\b({_MEAL})(?: at| is| now| be)? {_GLUED}\b{UNIT_NEXT}", r"\1 at \g<h>:\g<m>"),
    (rf"\b((?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]* \d{{1,2}}(?:st|nd|rd|th)?),? "
     rf"(?!20[2-9]\d){_GLUED}\b{UNIT_NEXT}", r"\1 at \g<h>:\g<m>"),
    (rf"\b(call it|make it|lets say) (?P<h>[4-9]|1[0-2])(?P<m>[0-5][05])\b{UNIT_NEXT}", r"\1 \g<h>:\g<m>"),
    (rf"\bcall it (?={CLOCK}(?: (?:then|now|instead|please))*$)", "make it "),
    (r"(?<!bottom )(?<!top )(?<!beef )(?<!eye )(?<!of )(?<!a )(?<!the )(?<!turned )\bround (?:about )?(?=\d)",
     "around "),
    (rf"\b({WEEKDAY}|tomorrow|this|that) (afternoon|evening|morning|arvo|lunchtime|night) (?={CLOCK}(?:ish)?(?:$"
     rf"|[,;]))",
     r"\1 \2 at "),
    # the meal of the evening, where an hour or a day stands beside it
    (rf"\bteas? (?=(?:is |now |at |on )+(?:\d|half|quarter))|(?<=for )tea (?=at \d|on |{WEEKDAY}\b|tomorrow|tonight"
     rf"|half|quarter)", "dinner "),
    (r"\b([1-9]/(?:2|4|8|16)) in (?=(?:thick|cured?|dry|wet|and|smok\w+|each|bone|skin|flat|belly)\b)", r"\1 inch "),
)  # fmt: skip
