"""Loose ways of telling a deed, a reading or a wish, each written out as the readers know it; see `plainer`."""

from typing import Final

from bot.intents.cut_weights import TRIM_RULES
from bot.intents.plainer_rules import DAY, DEED, MONTH, WEEKDAY
from core import patterns as re

_VESSEL: Final = r"(?:the|an?|1|my|that) (?:glass|cup|mug|jar|tumbler|bottle) (?:of|with) water"
_WHERE: Final = r"(?: (?:in|next to|beside|by|near|on|behind|with) (?:the |a |my )?\w+)*"
_DEGREES: Final = r"\d{1,2}(?:\.\d)?(?: ?[cf]\b)?"

_NOW_AT: Final = r"(?:(?:now|its|it is|at|back|up|down|to|only|just|reads?) )*"
_FIRE_FAILS: Final = (
    r"(?:the |my )?(?:fire|coals?|charcoal|flames?)s? (?:(?:is|are|its|getting|going|looks?|has|a bit) )*(?:dying|dead"
    r"|weak\w*|low|down|failing|fading|struggl\w+|slack\w*|out|dwindl\w+)(?: down| off)?"
)
_REFUELLED: Final = (
    r"(?:(?:i|we|have|ive|just) )*(?:added|refuel\w*|topped|put|threw)(?: (?:it|some|more|up|on|in|the fire|charcoal"
    r"|coals?|lumps?|briquettes?|fuel|wood|logs?))*"
)
_PAST: Final = {"flip": "flipped", "turn": "turned", "wrap": "wrapped", "rinse": "rinsed", "light": "lit"}
LOOSE_RULES: Final = tuple(
    (re.compile(pattern), written)
    for pattern, written in (
        *TRIM_RULES,
        # what was said, and not what was told
        (r"(?<=\w),? (?:and )?not (?:what|like|as) (?:you|u) (?:said|told me|say|wrote|gave me)$", ""),
        # so much of nobody says what, on meat: of curing salt it would be worst
        (r"^((?:oops|oh no|damn|uh oh|accidentally|by mistake|i|we|just|think|have|ive|,)[ ,]*)+(put|added|used|dosed)"
         r" (\d{1,3}(?:\.\d)? ?(?:g|grams?|tsp|tbsp|teaspoons?|tablespoons?)) (?:on|in|to|for|into)"
         r" (\d{1,2}(?:\.\d{1,2})? ?(?:kgs?|kilos?|lbs?|pounds?))$", r"i \2 \3 of curing salt on \4"),
        # two looks at what cools
        (r"\b(1[2-9]\d|6\d)((?: ?[cf])?) at (\d{1,2}(?:[.:]\d\d)?(?: ?[ap]m)?),? (\d{2}(?: ?[cf])?) by (?=\d)",
         r"\1\2 at \3, \4 at "),
        # a number beside the fire is the pit's
        (rf"^({_FIRE_FAILS})(?:,| and)? {_NOW_AT}(?=\d{{2,3}}\b(?![:.]))", r"\1, pit "),
        (rf"^({_REFUELLED})(?:,| and) {_NOW_AT}(\d{{2,3}})(?: (?:again|now))?$", r"\1, pit \2"),
        # a thermometer in a glass of water shows how cold the fridge is, and no gust of warm air
        (rf"\b({_DEGREES}) (?:in|inside) {_VESSEL}{_WHERE}$", r"\1 in the fridge"),
        (rf"\b(?:thermometer |probe )?(?:in )?{_VESSEL}{_WHERE} (?:is |reads |says |shows "
         rf"|at )*(?={_DEGREES}$)", "fridge "),
        # what was forgotten is made good at once
        (r"^((?:(?:sorry|oops|i|we|totally) )*(?:forgot|missed) [^,;]*?\b(?:flip|turn)\w*),? (?:so |and |but )?"
         r"(?:im |am |i am )?(?:just |only )?doing (?:it|that|so) (?:right |just )?now$", r"\1, flipped it now"),
        # a core at which it shall be done
        (r"\b(?:stop|finish|quit|call it|end)(?: (?:it|cooking|the cook))? at (?=(?:1\d\d|20\d|21[0-2]|[6-9]\d)\b"
         r"(?! ?(?:min|h\b|hours|%|g\b)))", "pull it at "),
        # numbers and units that are written together or apart
        (r"(?<=\d)-(?=(?:kilos?|kg|lbs?|pounds?|grams?|g|inch(?:es)?|mm|cm|oz|ounces?|litres?|liters?)\b)", " "),
        (r"\b(\d{1,2}) and (?:(?:an?|1) )?(quarter|half)\b(?! (?:past|to)\b)",
         lambda m: f"{m[1]}.{'25' if m[2] == 'quarter' else '5'}"),
        (r"\b(\d{1,2}) and 3 quarters?\b", r"\1.75"), (r"\bone and 3 quarters?\b", "1.75"),
        # «sat 1900», «at like six», «party 21st»
        (rf"\b({WEEKDAY}|today|tomorrow|tonight|\d{{1,2}}(?:st|nd|rd|th)),? (?:at )?(?!20[2-9]\d)([01]\d"
         rf"|2[0-3])([0-5]\d)"
         r"(?: ?h(?:rs?|ours)?)?\b(?! ?(?:g|gr|kg|ml|ppm|grams?)\b)", r"\1 at \2:\3"),
        (r"\bat (?:like|around|about|maybe|say|roughly) (?=(?:1[0-2]|[1-9])\b)", "at "),
        (r"\b(party|dinner|lunch|supper|meal|wedding|birthday|bbq|feast|eat|eating|serve|ready|due|need it)s? "
         r"(?=\d{1,2}(?:st|nd|rd|th)\b)", r"\1 on the "),
        (r",? ?\b(?:at )?(?:the )?(?:same|usual) (?:hour|time)(?: as (?:before|planned))?(?: please| pls)?$", ""),
        (r"\b(flip|turn|rinse|reading|check) \d{1,2} (?=(?:is )?(?:done|ok|finished|sorted)\b)", r"\1 "),
        (r"\b(?:did|done) (?:2|both) (?:flips|turns)\b", "flipped both times"),
        (r",? (?:no|without an?) (?:batch|plan)$", ""),
        (r"\bdid (?:the )?(morning|evening) (?:one|flip|turn)(?: late| early)? (?:at|like|about|around) (?=\d)",
         r"flipped this \1 at "),
        (r"(?<!\d )\b((?:duck |turkey |trout |salmon )?(?:breasts|fillets|bellies|sides|loins)) ([2-9])"
         r"(?=,? (?:about |roughly |in all )?\d{1,2}(?:\.\d+)? ?(?:kg|kilo|g|lb|pound|oz))", r"\2 \1"),
        # what went into the fridge, and what it reads
        (r"\b((?:mov(?:ed|ing)|going|gone|went|transferred|switched|put)(?: it)? (?:in|to"
         r"|into) (?:the )?fridge),? (?:now )?"
         r"(?=[3-9]\d\b|1\d\d\b)", r"\1, "),
        # what happened before, and what it reads now
        (r"(?<=[a-z]) (it|probe|core|meat|thermometer)s? (?:now )?(?:reads|says|shows|is back at)"
         r" (?=\d{2,3}(?: ?[cf])?(?: now)?$)", r", \1 reads "),
        # told in the present by who learned the language late
        (r"(?<!did )(?<!do )(?<!can )(?<!should )(?<!must )(?<!shall )(?<!may )(?<!could )(?<!if )(?<!when )"
         r"\b(i|we|he|she|wife|husband|son|daughter) (flip|turn|wrap|rinse|light)( (?:it|them|the \w+|meat|bag))?"
         r"(?= (?:yesterday|already|this morning|last night|just now|before|at \d|\d{1,3} ?min\w* ago|an hour ago))",
         lambda m: f"{m[1]} {_PAST[m[2]]}{m[3] or ''}"),
        # away from day to day
        (rf"\b(away|off|gone|out|holiday|trip)\b([^,;]*?) ({WEEKDAY}) ?(?:-|to|thru) ?({WEEKDAY})\b",
         r"\1\2 \3 until \4"),
        (r"\blids (?=(?:been |was |is )?(?:open|off|up|closed|shut)\b)", "lid has "),
        (r"(?<=\d) (?=(?:the )?lid (?:was|is|has been)\b)", ", "),
        (r",? (?:just )?(?:like|as) (?:you (?:said|told me|wanted)|planned|told|in the plan)[ .!]*$", ""),
        (r"^(?:(?:no|oh|wait|oops|sorry|hang on)[, ]+)+(?=(?:undo|scratch that|take that back)$)", ""),
        (r"^(?:(?:i|im|just) )*(?:doing (?:it|that)(?: right)? now|just did|did just now)$", "did it now"),
        (r"^(?:im |ok )?on it$", "later"),
        (r"\b(?:i |we )?(?:nearly|almost) (?:forgot|missed)(?: (?:it|that|the \w+))?,? (?:but |and )?", ""),
        (r"^(?:it |now |meat )*weighs (\d{1,2}\.\d{1,2}) (?:trimmed|after trimming|trim)$", r"trimmed \1"),
        (r"^my (?:bad|fault|mistake)[,.]? (?=\w)", ""),
        (r"^(?:(?:the )?scales? (?:was|were) (?:off|wrong|broken)[,.;]? )?(?:the )?(?:real|true|actual|right"
         r"|correct) weight"
         r"(?: is| was)? (?=\d)", "weight is "),
        # two days on which the same was done, and a reading of the night beside that of now
        (rf"^((?:did|flipped|turned)(?: (?:it|them))?(?: on)?) ({DAY}) (?:and|&|,) ?({DAY})\b", r"\1 \2, \1 \3"),
        (r"^(?:(?:it|fridge) )?was (\d{1,2}(?:\.\d)?(?: ?[cf])?) (?:overnight|all night|last night),? (?:and |but "
         r"|its |now )*"
         r"(?:back (?:to|at|down to)|now|down to|again)? ?(?=\d)", r"\1 last night, now "),
        (r"(?<=[a-z]) ?\+ ?(?=\d)", ", "),
        (r"\b(dinner|supper|lunch|brunch|breakfast) (?:now|then|instead),? not (?:dinner|lunch|supper|breakfast"
         r"|brunch),? (?:at )?"
         r"(?=\d)", r"\1 at "),
        (r"^(?:the )?last (flip|turn|rinse) was (?:at )?(?=\d{1,2}[^,;]*\bnot \d)",
         lambda m: f"{_PAST.get(m[1], m[1])} at "),
        (r"^(?:(?:the )?probes? (?:were|was|are|got) (?:mixed up|swapped|the wrong way (?:round|around)|switched"
         r"|crossed)"
         r"(?: up| over)?),? (?:so |and |its )*(?=.*\d)", ""),
        (r"\b((?:more|added|fresh|new) ice(?: (?:in|added|on))?),? (?=(?:its|core|meat|now|at) ?\d)", r"\1, "),
        (r"^(?:(?:i|we|sorry|oops) )*(?:skipped|missed|forgot) (?:the |my )?(?:(morning)|evening) (?:one|flip|turn)$",
         lambda m: f"missed the flip {'this morning' if m[1] else 'last night'}"),
        (r"\b(?:fridge|refrigerate) (it|them)\b", r"put \1 in the fridge"),
        (r"^(?:(?:some|a bit|put|threw|bit) )*more (wood|coals?|charcoal|lump|splits?|fuel|logs|chunks"
         r"|pellets) on(?: now)?$", r"added \1"),
        (r"\b(?:40|80|4|26)(?: ?[fc])? (check|reading)$", r"\1"),
        (r"^(?:ok )?(?:brb|be right back)(?: in)? (\d{1,3})$", r"in \1 min"),
        (rf"^(?:there will be |therell be |sorry )?(?:no (?:flips?|flipping|turns)|(?:nobody|no one)(?: here"
         rf"| home)? (?:to|can)"
         rf" (?:flip|turn)(?: it)?|cant (?:flip|turn)(?: it)?) (?=(?:this |the |all )?weekend$|(?:on )?(?:{WEEKDAY}"
         rf"|tomorrow)$)",
         "im away "),
        (r"\bout the ice\b|\bout of ice(?=,? (?:and |now )*(?:in|into|to) (?:the )?fridge\b)", "out of the ice"),
        (r"\b(sliced|carved)( it| them)? (?:and )?(?:its )?(?=(?:all |nice(?:ly)? (?:and )?)?pink\b)", r"\1\2, "),
        (r"\bno dst\b(?: here)?", ""),
        # a cured piece that is frozen, and the question that its plan answers
        (r"^(?=.*\b(?:pastrami|corned beef|bacon|ham)\b)(?=.*\d ?(?:kg|kilo|lb|pound))(.*?),? (?:so )?(?:when"
         r"|what day|how early)"
         r" (?:does it |do i |should i |must it |to |it )*(?:come |take (?:it )?"
         r"|get (?:it )?)?out of the freezer[ ?]*$", r"\1"),
        (r"^((?:pink|curing)(?: salt)?|cure) (\d{1,3}(?:\.\d)?) ?(g|grams?)$", r"\2 \3 \1"),
        (r"(?<=\d) (?=(?:meat )?(?:on|off) at \d)", ", "),
        (r"^c ?(\d{2,3}(?:\.\d)?) ?[,/]? ?p ?(\d{2,3})$", r"core \1 pit \2"),
        (r"^p ?(\d{2,3}) ?[,/]? ?c ?(\d{2,3}(?:\.\d)?)$", r"pit \1 core \2"),
        (r" for (?:about |like )?(?:\d{1,3}|an?|half an?) ?(?:m?mins?|minutes?|h|hrs?|hours?),? (?:and "
         r"|but )?(?=now \d)", " "),
        (r"^\+ ?(\d{1,2}) ?(days?|d|hours?|hrs?|h)$", r"\1 \2"),
        (r"^(?:nope|no|sorry|oops|i|we)[, ]+(?:(?:i|we) )?(?:fell asleep|overslept|dozed off|was asleep)$",
         "forgot it"),
        (r"^(?:the )?(brine|pickle|liquid|juice) (?:got )?spil(?:led|t),? ?(?:about |some |like )?",
         r"the bag leaked \1 "),
        (r"^(?:i |we )?spil(?:led|t) (?:about |some of |some )?(.{0,20}?)(?: of)? ?(?:the )?(brine|pickle|liquid)"
         r"(?: (?:while|when|as|on|all over|onto|in the|pouring|filling)\b.{0,30})?$",
         r"the bag leaked \1 \2"),
        (r"\bweighs? (?=[3-9]\d\d$|[1-9]\d{3}$)", "weighs_g "), (r"\bweighs_g (\d+)$", r"weighs \1 g"),
        (rf"^(?:(?:i|we|sorry|oops|oh)[, ]+)*(?:totally |just )?forgot to (?:tell|say|mention|log)(?: you"
         rf"| it)?(?: that)?,? "
         rf"(?={DEED}\b)", ""),
        (r"\b(wrapped|foiled|flipped|rinsed|lit|off|on)(?: it)? (\d{1,2}[.:][0-5]\d),? (?:in "
         r"|with )?(?=(?:butcher )?(?:paper|foil))",
         r"\1 at \2 in "),
        (rf"\b(eat|eating|dinner|serve|serving|supper|lunch) ((?:1[0-2]|[1-9])(?:[:.][0-5]\d)?(?: ?[ap]m)?) "
         rf"(?=(?:on )?(?:{DAY}))", r"\1 at \2 "),
        (r"\bout (?:of )?(?:the )?(?:ice ?)?bath\b", "out of the ice"),
        (r"^(?:guests?|people|they|everyone)(?: are| is)? early,? (?:(?:so|need|want|it|make|eating|eat"
         r"|now) )*(?:at |by )?(?=\d)",
         "guests at "),
        (r"^(flip|turn|rinse|wrap) ?[/|] ?(?=\d{1,2}[.:]\d\d)", lambda m: f"{_PAST[m[1]]} at "),
        (r"^(flip|turn) (?:ok|good|fine),? (?:and )?(?=fridge\b)", r"\1 done, "),
        (r"^(?:the )?pit (?:will|shall|should) be (?=\d{3})", "run the pit at "),
        (r"^(?:im |we are |gonna |ill |going to )*(?:taking|take|cooking|cook) it (?:up )?to (?=(?:1[5-9]\d|20\d"
         r"|21[0-2])\b)",
         "pull it at "),
        (r"(?:^|(?<=\d)|(?<= ))(core|meat|pit|fridge|brine)(\d{1,3})(?=$|[^\w.]|core|meat|pit)", r" \1 \2 "),
        (r"(?<=[a-z]),? off (?:it|she|he) comes$", ", off"),
        (r"^(?:(?:its|it is|has) )?been (?:\d{1,2}|an?|a few) ?(?:h|hrs?|hours?|min\w*) since (?:the "
         r"|my )?last (?:reading|check|one)"
         r"(?: sorry)?,? ", ""),
        (r"\b(?:fell|dropped|went|sank|slipped|climbed|rose|jumped"
         r"|moved) (\d{2,3}(?: ?[cf])?) to (?=\d{2,3}\b)", "now "),
        (r"(?<=\d) (?=opened (?:the )?lid\b)", ", "),
        (r"^(?:my |the |your )?clock is [^,;]{0,20}\b(?:off|wrong|behind|ahead|slow|fast)$", "wrong clock"),
        (r"^weigh (?=\d{1,2}\.\d)", "weighs "),
        (r"\bturned (?:the |my )?fridge (?:down|up|colder|warmer|off|on),? (?:and |so |now |but )*(?:its|it is|it)"
         r"(?: now| at| reads| says)* (?=\d{2})", "fridge "),
        (r"\bturned (?:the |my )?fridge (?:down|up|colder)(?: to (?=\d))?", "set the fridge to "),
        # how it is, behind a number
        (r"(?<=\d)( ?[cf])?,? (?:and |its |thats )?(?:(?:all|so far so|looking|feeling) )?(?:good|great|perfect"
         r"|spot on|nice"
         r"|lovely|happy days|as it should be)[ .!]*$", r"\1"),
        (r"\bthis am\b", "this morning"), (r"\b(?:did|done) (?:mine|ours|hers|his|theirs)\b", "did it"),
        (r"^(?:nah|nope|no|oh|ok|hm+|actually)[, ]+(?=(?:forget it|never ?mind|undo|scratch that)$)", ""),
        (r"^(raining|snowing|pouring|hailing)( down| hard| a bit| here| now)*$", r"its \1"),
        # of the places or pieces that were read, the one that counts
        (r"\b(?:the )?(?:lowest|coldest|slowest|thickest|deepest) (?:one|piece|thigh|leg|breast|chop|of (?:them"
         r"|the (?:two|three|lot|bunch)))(?: (?:is|says|reads|shows|at|now|only))* (?=\d{2,3}\b)", "core "),
        (r"^(?:(?:sorry|oops|my|a|wrong|it was) )*typo,? (?:the )?(?=\d{2,3} (?:was|is)(?: \w+)? \d{2,3}$)(\d+)"
         r" (?:was|is)(?: really| actually)? ", r"the \1 should be "),
        (r"^(?:the )?(?:butcher|shop|store|market)s? (?:gave me|sold me|says|said|weighed)(?: it)?(?: as| at)? "
         r"(?=[\d.]+ ?(?:lb|kg|pounds?|kilos?)\b)", "it weighs "),
        (r"^(?:(?:i|sorry|oops|wait) )*meant (?:at )?(\d{1,2}(?:[.:][0-5]\d)? ?[ap]m),? not (?:\d{1,2} ?)?[ap]m$",
         r"it was at \1"),
        # a weight in short
        (r"(?<![\w.])(\d{1,2}(?:\.\d{1,3})?) ?k\b(?! ?(?:m\b|run|people|cal|ppm))(?=.*\b(?:smoked?|cured?|bacon"
         r"|pastrami|ham|crown|bird"
         r"|turkey|chicken|for)\b)", r"\1 kg"),
        # each of the days that were missed
        (rf"^((?:(?:i|we|sorry|oops) )*(?:missed|forgot)(?: the)?) ({DAY}) (?:and|&) (?=(?:{DAY})$)", r"\1 \2, \1 "),
        # «20.3. 12h», «sat 13h»: an hour behind its day
        (rf"((?<![\d.])\d{{1,2}}\.\d{{1,2}}\.|\b{WEEKDAY},?|\b\d{{1,2}}\.? {MONTH}[a-z]*,?) (1\d|2[0-3]|[7-9]) ?h\b",
         r"\1 at \2:00"),
        (r"^(?:nope|no|nah),? (?=not (?:flipping|turning)\b)", ""),
        (r"(\bnot (?:flipping|turning)(?: \w+){0,2} (?:tonight|today)),? (?:im|i am|we are|were) "
         r"(?:out|away|busy|at work|not home|tired|in bed)$", r"\1"),
        (r"\b((?:added|threw on|put on|topped up)(?: \w+){0,3} (?:coals?|charcoal|wood|splits?|lump|fuel|pellets)),? "
         r"(?:and )?(?:the )?(?=pit\b)", r"\1, "),
        (r"\bpit (?:is |now )*(?:climbing|rising|coming up|going up)(?: to| at| now| past)? (?=\d{3}\b)", "pit "),
        (r"\b(\d{1,2}|an?|two|three|four|five|six) (weeks?|days?) from (?:now|today)\b", r"in \1 \2"),
        (r"\boff (?:of )?(?:the )?(?:fire|heat|grill|smoker|pit|cooker) (?:at |was |is )?(?=1\d\d\b|20\d\b)",
         "off at "),
        (r"\bexternal (?=\d)(?=.*\binternal\b)|(?<=\d )external (?=\d)", "pit "),
        # two readings a while apart
        (r"\b(\d{2,3})(?: ?[cf])?,? (?:then|and then|and|now) (\d{2,3}(?: ?[cf])?),? "
         r"((?:\d{1,2}|ten|twenty|half an|an?) ?(?:m|mins?|minutes?|h|hrs?|hours?)) later$", r"\1 \3 ago, \2 now"),
        (r"^(?:(?:i|we|ive|just|ok) )*(?:moved|put|got|shifted) (?:it|them|the (?:bags?|meat|tub)) (?:in|into|to) "
         r"(?:the |my |our |another )?(?:\w+ )?fridge,? (?:and |which |that )?"
         r"(?=(?:reads|says|is at|its at|at) (?!(?:1[0-2]|[1-9])\b(?! ?[cf]\b))\d)",
         "fridge "),
        (r"^(?:(?:im|i am|ok|right|well|just|were|we are) )*(?:(?:going|off|heading) to )?(?:bed(?:time)?"
         r"|sleep)(?: now)?,? "
         r"(?:and |but |so )?(?=(?:ill|i will|will|gonna) )", ""),
        # no cure went in
        (r"\b(?:table|kosher|sea|rock|plain|regular|normal|cooking)(?: salt)? (?:instead of|in place of|rather than)"
         r" (?:the )?(?:curing salt|cure|pink(?: salt)?)\b", "table salt as cure"),
        # «guests late, 2 not 1»: the hour of the meal
        (r"\b(guests?|people|they|everyone|everybody|family|friends|company|visitors)(?: are| is|re)?"
         r"(?: running| coming)? (?:late|later|early|earlier|delayed|behind),? (?:so )?(?:at )?"
         r"(?=\d{1,2}(?::\d\d)? ?(?:[ap]m)?,? (?:now )?(?:not|instead of) \d)", r"\1 coming at "),
        # «my bbq is a gas one»
        (r"\b(?:cooker|grill|smoker|bbq|barbecue|pit)s? (?:is )?an? (gas|electric|kettle|offset|ceramic|drum|steel)"
         r"(?: one| grill| smoker| bbq)?$", r"\1 cooker"),
        # and is away
        # rooms and boxes that are kept as cold as a fridge
        (r"\b(?:walk|reach)[- ]?in(?: (?:cooler|fridge|refrigerator|chiller|box|cold ?room))?\b"
         r"|\bcold ?room\b", "fridge"),
        # done just now, and what was not done before
        (r"\b((?:flipped|turned|done|did)(?: it| them| the bag)?),? (?:lol |haha |but |and )*(?=(?:i )?(?:forgot"
         r"|missed)\b)",
         r"\1, "),
        (r"(?<=[a-z]) (?:lol|haha+|lmao|hehe)(?= [a-z])", ","),
        (r"(?<=\w),? (?:but )?(?:i |we )?(?:cant|can not|cannot|wont) (flip|turn|rinse|wrap|do)(?: it"
         r"| them)? (?:un)?til+ (?:like |about )?"
         r"(?=\d)|^(?:i |we )?(?:cant|can not|cannot|wont) (?P<w>flip|turn|rinse|wrap|do)(?: it| them)? (?:un)?til+ "
         r"(?:like |about )?(?=\d)", lambda m: f"remind me to {m[1] or m['w']} at "),
        (r"^(?:(?:i|we|im|ill|be|we are|were|will|going|go|leaving|off|heading) )+(?:on|for) (?:an? |my |our )?"
         r"(?:holidays?|vacation|trip)\b(?! (?:mode|time))", "im away"),
    )
)  # fmt: skip
