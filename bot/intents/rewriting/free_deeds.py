"""What was done and what was read, told with words around it: how a deed is called in passing, where a number stood."""

from typing import Final

from bot.intents.rewriting.words import DAY, SPAN, rules
from core import patterns as re

_IT: Final = r"(?:it|her|him|them|that|the (?:meat|brisket|flat|bird|chicken|turkey|duck|fish|salmon|trout|belly|ham))"
_THREW: Final = (
    r"(?:threw|thrown|chucked|slapped|lobbed|plonked|plopped|bunged|banged|whacked|tossed|slung|laid|popped|stuck|sat)"
)
_DEED: Final = (
    r"(?:flipped|turned|wrapped|foiled|papered|lit|rinsed|pulled|put|took|went|came|on|off|in|out|did|done"
    r"|started|sliced"
    r"|checked)"
)
_CLOCK: Final = r"(?:1[0-2]|0?[1-9])[:.][0-5]\d"


def _before(found: re.Match[str]) -> str:
    """«foiled it 10 to 1» at 12:50, «put it on 5 past 8» at 8:05."""
    hour, minutes = int(found["h"]), int(found["m"])
    if found["side"] in ("past", "after"):
        return f"{found['deed']} at {hour}:{minutes:02d}"
    return f"{found['deed']} at {(hour - 1) or 12}:{60 - minutes:02d}"


RULES: Final = rules(
    # a pot is that of the brine, and holds no meat
    (r"^(?:(?:the |my )?(?:brine )?(?:stock ?)?(?:pot|saucepan|pan)(?: of (?:the )?brine)?) (?:(?:is|went|goes"
     r"|has gone|now"
     r"|just|sits) )*(?:in|into|to) (?:the |my )?fridge\b", "the brine is in the fridge"),
    (r"^(?:(?:i|we|just|ok|so) )*(?:put|got|stuck|moved) the (?:brine )?(?:pot|saucepan"
     r"|pan)(?: of brine)? (?:in|into|to)(?: the"
     r"| my)? fridge\b", "the brine is in the fridge"),
    (r"^(?:(?:its|it is|now|ok) )*in the fridge(?: now)?,? (?:pot|pan"
     r"|saucepan) and all$", "the brine is in the fridge"),
    # a flip told with two hours
    (r"\b(flipped|turned)((?: it| them)?) at (\d{1,2}(?:[:.]\d\d)?) (this morning|today) and (half )?(?:at )?(\d{1,2})"
     r"((?:[:.]\d\d)?) (tonight|this evening)$",
     lambda m: f"{m[1]}{m[2]} at {m[3]} {m[4]}, {m[1]}{m[2]} at {m[6]}{':30' if m[5] else m[7]} {m[8]}"),
    # hours
    (rf"\b(?P<deed>{_DEED}(?: (?:it|them|her))?(?: (?:on|off|in|out))?) (?:at |about |around )?(?P<m>5|10|20|25) "
     r"(?P<side>to|till|before|past|after) (?P<h>1[0-2]|[1-9])\b(?! ?(?:min|days?|hours?|c\b|f\b|lb|kg|degrees))",
     _before),
    (rf"\b((?:papered|foiled|wrapped|flipped|turned|rinsed|lit|pulled|put) (?:it|them|her)(?: (?:on|off|in|out|up))?)"
     rf" (?={_CLOCK}\b)", r"\1 at "),
    (r"(?<=\w)[, ]+(?:and )?(?:it |core |she )?was (?:at |on )?(\d{2,3}) (?:then|by then|at the time)$", r", \1 then"),
    (r"\b(?:try|hit|ping|ask|nag|remind|call|catch|get) (?:me|us) (?:up |back )?(?=(?:1[0-2]|[1-9])(?:[:.][0-5]\d"
     r"| ?[ap]m\b|$| (?:tonight|tomorrow|today|instead)))", "remind me at "),
    (r"\b(?:hit|ping|try|catch) (?:me|us) up (?:again )?(?=in \d|in an?\b|at \d|after\b|later\b)", "remind me "),
    (r"\b(remind me|ask again|try again|ask me again|ping me|call me) in (?=\d{1,2}$)(\d{1,2})", r"\1 in \2 min"),
    # deeds
    (r"\bpapered (?:it|her|him|them)?\b(?: up)?", "wrapped it in paper"),
    (rf"\b{_THREW} {_IT} on\b(?! (?:the (?!(?:smoker|grill|pit|grate|kettle|fire|bbq)\b)|a |ice))", "put it on"),
    (rf"\b(?:throwing|chucking|slapping|sticking|popping|banging|bunging|tossing) {_IT} on\b(?! (?:a "
     rf"|ice))", "putting it on"),
    (r"^(?:(?:we|i) )?(?:couldnt wait|got impatient|jumped the gun|changed my mind)(?: and| so)?,? (?=(?:i |we )?(?:put"
     r"|stuck|threw|dropped|popped|started|lit|took|pulled|want|make|lets|gonna|do it)\b)", ""),
    # meat that has turned is asked about: it may be the bag, and it may be bad
    (r"^(?:(?:i|we|think|reckon|fear|hope|might have) )*(?:its|it has|(?:the |my )?(?:meat|belly|brisket|flat|ham|loin"
     r"|bird|fish|chicken|turkey|duck|salmon)s? has|the (?:meat|belly|brisket|flat|ham|loin|bird|fish|chicken|turkey"
     r"|duck|salmon)s) (?:just |gone )?turned(?: (?:on me|bad|sour|i think|already))*$", "its turned"),
    (r"\b(flipped|turned)(?: (?:it|them|the bags?))? (?:twice|two times|2x) (?:today|already)\b", r"\1 it"),
    (r"(?<=\w),? (?:but |and |then )?(?:i |we )?went (?:away|out|camping|off) (?:for|over) (?:the|a) (?:night|day"
     r"|evening|weekend|bit|while)$", ""),
    (r"\b(?:put|got|stuck|dropped|popped|chucked|threw|lowered|dunked) (?:it|her|them|the (?:meat|brisket|flat"
     r"|belly|ham"
     r"|bird|fish|salmon|duck|loin)) in(?:to it)?(?: already| now| early| anyway)*$", "put it in"),
    (r"^(?:(?:the )?(?:meat|brisket|flat|belly|ham|it|bird|fish)s? (?:is |are )?(?:now )?)(?:swimm?in[g]?|bathing"
     r"|in its bath|having (?:its|a) bath|submerged|under(?: the brine)?|all under)(?: now| away)*$",
     "meat is in the brine"),
    (r"^(?:the )?(?:chimneys?|starter|coals?)s? (?:is |are )?(?:now )?(?:going|roaring"
     r"|away|burning|smoking|blazing)(?: nicely| well| now)*$", "coals are lit"),
    (r"^(?:the )?(?:smoke|smoker)s? (?:(?:is|has|its|gone|now|running|all|nice|going|turned|looks?|and"
     r"|a) )*(?:thin|clean"
     r"|blue|clear)(?:,? (?:and )?(?:thin|blue|clean|clear))*,? (?:now )?(?:so |and )+(?=\w)", ""),
    (r"^((?:its? |it is |(?:the )?meats? )?(?:off|on|in|out|wrapped|resting)),? (?:and )?(?:happy|finally"
     r"|phew)$", r"\1"),
    (rf"^(?:(?:i|we|oops|sorry|uh oh|just|really|so) ,? ?)*(?:havent|hasnt|have not|didnt|not"
     rf"|never) (?:been )?(?:touched"
     rf"|flipped|turned|moved|looked at|touch|flip|turn)(?: (?:it|them|the bags?))?(?: since| from) (?:last )?(?:{DAY}"
     r"|yesterday)(?: sorry| oops| now)*$", "missed the flips"),
    (r"^(?:the )?(?P<who>[a-z]{3,12}(?: \d)?) (?:got|was|were|has been|been) (?:missed|forgotten|skipped)"
     r"(?= (?:both|last|this|yesterday|tonight|today)\b| *$)", r"missed the \g<who> flip"),
    (r"^(?:(?:i|we|ive|just) )*only (?P<deed>did|done|flipped|turned) (?=(?:the "
     r"|my )?[a-z]{3,12}(?: \d)?$)(?!(?:the )?(?:one|half|big"
     r"|small|first|other|thick|thin)\b)", lambda m: "did " if m["deed"].startswith("d") else "flipped "),
    (r"\bslept (?:right |straight )?(?:through|thru)(?: the| my)? (?P<when>last nights|last nites|yesterdays"
     r"|this mornings)?(?: ?(?:flip"
     r"|turn|one|alarm))?(?: sorry| oops)?,? (?:(?:but|and|so|sorry) )*(?=(?:did|flipped|turned)(?: it| them)? )",
     lambda m: f"missed {(m['when'] or 'it').removesuffix('s').replace('nite', 'night')}, "),
    (r"^(?:(?:im|i am|we are|ok|right|now|just) )*pulling (?:it|them|her|the \w+)(?: off| now| out)*$", "pulled it"),
    (r"\b(?:cracked |black |white )?(?:pepper|coriander|spices?|rub|seasoning|mustard)(?:,? (?:and|with"
     r"|plus) (?:cracked |black "
     r")?(?:pepper|coriander|mustard|garlic|paprika|spices?))* (?:on|all over|over) (?:every|all|both"
     r"|each) (?:the )?sides?\b",
     "rubbed it"),
    (r"^(?:(?:ok|yeah|so|we|i|all|just|well)[, ]+)+(tossed|binned|chucked)(?: (?:it|them|that|the lot|it all))?"
     r"(?: (?:out|away))?$", r"\1 it"),
    (r"^tossed$", "tossed it"),
    (r"\b(drying|uncovered|open|rack|sitting|resting|lying|left|lies|now) in fridge\b", r"\1 in the fridge"),
    (r"\bback in(?:to)? the fridge,? (?=(?:uncovered|open|bare|naked|without a lid|no lid)\b)", "in the fridge "),
    (r"\b(?:the )?ice (?:(?:has|is|s|had|it|was) )*(?:all |mostly |nearly |pretty much )?(?:melted|gone"
     r"|turned to water|ran out"
     r"|run out|used up)(?!\W*$)(?:,? (?:a while|ages|an hour|a bit) (?:back|ago))?(?:,? (?:and )?(?:i )?(?:forgot"
     r"|didnt notice|missed it"
     r"|only just noticed)(?: (?:about )?it)?)?(?:,? (?:so )?(?:what now|now what|help))?\W*$"
     r"|^(?:(?:we|i|its|have|ive) )*(?:ran|run) out of ice(?: (?:at|around"
     r"|about) [\d:.]+)?(?:,? (?:and )?(?:only )?(?:just )?"
     r"(?:noticed|saw|realised|realized)(?: it| now)?)?$", "ice all gone"),
    (r"\b(?:aiming|shooting|gunning|going) (?:for |at )?(?=[12]\d\d(?: ?f)?$)", "run the pit at "),
    (r"\b(?:the )?(1[0-2]|[1-9])(?: oclock)? (?=(?:check|reading|flip|turn)\b)", r"the \1 oclock "),
    (r"(?<=[a-z])(?<! and)(?<! but)(?<! so)(?<! now)(?<! says)(?<! said)(?<! think)(?<! like)(?<! when)(?<! if) "
     r"(?=(?:now )?its (?:now )?(?:at )?\d{2,3}(?: ?[cf])?(?: now| still)?$)", ", "),
    (r"\b(?:totally |completely |clean )?(?:spaced|blanked)(?: out)?(?: on)? (?=the |that |it\b|last )", "forgot "),
    (r"^(?:(?:its|it has|has|oops|sorry) )*been (?:\d{1,2}|a few|a couple of|two|three|four) (?:days"
     r"|nights) since (?:i|we|anyone"
     r"|anybody)(?: last)? (?:turned|flipped|touched|moved) (?:it|them|the bags?)\b.*$", "missed the flips"),
    (r"^(?:(?:i|we|sorry) )*(?:havent|didnt|not|hadnt) (?:looked|checked|been out|peeked|read it)(?: (?:at it"
     r"|on it|in|for|over|an?"
     r"|about|hours?|\d|while|ages|half|min\w*))*,? (?:sorry,? )?(?=its \d{2,3}\b)", ""),
    (r"\b(at \d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?) (?:instead of"
     r"|rather than) (?:at )?(?=\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?$)",
     r"\1 not "),
    (r"\b(?:it |she |he |(?:the )?meat |they |just )?(?:came|has come|come) off (?=(?:at|around|about|just|now"
     r"|a bit|early|late)\b"
     r"|\d|$)(?!(?:at )?\d{1,3}(?:\.\d+)? ?(?:kg|kilo|lb|pound|g\b))", "took it off "),
    (r"\bguests? (?:(?:is|are|up to|number) )*(?:now )?(?:up to )?(\d{1,2})(?: now)?$(?<!\d\d\d)", r"now \1 guests"),
    (r"^((?:now |its |at )*\d{3}(?: ?f)?) (?=(?:pulled|took|taking|pulling|off the|lifted)\b)", r"\1, "),
    (r"(?<=\d)(\b.{0,40}?\b(?:rest\w*|sitting|sat|hold\w*)) in (?:the |a |my )?(?:oven|warmer|warming drawer|hot box) "
     r"(?:at|set to) 1[4-7]\d\b", r"\1 in the oven"),
    (r"^(?:now )?(\d{2,3}(?:\.\d)?(?: ?[cf])?) (core|internal)\b(?=,| (?:water|bath|ice|now)\b)", r"\2 \1,"),
    (r"(?P<b>^|, |\band )(?P<d>turned|flipped) (?=(?:the )?fridge (?:is |at |was |reads |says "
     r"|shows )*\d)", r"\g<b>\g<d> it, "),
    (r"^((?:my |the )?(?:wife|husband|brother|sister|mum|mom|dad|son|daughter|neighbou?r|mate|partner|kids?|boy"
     r"|girl)(?: in law)?"
     r"(?: [a-z]{3,12})?) (has|takes|gets|minds|is having) (?:the )?(?:bags?|meat|belly|brisket|ham"
     r"|tub)\b", r"\1 has it"),
    (r"\bpit (?:has |just )*(?:spiked|jumped|shot(?: up)?|ran up|got up|went up|climbed"
     r"|crept up) to \d{3},? [a-z ,]{0,40}?"
     r"(?:down|back)(?: down)? to (?=\d{3}\b)", "pit "),
    (r"(?<=\d),? (?:so )?(?:im |i am )?(?:leaving|keeping) (?:it|her|them) on(?: (?:a bit|a while|longer|for now"
     r"|then))*$", ""),
    (r"^(?:(?:i|we|accidentally) )*(?:took|ran|let|brought) (?:it|her|them) (?:go |run "
     r"|up )*to (\d{3})(?: by (?:accident"
     r"|mistake))?$", r"core \1"),
    (r"\bout came (?:it|the [a-z]+)\b,? ?(?:at )?(?=\d|$)", "pulled it, "),
    (r"^(?:(?:its|nice and|all|fish|meat|is|looks|getting|really) )*(?:flaky|flaking|flakes"
     r"|opaque) at (?=\d{2,3}\b)", "core "),
    (r"\b(?:not a (?:scrap|crumb|bite|morsel|sausage)|nothing|nowt|none|not much) (?:was "
     r"|is )?left(?: over)?\b(?!.*\d)",
     "all gone"),
    (r"\bbefore (?:drying|patting it dry|i dried it|the rack)$", ""),
    (r",? (?:so )?(?:a )?(?:few|couple)(?: of)? more hours(?: to go)?(?: i (?:guess|think|reckon|suppose))?$", ""),
    (r"(?<=\d)( ?[cf])? (?:all (?:round|over|around)|everywhere)(?=$|[,.;]| (?:resting|pulled|off|now|took)\b)", r"\1"),
    (r"^(?:(?:yep|yes|yeah|ok|aye|done|all)[, ]+)*(?:rolled|rotated|flopped)(?: over)?$", "flipped it"),
    (r"\b(probe tender|like butter|tender),? (?:so )?(?:i )?pulled(?: it)?$", r"\1, pulled it"),
    (r"\bresting (?:til|till|until) (?:about )?\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?$", "resting"),
    (rf"^(?:(?:ok|i|we|so|and) )*(?:gave|given|giving) {_IT} (?:a (?:half|quick|short|good|long|proper)? ?(?:hours?|hr"
     rf"|\d+ min\w*)?|an hours?|{SPAN}) ?soak(?: in (?:cold |fresh |clean )*water)?(?P<t>$|,| (?=now|and|then"
     r"|its))(?: ?(?:and )?(?:then )?)", r"soaked it\g<t> "),
    (r"^(?:(?:ok|now|just|i|ive) )*(?:swapped|switched|transferred)(?: (?:it|them|over))* (?:in)?to the fridge\b",
     "moved it to the fridge"),
    (r"\boff (?:of )?(?:the )?ice\b", "out of the ice"),
    (r"^(?:(?:its|fish|meat|now|all|wrapped) )*in (?:foil|paper|towels) in (?:a|the|my) (?:cooler|cool ?box|esky)\b",
     "resting in the cooler"),
    (r"\bpulled (it|them|the meat) (?=(?:from|out of) (?:the |its )?(?:brine|bag|cure|tub|bucket"
     r"|salt)\b)", r"took \1 "),
    (r"^(all gone|all eaten|eaten)(?:,? (?:bar|except|but|apart from) (?:the |a |few |some "
     r"|for )*[a-z]+)?,? (?=(?:the )?(?:salt"
     r"|taste|texture|bark|smoke|it was|was|bit)\b)", r"\1, "),
    (r"^(?:i |we )?made (?:it|the brine) (?=(?:about )?(?:\d{1,2}|an?|half an?|two|three) ?(?:h|hrs?|hours?"
     r"|min\w*) ago\b)",
     "made the brine "),
    (r"\b(on|off|in|out) (?:it|she|he|they) (?:went|came)\b", r"it went \1"),
    (r"^(?:(?:im|were|we are|just|ok) )*back (?:from (?:the |my )?[a-z]+|home|again|now),? (?:and )?(?=(?:its "
     r"|core |meat |now "
     r"|at )*\d{2,3}\b(?! ?(?:min|h\b|hours?|hrs?|m\b)|[:.]))", ""),
    (r"(?<=\d) (?=(?:fresh|new|more|extra) ice\b)", ", "),
    (r"(?<=\d) (?:we are |were )?(?=(?:eating|serving|sitting down) (?:now )?(?:at )?\d)", ", we are "),
    (r"\b(pulled it|took it off|its off),? (\d{3})(?: ?f)?(?=,| (?:resting|and|now|in|wrapped|under)\b)(?! ?(?:lb"
     r"|g)\b)",
     r"\1 at \2,"),
    (r"(?<=\d),? (?:the )?(?:ice ?)?(?:water|bath)(?:s| is| at| reads)* \d{2}(?: ?[cf])?(?=$|,| (?:and|more"
     r"|fresh)\b)", ""),
    (r"(?P<b>^|, |\d |\btonight |\btomorrow |\bnow |\band |\blater |\bit )were (?=(?:out|away|off|gone|busy|going"
     r"|having|eating)"
     r"\b(?! of)|\d{1,2} (?:tomorrow|tonight|today|now|on \w+day)\b)", r"\g<b>we are "),
    (r"\b(?:the )?(?:fire|coals|charcoal) (?:was|were) (?:all |nearly |almost )?out\b(?! of)", "the fire went out"),
    (r"^(?:(?:i|we|just) )*(?:pulled|took|taken|yanked|moved|shifted) (?:the |my )?(?:probe|thermometer|sensor)s?\b"
     r"[^,;.\d?]*[,;.] ?(?=[^?]*\d)", ""),  # the probe is out, and no meat
    # what was read, and where
    (r"(?<=\d)( ?(?:degrees|deg))? (?:on|by) (?:the|my|an?)(?: (?:wee|little|small|cheap|old|dial|other|digital))* "
     r"(celsius|fahrenheit|centigrade)(?: (?:thermometer|probe|one|scale|dial|side))?",
     lambda m: " f" if m[2] == "fahrenheit" else " c"),
    (r"^(?:(?:its|it is|about|still) )*(\d{1,2}(?:\.\d)?(?: ?[cf])?) (?:(?:right|just) )?(?:next to|beside|by"
     r"|alongside) "
     r"(?:it|the (?:ham|meat|bag|bags|belly|bacon|brisket|tub|flat))$", r"\1 in the fridge"),
    (r"^((?:(?:its|it is|at|now) )*\d{2,3}(?: ?[cf])?)(?: now| again| already)?\?{2,}$", r"\1 now"),
    (r"\b(?:the )?ice (?:water|bath|cubes) (?:(?:really|has|is|sure) )*(?:did the trick|did it|works?|worked|working"
     r"|helped|does the job|did the job)\b,? ?(?:and |its |now )*(?=.*\d)", ""),
    (r"^((?:(?:its|it is|at|now) )*\d{3}),? (?:and )?(?:feels )?(?:like|as soft as|soft as"
     r"|soft like) butter\b,? ?(?=\w)",
     r"\1 and probe tender, "),
    (r"(?<![\d.])(\d{3})(?: ?f)? on (?:the |my )?(?:dial|gauge|grate|grill thermometer)\b(?!.*\bgrate\b)",
     r"pit \1"),
    (r"\bsince (?:i|we) (?:got|came|been) (?:home|back|in|up)(?: from \w+)? (?:at |around |about )(?=\d)", "since "),
    (r"(?<=\d) (?=(?:(?:the |my |our )?(?:kids?|somebody|someone|boys?|girls?|son|daughter|wife|husband|i|we|he|she) )"
     r"(?:had |has |mustve |must have )?left (?:the )?(?:fridge )?(?:door|lid) (?:open|ajar)\b)", ", "),
    (r"(?:\bits )?\b(?:only )?(?:just )?(?:creeping|crept|climbing|climbed|inching|crawling|moving|rising|gone"
     r"|dropping|cooling|coming)"
     r"(?: (?:up|down|on|along))?(?: (?:nicely|slowly|steadily|well|fast|only|by|a (?:bit|hair|touch|couple)"
     r"|\d (?:deg\w*"
     r"|f|c)))*,? (?:its |it is |now |at |to )*(?=\d{2,3}(?: ?[cf])?(?: now)?(?:$|,| (?:pit|grate|core|and"
     r"|no wrap|not|bare)\b))", "its "),
    (r"\bprob tender\b", "probe tender"), (r",? (?:and )?(?:no|not|still no) (?:wrap(?:ped)?|foil|paper) yet$", ""),
    (r"(?<!we )\b(?:were|we are) (?=\d{1,2} (?:eating|of us|people|for dinner|for lunch|at the table)\b)"
     r"|\b(?<=and )were (?=(?:eating|having|going|off|away|serving)\b)", "we are "),
    (r"\b((?:missed|forgot|skipped|slept through)(?: (?:the|it|that|last|this|yesterdays?|nights?|mornings?"
     r"|evenings?|one"
     r"|flip|turn|sorry))+),? (?:just |so |but |and |i )*(?=(?:flipped|turned|did) (?:it|them|both"
     r"|the bags?)\b)", r"\1, "),
    (r"\b(?:reading|readin|showing|says|reads) (\d{2,3}(?:\.\d)?(?: ?[cf])?) (?:on|by|with) (?:the |my )?(?:pen"
     r"|instant read|probe|meat probe|stick|thermo\w*|digital)\b(?: now)?", r"core \1"),
)  # fmt: skip
