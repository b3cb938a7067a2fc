"""What a thermometer shows: of which place it is, and what it reads now, whatever it read before."""

from typing import Final

from bot.intents.rewriting.words import SPAN, rules
from core import patterns as re

_VESSEL: Final = r"(?:the|an?|1|my|that) (?:glass|cup|mug|jar|tumbler|bottle) (?:of|with) water"
_WHERE: Final = r"(?: (?:in|next to|beside|by|near|on|behind|with) (?:the |a |my )?\w+)*"
_DEGREES: Final = r"\d{1,2}(?:\.\d)?(?: ?[cf]\b)?"
_CORE: Final = r"(?:core|meat|internal|middle|pit|grill|smoker|fridge)"


_NO_SIZE: Final = r"(?![\d.]* ?(?:mm|cm|in\b|inch|g\b|kg|lbs?\b|oz\b|pounds?|kilos?|%|min|h\b|hours?|people|:))"
_PIECE: Final = r"(?: (?:one|bird|fish|piece|chicken|duck|turkey|fillet|side|trout|breast|leg|thigh)s?)?"
_NOW: Final = r"(?: (?:is|are|at|has|have|reads?|was|were|now|its|all|about|shows?))*"


def _with_its_unit(found: re.Match[str]) -> str:
    """«fridge runs at 38» is in the unit in which a fridge can run at that number; as it is where that is neither."""
    degrees = int(found[1])
    return f"fridge runs at {degrees} {'c' if degrees <= 10 else 'f' if degrees >= 30 else ''}".rstrip()


_BATCH: Final = r"(?:flat|point|trout|salmon|ham|bacon|belly|loin|shoulder|turkey|chicken|duck|goose)"

RULES: Final = rules(
    # «pit dipped to 215 for ten mins then back 250»: what it is now
    (r"\b(pit|smoker|grill)s? (?:dipped|dropped|fell|sagged|went(?: down)?|dropped down) to \d{3}\b[^\d?;]{0,24}"
     r"(?:\d{1,2} ?min\w*[^\d?;]{0,12})?\bback (?:up )?(?:to |at )?(?=[1-4]\d\d\b)", r"\1 "),
    # «hunnerd eighty eight», «dial says 190», «fat end 139 thin bit 151»
    (r"\bhunn?e?re?d (?:and )?(\d{1,2})\b", lambda m: str(100 + int(m[1]))),
    (r"^(?:(?:the|my|its|ok) )*(?:dial|gauge)(?: (?:on|in) the (?:lid|dome|door))? (?:(?:says?|reads?|shows?|is|at) )+"
     r"(?=[1-4]\d\d\b)", "dome says "),
    (r"\b(?:the )?(?:fat|thick|thin|thinner|thicker|skinny) (?:end|bit|part|side|spot) (?:(?:is|at|reads?|says?|now) )*"
     r"(?=(?:[89]\d|1\d\d|20\d)\b(?! ?(?:mm|cm|in\b|inch)))", "core "),
    # «never sent you the 12 oclock one it was 141»
    (r"^(?:(?:sorry|oh|btw|i) )*(?:never|didnt|forgot to|did not) (?:sent?d?|g[ia]ve|t[eo]ld?l?)"
     r" (?:you )?the (\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?|noon)(?: oclock)? (?:one|reading|temp|number|core),?"
     r" (?:it |that )?(?:was|is|read) (?=\d{2,3}\b)", r"at \1 it was "),
    # the brine beside its meat is no meat
    (r"\bbrine (?:round|around|about|next to|beside|with|over|on) (?:the |my )?[a-z]+"
     r" (?:(?:says?|reads?|is|shows?|at|now) )+(?=\d)", "brine "),
    # «104 flat, point 96»: each number behind its piece
    (rf"^(\d{{2,3}}(?: ?[cf])?) ({_BATCH})(?=,? (?:and )?(?:the )?{_BATCH} (?:is )?\d)", r"\2 \1"),
    (rf"^(\d{{2,3}}(?: ?[cf])?) ({_BATCH}),? (?:and )?(\d{{2,3}}(?: ?[cf])?) ({_BATCH})$", r"\2 \1, \4 \3"),
    # «167 everywhere», «203 all round», «165 wherever i poke it»: the meat, by several looks
    (r"\b([6-9]\d|[12]\d\d)( ?°? ?[cf])?,? (?:everywhere|all (?:over|round|around|the way through)|wherever|in (?:all"
     r"|every|each) (?:\w+ )?(?:places?|spots?|corners?))(?: (?:i|we|you) (?:poke|probe|check|test|stick|try|look"
     r"|measure)\w*(?: it)?)?$", r"\1\2 in the meat"),
    # of several pieces by their size
    (rf"\b(?:the )?(?:biggest|largest|fattest|thickest|heaviest|bigger|big|large|fat){_PIECE}{_NOW} "
     rf"(?=[1-9]\d{{1,2}}\b{_NO_SIZE})(?![^;?]*\d ?(?:mm|cm|in|inch\w*|k?g|lbs?|oz|pounds?|kilos?)\b)", "big one "),
    (rf"\bthe (?:rest|remaining|smallest|smaller|small|little|thinnest|thinner){_PIECE}{_NOW} "
     rf"(?=[1-9]\d{{1,2}}\b{_NO_SIZE})(?![^;?]*\d ?(?:mm|cm|in|inch\w*|k?g|lbs?|oz|pounds?|kilos?)\b)", "small one "),
    (r"\b(?:the )?(?:probe|fork|skewer|knife)s? (?:just |now |really )*(?:slides?|slid|glides?|slips?|slipped|sinks?)"
     r"(?: right| straight| easily)* in(?:to it)?(?: easily| now| no resistance| like butter)*$", "probe tender"),
    (r"(?<=\d),? probe tender$", " and probe tender"),
    # a slip that is put right, the later of two, the ends of a swing
    (r"^(?:please )?(?:change|correct) (?:the )?(\d{2,3}) (?:to|into) (\d{2,3})$", r"\2 not \1"),
    (r"^(?:its |was )?(\d{2,3}) ?(?:-+|=)?> ?(\d{2,3})$", r"\2 up from \1"),
    (r"\bfridges? (?:temp )?(?:is |keeps |been )*(?:bounc|swing|vary|varies|rang|goes|going|fluctuat|jump|mov)\w*"
     r"(?: (?:around|from|between|up|and|down|all|over))* (\d{1,2}) ?(?:-|to|and) ?(?=\d{1,2}\b)", r"fridge \1 to "),
    (r"^(?:(?:sorry|oops|no),? )?(?:i )?(?:mis ?read|mistyped|fat fingered)(?: (?:it|that))?,? (?:and )?"
     r"(?=(?:its|it is|it was|was)? ?\d)", "no, "),
    (r"\b(meant|make that|should be) (\d{1,3}(?:\.\d)?) (pit|core|meat|fridge|brine)\b", r"\1 \3 \2"),
    (r"\b(?:the )?last (?:\d|few|couple of) (?:readings?|times|checks?)$", ""),
    (r"\b(probe|sensor|channel) ([1-4]) (?:(?:says|reads|shows|is|at|now|has) )*(?=\d{2,3}\b)", r"\1 "),
    (r"\b(?:(pit|grill|smoker|cooker)s? (?:wont|cant|doesnt|isnt|not) (?:go|get|going|getting|come)(?: up)?"
     r"|cant get (?:it|the (?:pit|smoker|grill))) (?:past|over|above|beyond|hotter than) (?=\d{2,3}\b)",
     lambda m: f"{m[1] or 'pit'} "),
    (r"\bthat \d{2,3} was (?=(?:the |in the )?(?:pit|grill|smoker|meat|core|fridge|brine)$)", "that was "),
    # from what to what it went: what it is now
    (r"\b(?:(?:up|down|climbed|rose|risen|dropped|fell|jumped|back|now"
     r"|crept) )+to (\d{1,3}(?:\.\d)?(?: ?[cf]\b)?) from \d{1,3}(?:\.\d)?(?: ?[cf]\b)?", r"now \1"),
    (r"\b(?:went|(?<!was )(?<!is )(?<!been )(?<!were )gone|climbed|rose|risen|dropped|fell|jumped|crept|up"
     r"|down) from \d{1,3}(?:\.\d)?(?: ?[cf]\b)? (?:up |down )?to (?=\d)(?![\d.]+ ?(?:kg|kilos?|lbs?|pounds?"
     r"|g)\b)(?!\d{1,3}(?:\.\d)?(?: ?[cf])? (?:in|over|within) (?:\w+ )?(?:\d|an?\b|half))", "now "),
    (r"\b(?:the )?(?:fire|pit|smoker|grill)s? (?:has |is |have |just )*(?:died|dying|dropped|dropping|fell|fallen"
     r"|sagged|sagging|gone"
     r"|going|went|down|sunk|sinking|cooled|slipped|crept)(?: (?:right|all the way|back|off|away|down|up))* (?:to"
     r"|at) (?=\d{2,3}\b)", "pit "),
    (r"\b(?:the )?(?:first|1st|second|2nd|other) (?:probe|one|thermometer|sensor)(?: (?:says|reads|is"
     r"|at))* (?=\d{2,3}\b)", "core "),
    (r"(?<=\d),? (?:the )?(?:second|2nd|other) (?=\d{2,3}\b)", " core "),
    (r",? ?\bafter (?:half an?|an?|\d{1,3}) ?(?:h|hrs?|hours?|min\w*) (?:in|on|of) (?:the )?ice(?: ?bath| ?water)?\b",
     ""),
    (r"\b(?:the )?fires? (?:is |at |is at |now )?(?=\d{3}\b|\d{2} ?(?:c\b|°|deg))", "pit "),
    # nothing moved, and since when is said loosely
    (r"\b(?:nothing(?:s| is| has)? (?:happen(?:s|ed|ing)|mov(?:es|ed|ing)|going on|chang(?:es|ed))"
     r"|(?:the )?(?:temp(?:erature)?|its?|meat|core|needle|probe)? ?(?:hasnt|has not|havent|didnt|isnt|wont"
     r"|not) (?:really )?(?:mov(?:ed?|ing)|budg(?:ed?|ing)|chang(?:ed?|ing)|gone (?:up|anywhere)|ris(?:en|ing)"
     r"|climb(?:ed|ing)))\b(?: (?:off|from|past|above|over|beyond))?(?:,? (?:in|for|since|at|over)(?: (?:an?"
     r"|(?:the )?last|all|over an|\d+|half an|ages|a while)(?: (?:hours?|hrs?|h|min\w*|while)\b)?)?)?,? ?"
     r"(?!,? ?(?:(?:in|for|since|over) )?\d+ ?(?:hours?|hrs?|h|min))(?=.*\d\d)",
     "still "),
    # how it runs, and how far it has come: beside the number that stands now
    (r"(?<=\d\d),? (?:and|an|n|&) (?:climbing|rising|falling|dropping|holding|steady|counting|going (?:up|down))\b",
     ""),
    (r"\b(?:its |it |pit |thing )?(?:has |is |just )?(?:run|running|ran|got|getting) (?:off|away)(?: (?:on|from"
     r"|with) (?:me|us))?,? (?=\d{3}\b)", "pit "),
    (r"^(?:its |it |temp |has |just )*(?:went|gone|go|jumped|climbed|risen|rose|come|came|crept|dropped|fell) (?:up"
     r"|down)? ?(?:by )?\d{1,2}(?: (?:degrees?|deg))? in (?:the last |about )?(?:half an? (?:hr|hour)|half hr|an? (?:hr"
     r"|hour)|\d{1,2} (?:hrs?|hours?|mins?|minutes?)),? (?=(?:(?:and|so|now|its|at|is|core|meat|pit) )*\d{2,3}\b)", ""),
    # two looks at what cools
    (r"\b(1[2-9]\d|6\d)((?: ?[cf])?) at (\d{1,2}(?:[.:]\d\d)?(?: ?[ap]m)?),? (\d{2}(?: ?[cf])?) by (?=\d)",
     r"\1\2 at \3, \4 at "),
    # a thermometer in a glass of water shows how cold the fridge is, and no gust of warm air
    (rf"\b({_DEGREES}) (?:in|inside) {_VESSEL}{_WHERE}$", r"\1 in the fridge"),
    (rf"\b(?:thermometer |probe )?(?:in )?{_VESSEL}{_WHERE} (?:is |reads |says |shows |at )*(?={_DEGREES}$)",
     "fridge "),
    # what went into the fridge, and what it reads
    (r"\b((?:mov(?:ed|ing)|going|gone|went|transferred|switched|put)(?: it)? (?:in|to"
     r"|into) (?:the )?fridge),? (?:now )?(?=[3-9]\d\b|1\d\d\b)", r"\1, "),
    # what happened before, and what it reads now
    (r"(?<=[a-z]) (it|probe|core|meat|thermometer)s? (?:now )?(?:reads|says|shows"
     r"|is back at) (?=\d{2,3}(?: ?[cf])?(?: now)?$)", r", \1 reads "),
    (r"(?<=\d) (?=(?:the )?lid (?:was|is|has been)\b|opened (?:the )?lid\b)", ", "),
    (r"^(?:(?:it|fridge) )?was (\d{1,2}(?:\.\d)?(?: ?[cf])?) (?:overnight|all night|last night),? (?:and |but |its "
     r"|now )*(?:back (?:to|at|down to)|now|down to|again)? ?(?=\d)", r"\1 last night, now "),
    (r"^(?:(?:the )?probes? (?:were|was|are|got) (?:mixed up|swapped|the wrong way (?:round|around)|switched"
     r"|crossed)(?: up| over)?),? (?:so |and |its )*(?=.*\d)", ""),
    (r"\b((?:more|added|fresh|new) ice(?: (?:in|added|on))?),? (?=(?:its|core|meat|now|at) ?\d)", r"\1, "),
    (r"\b(?:40|80|4|26)(?: ?[fc])? (check|reading)$", r"\1"),
    (r"(?<=\d) (?=(?:meat )?(?:on|off) at \d)", ", "),
    (r"^c ?(\d{2,3}(?:\.\d)?) ?[,/]? ?p ?(\d{2,3})$", r"core \1 pit \2"),
    (r"^p ?(\d{2,3}) ?[,/]? ?c ?(\d{2,3}(?:\.\d)?)$", r"pit \1 core \2"),
    (rf" for (?:about |like )?{SPAN},? (?:and |but )?(?=now \d)", " "),
    (r"^(?:(?:its|it is|has) )?been (?:\d{1,2}|an?|a few) ?(?:h|hrs?|hours?|min\w*) since (?:the |my )?last (?:reading"
     r"|check|one)(?: sorry)?,? ", ""),
    (r"\b(?:fell|dropped|went|sank|slipped|climbed|rose|jumped|moved) (\d{2,3}(?: ?[cf])?) to "
     r"(?=\d{2,3}\b)(?!\d{2,3}(?: ?[cf])? (?:in|over|within) (?:\w+ )?(?:\d|an?\b|half))", "now "),
    (r"\bturned (?:the |my )?fridge (?:down|up|colder|warmer|off|on),? (?:and |so |now |but )*(?:its|it is|it)(?: now"
     r"| at| reads| says)* (?=\d{2})", "fridge "),
    (r"\bturned (?:the |my )?fridge (?:down|up|colder)(?: to (?=\d))?", "set the fridge to "),
    # how it is, behind a number
    (r"(?<=\d)( ?[cf])?,? (?:and |its |thats )?(?:(?:all|so far so|looking|feeling) )?(?:good|great|perfect|spot on"
     r"|nice|lovely|happy days|as it should be)[ .!]*$", r"\1"),
    # of the places or pieces that were read, the one that counts
    (r"\b(?:the )?(?:lowest|coldest|slowest|thickest|deepest) (?:one|piece|thigh|leg|breast|chop|of (?:them|the (?:two"
     r"|three|lot|bunch)))(?: (?:is|says|reads|shows|at|now|only))* (?=\d{2,3}\b)", "core "),
    (r"^(?:(?:sorry|oops|my|a|wrong|it was) )*typo,? (?:the )?(?=\d{2,3} (?:was|is)(?: \w+)? \d{2,3}$)(\d+) (?:was"
     r"|is)(?: really| actually)? ", r"the \1 should be "),
    (r"\b((?:added|threw|put|topped)(?: \w+){0,3} (?:coals?|charcoal|wood|splits?|lump|fuel"
     r"|pellets)(?: in| on)?),? (?:and )?(?:the )?(?=pit\b)", r"\1, "),
    (r"\bpit (?:is |now )*(?:climbing|rising|coming up|going up)(?: to| at| now| past)? (?=\d{3}\b)", "pit "),
    (r"\boff (?:of )?(?:the )?(?:fire|heat|grill|smoker|pit|cooker) (?:at |was |is )?(?=1\d\d\b|20\d\b)", "off at "),
    (r"\bexternal (?=\d)(?=.*\binternal\b)|(?<=\d )external (?=\d)", "pit "),
    (r"^fridge (?:is |was )*(\d{1,2}(?:\.\d)?(?: ?[cf])?) (?:tonight"
     r"|this evening),? (?:and )?(?:was )?(\d{1,2}(?:\.\d)?(?: ?[cf])?)"
     r" (?=this morning|last night|at lunch)", r"fridge \1 now, \2 "),
    # two readings a while apart
    (r"\b(\d{2,3})(?: ?[cf])?,? (?:then|and then|and|now) (\d{2,3}(?: ?[cf])?),? ((?:\d{1,2}|ten|twenty|half an"
     r"|an?) ?(?:m|mins?|minutes?|h|hrs?|hours?)) later$", r"\1 \3 ago, \2 now"),
    (r"^(?:(?:i|we|ive|just|ok) )*(?:moved|put|got|shifted) (?:it|them|the (?:bags?|meat|tub)) (?:in|into|to) (?:the "
     r"|my |our |another )?(?:\w+ )?fridge,? (?:and |which |that )?(?=(?:reads|says|is at|its at|at) (?!(?:1[0-2]"
     r"|[1-9])\b(?! ?[cf]\b))\d)", "fridge "),
    # and is away
    # rooms and boxes that are kept as cold as a fridge
    (r"\b(?:walk|reach)[- ]?in(?: (?:cooler|fridge|refrigerator|chiller|box|cold ?room))?\b|\bcold ?room\b", "fridge"),
    (r"\b(\d{2,3}) (?:on|at|for) (?:the )?(?:probe|sensor|channel) ?[1-4]\b", r"core \1"),
    (r"^(?:it )?took (?:about |like )?(?:\d{1,2}|an?|half an?) ?(?:h|hrs?|hours?|min\w*) to (?:hit|reach|get to"
     r"|come to) (?=\d{2,3}(?: ?[cf])?$)", "now "),
    # of all of them alike; beside a lid that was open the number is the pit's
    (r"\b(1[2-9]\d|20\d)( ?f)?,? (?:in |on )?all (?:of (?:them|em)|[2-9]|of the(?:m| fish"
     r"| birds))$", r"\1\2 in the meat"),
    (r"\b(lids? (?:was|is|has been|were) (?:open|off|up) (?:for )?(?:about )?(?:an?|\d{1,2}) ?(?:m|min\w*|sec\w*|bit"
     r"|moment)),? "
     r"(?:(?:its|pit|at|is|now) )*(?=[12]\d\d(?: ?f)?(?: now)?$)", r"\1, pit "),
    # wrapped a while ago, and what it reads now
    (r"\b((?:wrapped|foiled)\b[^,;?]*\bago),? (?:and )?(?:its |it is )?now (?:at )?(?=(?:1[3-9]\d"
     r"|20\d)(?: ?f)?$)", r"\1, core now "),
    (r"^(?:(?:i|just|we|ive) )*(?:opened|peeked in|unfolded|checked in|looked in) (?:up )?(?:the |its )?(?:foil|wrap"
     r"|paper|parcel)"
     r"(?: up| a bit)?,? (?:and )?(?=(?:its|it is|it reads|core|reads|now) )", ""),
    (r"(?<=\d),? (?:and |its |all |nice and |super )*(?:jiggly|wobbly|like jell?[oy]|like butter|floppy|wobbles)$",
     " and probe tender"),
    # what it reads and what is wanted, what it was, how thick at either end
    (r"\bpit (?:is |at )*(\d{3}),? (?:and |but )?(?:i |we )*(?:want|need|wanted|should be|supposed to be"
     r"|target)(?: it)?(?: (?:at|to be))? (\d{3})$", r"pit \1, run the pit at \2"),
    (r"^(?:(?:its|it is|core|meat) )*(\d{2,3}(?:\.\d)?(?: ?[cf])?) now,? (?:but )?(?:it )?was \d{2,3}(?:\.\d)?(?: "
     r"?[cf])?$", r"\1 now"),
    (r"^([^,;]*\d\d),? (?:after|when|because|since|cause) (?:i|we) (?:just )?(?:opened|lifted)(?: (?:it|up|the (?:lid"
     r"|smoker|grill|cooker|pit)))*$", r"lid was open, \1"),
    (r"fridge (?:runs|is set|stays|sits) at (\d{1,2})$", _with_its_unit),
    (r"^(\d{2,3}) (?:both(?: sides)?|everywhere|all (?:over|round)),? (?=off\b|taking|pulled|pulling)", r"\1, "),
    (r"(?<=\d),? (?:and |but |still )?(?:it |its |the core |core |temp )?(?:(?:hardly|barely|scarcely|only just|not"
     r"|wont|isnt|aint) (?:really )?(?:mov|budg|climb|ris|chang|shift|going up)\w*(?: up)?|crawling|creeping)(?: much"
     r"| at all| any ?more| now)*$", " stuck"),
    (r"\blid(?:s)? (?:has |had |was |is )?(?:been )?(?:left )?(?:off|open) (?=for\b)", "lid was open "),
    (r"(?<=\d),? (?:i |we )?forgot(?: to (?:say|send|tell(?: you)?|mention|write|type|log))?[:,;]? (?=(?:it|core|pit"
     r"|meat"
     r"|fridge|brine) (?:was|were|read|had) \d)", ", "),
    (r"^(?:no,? )?(?:the )?other way(?: round| around)?,? (?=(?:thats|its|that is|it is|that was) (?:the )?(?:pit"
     r"|core|meat"
     r"|fridge|brine)\b)", ""),
    (r"\?{2,} (?=\d{2,3}\b)", ", "),
    # the cooker before a number is its heat, and no new cooker; «fridge now» is where the meat goes
    (r"\b(?:the )?(?:kettle|offset|kamado|drum|barrel|ceramic)s?(?: (?:is|at|now|reads|says"
     r"|on))* (?=\d{2,3}\b(?! ?(?:lbs?|kg|l|in|inch|cm|mm|quarts?|gal)\b))", "pit "),
    (r"^(?:ive |i |we |weve )*(?:had|kept|held|running|been running|been holding) (?:it|the pit"
     r"|the smoker) (?:steady )?at (?=[23]\d\d\b)", "pit "),
    (r"\bambient:? ?(?:is |at )?(?=[12]\d\d\b)", "pit "),
    # what it jumped to is read, and doubted as such
    (rf"^(?:the )?(?P<of>{_CORE})?(?:it|temp)?s? ?(?:just |suddenly |has |now )*(?:jumped|shot|leapt|spiked"
     rf"|rocketed)(?: right| straight)?(?: up)? to (?P<n>\d{{2,3}})(?: ?(?P<u>[cf])\b)?[?! ]*$",
     lambda m: f"{m['of'] or ''} {m['n']}{m['u'] or ''}".strip()),
    (r"^oven(?: (?:is|at|now|temp|reads|says))* (?=\d{3}$)", "pit "),
)  # fmt: skip
