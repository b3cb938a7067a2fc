"""When somebody is called, is away or hands over, what the bot is asked, and how it is set."""

from typing import Final

from bot.intents.days import WEEKDAYS
from bot.intents.rewriting.words import CLOCK, DAY, SPAN, WEEKDAY, rules
from core import patterns as re


def _day_off(found: re.Match[str]) -> str:
    """«take sunday off» is away from that day to the next."""
    day = WEEKDAYS[found[1]]
    return f"away {found[1]} until {next(name for name, n in WEEKDAYS.items() if n == (day + 1) % 7)}"


LANDS: Final = {  # «canadian here», «im austrian»: by whose law it is weighed
    "canadian": "canada", "canada": "canada", "american": "usa", "yank": "usa", "us": "usa", "usa": "usa",
    "british": "uk", "brit": "uk", "uk": "uk", "english": "england", "scottish": "scotland", "irish": "ireland",
    "australian": "australia", "aussie": "australia", "kiwi": "new zealand", "german": "germany",
    "austrian": "austria", "swiss": "switzerland", "french": "france", "dutch": "netherlands", "danish": "denmark",
    "swedish": "sweden", "polish": "poland", "italian": "italy", "spanish": "spain",
}  # fmt: skip


def _with_colon(hour: str) -> str:
    """«630» as a clock shows it."""
    return f"{hour[0]}:{hour[1:]}" if hour.isdigit() and len(hour) > len("12") else hour


RULES: Final = rules(
    # «gimme a half hr», «no pings between 11 n 630», «wont get it lit till 8 tomorrow»
    (r"^(?:[a-z ]{0,24},? )?(?:gimme|give me) (?:a |an )?half(?: an?)? ?(?:hr|hour|h)(?: (?:more|pls|please))?$",
     "gimme half hour"),
    (r"^(?:please )?(?:no|dont send) (?:pings|calls|messages|texts|reminders) between (\d{1,2}(?:[:.]\d\d)?|\d{3})"
     r" (?:and|n|&|to) (\d{1,2}(?:[:.]\d\d)?|\d{3})$",
     lambda m: f"no pings after {_with_colon(m[1])} till {_with_colon(m[2])}"),
    (r"^(?:(?:we|i|sorry|prob(?:ably)?) )*(?:wont|cant) (?:get (?:it|the (?:fire|smoker|pit)) lit"
     r"|light (?:it|up|the fire)|fire it up) (?:till?|until|before) (?=\d|noon|half|tomorrow)", "light the fire at "),
    # «shush about the bacon but keep telling me bout the brisket»
    (r"^(?:shush|hush|shut up|be quiet|quiet|mute)(?: (?:about|on|for))? (?:the |my )?([a-z]+(?: \d)?),?"
     r" (?:but|and) (?:keep|not|leave|only)\b[^\d?]*$", r"pause \1"),
    # «undo didnt do it yet»
    (r"^undo(?: (?:that|it|this))?,? (?:i |we )?(?:didnt|havent|did not|have not|never)\b[^\d?]*$", "undo"),
    # «cant right now 45 min»
    (rf"^(?:(?:i|we|sorry|nope|no) )*(?:cant|cannot|busy|not)(?: do (?:it|that))?(?: (?:right now|now|just now|atm"
     rf"|at the moment"
     rf"|yet))+,? (?:give me |in |maybe |about |like )*({SPAN})$", r"in \1"),
    # what was called for, and when it suits
    (r"^(?:ok |yes |ill do it |not now )*(?:when|once|as soon as) (?:im|i am|i get|were|we get|well be"
     r"|ill be) (?:back |home |in |there )+(?:at|around|by) (?=\d)", "remind me at "),
    (r"^(?:ok |yes |ill do it |not now )*(?:right |just )?(?P<w>after|before) (?P<m>dinner|lunch|supper|breakfast)$",
     r"remind me \g<w> \g<m>"),
    (r"^(?:please )?(?:call|ping|buzz|nudge|text|tell|remind) me (?:again )?(?:with|over|round|around"
     r"|at) (?:my )?(?P<m>breakfast|lunch|dinner|supper)(?: then| please)?$", r"remind me at \g<m>"),
    (r"^((?:(?:ill|please|just|gonna|going to|will|only|ok|can you) )*(?:remind|ping|ask|call|tell|text|buzz|wake|do"
     r"|flip|turn)\b[^\d]*) in the (morning|evening|afternoon)$", r"\1 this \2"),
    (r"\bwhat the (dose|recipe|plan|time|strength) (?:is|was)(?: again)?\b", r"whats the \1"),
    (r"\b(celsius|c|fahrenheit|f) not (?:f|fahrenheit|c|celsius)$",
     lambda m: "in celsius" if m[1][0] == "c" else "in fahrenheit"),
    (r"^(?:ok )?(?:brb|be right back)(?: in)? (\d{1,3})$", r"in \1 min"),
    (rf"^(?:there will be |therell be |sorry )?(?:no (?:flips?|flipping|turns)|(?:nobody|no one)(?: here| home)? (?:to"
     rf"|can) (?:flip|turn)(?: it)?|cant (?:flip|turn)(?: it)?) (?=(?:this |the |all )?weekend$|(?:on )?(?:{WEEKDAY}"
     rf"|tomorrow)$)", "im away "),
    (r"^skip (?:the )?next (?=(?:reading|check|flip|turn)\b)", "skip the "),
    (r"(?:^(?:it|that|this|they)|(?<=\w)) (?:can|has to|will have to|must) wait(?: a bit| till later)?$", " later"),
    # away from day to day, or till one, and who does it meanwhile
    (rf"^(?:(?:im|i am|we are|were|ok|so) )*(?:heading|headed|driving|going)(?: (?:off|away|up|down|over|out))?(?: to"
     rf"| on)? (?=(?!to\b|back\b|bed\b|it\b|the\b)[a-z]+(?: [a-z]+)? (?:un)?till? (?:{WEEKDAY}|tomorrow|next)\b)",
     "off to "),
    (rf"\b((?:un)?till? (?:(?:{WEEKDAY}|tomorrow|next week)(?: (?:noon|morning|evening|night|{CLOCK}))?|{CLOCK}"
     rf"|tonight)) "
     r"(?=(?:my |our |the )?(?!(?:it|that|fridge|meat)\b)[a-z]+ (?:(?:does|minds|takes|has|flips|turns|watches)"
     r" (?:it|over|them|the)\b|(?:is|will be) (?:doing|flipping|turning|minding|watching)\b))", r"\1, "),
    (rf"\b(away|off|gone|out|holiday|trip)\b([^,;]*?) ({WEEKDAY}) ?(?:-|to|thru) ?({WEEKDAY})\b", r"\1\2 \3 until \4"),
    (r"^(?:im |ok )?on it$", "later"),
    (r"^(?:my |the |your )?clock is [^,;]{0,20}\b(?:off|wrong|behind|ahead|slow|fast)$", "wrong clock"),
    (r"(?<=\w),? (?:but )?(?:i |we )?(?:cant|can not|cannot|wont) (flip|turn|rinse|wrap|do)(?: it"
     r"| them)? (?:un)?til+ (?:like |about )?(?=\d)|^(?:i |we )?(?:cant|can not|cannot|wont) (?P<w>flip|turn|rinse"
     r"|wrap|do)(?: it| them)? (?:un)?til+ (?:like |about )?(?=\d)", lambda m: f"remind me to {m[1] or m['w']} at "),
    (r"^(?:(?:i|we|im|ill|be|we are|were|will|going|go|leaving|off|heading) )+(?:on|for) (?:an? |my "
     r"|our )?(?:holidays?|vacation|trip)\b(?! (?:mode|time))", "im away"),
    (r"^(?:flip|turn) (?:reminder|ping|call) at (\d[\d:.]*(?: ?[ap]m)?)(?: (?:please|pls))?$", r"remind me at \1"),
    (r"^did (?:you|it) say \d+(?:\.\d)? or \d+(?:\.\d)?(?: ?g(?:rams)?)?[ ?]*$", "whats the dose"),
    (r"^(?:i |we )?(?:take|taking|want|have|got) ((?:mon|tues|wednes|thurs|fri|satur|sun)day) off$", _day_off),
    (r"^(?:i |we )?dont need (?:the |that |a )?(morning|evening) (?:ping|flip|reminder|call|one)(?: tomorrow| today"
     r"| tonight)?$", r"skip the \1 one"),
    # «neighbour will turn it tues and weds»: from the one day to the other
    (rf"(\b(?:turn|flip|turns|flips|do(?:es)? the flips|mind|watch)(?: (?:it|them|the \w+))?(?: on)? {WEEKDAY}s?) "
     rf"(?:and|n|&) (?=(?:{WEEKDAY})s?$)", r"\1 "),
    (r"^(?:(?:im|we are|ill|i|we) )*leav(?:ing|e) (?:it|that|this) (?:until|till?) (?:the |tomorrow )?(morning"
     r"|tomorrow|tonight)$", r"ill do it \1"),
    (r"((?:^|\b(?:going|gone|off|out|popping|running|nipping|heading|brb|ill be|be) (?:[a-z]+ ){0,4})back in [1-9]\d)$",
     r"\1 min"),
    (r"^(?:so )?how long for (?=(?:the |my )(?:brisket|flat|point|meat|bacon|ham|belly|turkey|chicken|duck|salmon"
     r"|trout)$)", "how much longer for "),
    (r"^(?:please |pls )?(?:turn|switch) (?:the |my |all )?(reminders|pings|messages|texts|notifications) off\b",
     r"turn off \1"),
    (r"^((?:it |we |i |its |ok |will |still |gonna )*(?:needs?|takes?|gimme|give (?:me|it)|wait)) another (hour|hr"
     r"|minute|min)\b", r"\1 another 1 \2"),
    (r"^i said (?:[a-z]+day|mon|tue|wed|thu|fri|sat|sun),? (?:but )?i meant ", "i meant "),
    (r"^(?:(?:no|sorry|oops|wait|the|that) )*(?:it|reading|one) was ((?:1?\d|2[0-3])\.[0-5]\d)(?: actually| sorry"
     r"| really)?$", r"that was at \1"),
    (r"^(?:is )?(?:there )?anything (?:going|on|under ?way|running|happening|cooking|curing)(?: on| now"
     r"| right now)*\?*$", "what now"),
    (r"^reminders? off (?=(?:after|before|from|at night)\b)", "no reminders "),
    (r"^(?:so )?whats my (?:quiet (?:time|hours)|settings|units|time ?zone|clock)\W*$", "settings"),
    (r"^was it \d+(?:\.\d)? or \d+(?:\.\d)? ?(?:g|grams?)?(?: (?:of )?(?:cure|salt|pink))?(?: (?:that )?you (?:said"
     r"|told me))?\W*$", "how much cure did i put in"),
    (r"^(?:please )?send (?:me )?(?:less|fewer) (?:texts|messages|pings|reminders)$|^too many (?:texts|messages|pings"
     r"|reminders)$|^(?:stop|quit) (?:pinging|texting|messaging|bugging|reminding) (?:me )?(?:every|so much"
     r"|so often)\b.*$", "dont ping me"),
    (r"^(?:please )?cancel (?:the |tonights |this evenings |todays )?(flip|turn)(?: tonight| today| this (?:evening"
     r"|morning))?$", r"skip the \1"),
    (r"^(?!im |i |we |its |it |quiet |away |out |off |be )([a-z]{2,12}) (?:is|s) on (?:(?:un)?til+"
     r"|to) \d[^,;]*(?:,? (?:and )?then me)?$", r"\1 has the fire"),
    (r"^[^,;]*\bat (\d{1,2}(?::\d\d)?(?: ?[ap]m)?),? (?:and |so )?([^,;]*\b(?:takes? over|minds|watches"
     r"|has the)\b[^,;]*?) then$", r"\2 at \1"),
    (r"^(?:please )?(?:forget|delete|erase) (?:everything|all)(?: that)? (?:i|we) (?:ever )?(?:told|said|gave"
     r"|wrote)(?: to)?(?: you)?$", "forget me"),
    (r"^(?:so )?what (?:do )?(?:you|u) need(?: to know)? from me(?: to (?:start|begin|plan))?\W*$", "help"),
    (rf"^(?:(?:we|i|im|we are) )*(?:fly|flying|leave|leaving|travel|travelling|go|going)(?: off| out"
     rf"| away)? (?:on )?({DAY}),? (?:and )?(?:back|return|home)(?: again)?(?: on)?(?: the)? ({DAY})(?: after)?$",
     r"away from \1 until \2"),
    # where somebody is
    (rf"^(?:(?:hi|hey|hello|hallo)[, ]+)*(?:(?:im|i am|we are) (?:an? )?(?P<am>{'|'.join(LANDS)})|(?P<who>"
     rf"{'|'.join(LANDS)}) here)(?:[,.;] ?|$)", lambda m: f"im in {LANDS[m['am'] or m['who']]}. "),
    (r"\b(im|i am|we are|were) (?:(?:over|currently|now|living|based|staying)(?: here)? )+(?=in (?!the |an? "
     r"|my )[a-z]{4})", r"\1 "),
    (r"^(?:at )?(?:what time|when) (?:do|would) you (?:expect|think|reckon|guess|see) (?:the meat|it|this|that"
     r"|the \w+)(?: to be| will be| is| being| gets)? (done|ready|finished)\b", r"when is it \1"),
    # who is not there
    (rf"^back (?:on )?({WEEKDAY}|tomorrow)$", r"ill be back on \1"),
    (r"^(?:dont|do not|stop) (?:bug|text|messag|ping|call|bother|remind|disturb)(?:e"
     r"|ing)? me(?: any ?more)?(?: for)?(?: the rest of)? (?:today|the day)$", "pause until tomorrow"),
    (rf"^(?:(?:ill|im|lets|well|can we|we|i) )*(?:start|begin)(?:n?ing)?(?: it| this| the brine)?(?: on)? (tomorrow"
     rf"|tonight|later|{WEEKDAY})(?: (?:morning|evening))? instead(?: of (?:now|today|tonight|tomorrow))?$",
     r"ill start \1"),
    (rf"^(?:(?:i|we) )?(?:cant|cannot|wont|not) (?:start|begin)(?:n?ing)?(?: it| this| the brine)? (?:till?|until"
     rf"|before) (tomorrow|tonight|{WEEKDAY})$", r"ill start \1"),
    # who does the flip of a part of the day, and at which hours
    (r"\b(doing|does|do|takes|taking|has|handles|handling) (?:the )?(?:(?P<day>tonight|tomorrow|this evening)s?"
     r"|(?P<half>morning|evening)) (?:flip|turn|one)$",
     lambda m: f"{m[1]} the flip {m['day'] or ('tonight' if m['half'] == 'evening' else 'tomorrow morning')}"),
    (r"\b(flips? )(?=\d{1,2}(?:[:.]\d\d)? ?[ap]m (?:and|&) \d)", r"\1at "),
    (r"^let (?:my )?([a-z]{2,12}) (?:do|handle|have) it(?= (?:to\w+|till?|until)|$)", r"\1 has it"),
    (r"^([a-z]{2,12})(?: is|s)? on (?:the )?(?:(fire|pit|smoker|grill)|flip(?:ping|s)?)(?: duty| watch)",
     lambda m: f"{m[1]} has the {'fire' if m[2] else 'flips'}"),
    # how long it takes, and when it is looked at again
    (r"^(?:(?:(?:its|it is|this is|this|is|been|so|really|way|man|just) )*(?:taking (?:ages|forever|so long|an age"
     r"|all day)|(?:so|really|awfully|very|super) slow)|(?:what )?time\?)$", "how much longer"),
    (r"^(?:check|look|ping|ask|text|call|nudge)(?: (?:back|again|me|on it|it|in))* in (?=an? |\d|half)",
     "remind me in "),
    (r"^(?:(?:im|i am|we are|were|ill be|going) )*out (?=(?:tonight|this evening|all day|all evening)$)", "away "),
    (r"^when\?*$", "what is next"),
    # a plan for the flip, the hour at which it is looked at, everything held
    (r"^(tonights|this evenings|this mornings|tomorrows) (flip|turn) is (?:off|cancell?ed)$", r"skip \1 \2"),
    (r"^(?:check|look at|do|read) (?:it|the (?:brine|bag|fridge)|on it)(?: again)? (?:in the|this|tomorrow) morning$",
     "remind me this morning"),
    (r"^(?:hold|freeze|stop|park) (?:everything|it all|all of it) (?=(?:un)?til|for)", "pause "),
    (r"^(?:please )?(?:set|change|switch) (?:my |the )?(?:time|clock|time ?zone) to (eastern|central|mountain"
     r"|pacific)(?: time)?$", r"\1 time"),
    (r"^(?:use |in )?(grams?|g|oz|ounces?),? not (?:grams?|g|oz|ounces?)$",
     lambda m: "use kg" if m[1][0] == "g" else "use lb"),
    (r"^(?:so )?when(?:s| is| are) (?:each|they|both|each one|each of them|every one)(?: of them)? (?=(?:ready"
     r"|done)\b)", "when is it "),
    # put off till the morning, in short
    (r"(?:^|(?<=[,;] ))(?:(?:so|and|but|then|just|lets|we|i|instead) )*(?:do|flip|turn)(?: (?:it|that|them"
     r"|the bag))? (?:in the|this|tomorrow|early in the|first thing in the) morning$", "ill flip it this morning"),
)  # fmt: skip
