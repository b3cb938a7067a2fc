"""Hours and days, as they stand beside a deed or a meal."""

from typing import Final

from bot.intents.days import MONTH
from bot.intents.rewriting.words import CLOCK, DAY, MEAL, SPAN, UNIT_NEXT, WEEKDAY, rules

_HOUR: Final = r"(?:(?:1[0-2]|[1-9])(?:[.:][0-5]\d)?|(?:1[3-9]|2[0-3])[.:][0-5]\d)"
_ABOUT_AT: Final = r"(?:(?:at|@|around|about|by|just after|just before|after|before|roughly|circa|ca) ?)*"
# of the fire and after it, where no thermometer reads so little: a small number beside them is an hour
_FIRE_DEED: Final = (
    r"(?:(?<!cut )(?<!split )(?<!sliced )(?:meat|it|its|they) (?:is |went )?in|put it in|bagged it"
    r"|lit(?: it)?|fire(?: is)? lit|(?:meat|brisket|it|its|flat) (?:is |went |has gone )?on|rub(?:bed)?(?: on)?"
    r"|(?:went|got it) (?:on|in)|foil on|wrapped(?: it)?|on the (?:smoker|grill|pit)|put it on|took it off"
    r"|pulled it|its off|sliced(?: it)?|started the chill)"
)
_ANY_DEED: Final = (
    rf"(?:{_FIRE_DEED}|(?:flipped|turned)(?: it| them| the bags?)?|done|did it|flip done|bag turned|rinsed)"
)

RULES: Final = rules(
    # the days about a feast
    (r"\b(?:the )?(?:day|night|evening) before (?=thanksgiving|christmas|xmas|new years)(thanksgiving|christmas|xmas"
     r"|new years)(?: day)?\b",
     r"\1 eve"),
    (r"\b(?:the )?(?:day|friday) after (?:thanksgiving|turkey day)\b", "black friday"),
    (r"\b(?:the )?day after (?:christmas|xmas)(?: day)?\b", "boxing day"),
    (rf"({DAY}|\d(?:st|nd|rd|th)?|\b{MONTH}\w*),? (?:like|say|maybe) (?:at |around |about )?(?={CLOCK}(?:ish)?$)",
     r"\1 at "),
    # shorthand
    (r"\b(yesterday|this|tomorrow|last|that|(?:mon|tues?|wednes|thurs|fri|satur|sun)day|mon|tues?|wed|thu(?:rs?)?|fri"
     r"|sat|sun) eve\b", r"\1 evening"),
    (r"\b(on|off|in|out|bagged|lit|flipped|turned|done|wrapped|rinsed) (?=(?:1[0-2]|[1-9])\.[0-5]\d(?: ?[ap]m)?$)",
     r"\1 at "),
    # «an hour and 10», «110 now been 1 hour 10»: minutes, and no degrees
    (r"\b(an?|one|two|three|\d{1,2}) (hours?|hrs?|h) and (?:about |like )?([1-5]?\d)\b(?! ?(?:min|m\b"
     r"|hours?|h\b|[cf]\b|deg|°|/|lb|kg|g\b|percent|%))",
     r"\1 \2 \3 min"),
    (r"(?<=\d)(\D{1,24}\b(?:an?|one|two|three|\d{1,2}) (?:hours?|hrs?) (?:[1-5][05]|5))$", r"\1 min"),
    # 0740, «lit it, 8ish», «at 7 meat on», «7.40 flipped»: hours beside a deed
    (r"(?<![\d.,/:])\b0(\d)([0-5]\d)\b(?![.,%]| ?(?:g|kg|ml|f|percent)\b)", r"\1:\2"),
    (rf"\b({_FIRE_DEED}),? {_ABOUT_AT}(?P<h>{_HOUR})(?:-\d{{1,2}})?(?:ish)?$", r"\1 at \g<h>"),
    (rf"\b({_ANY_DEED}),? {_ABOUT_AT}(?P<h>\d{{1,2}}[.:][0-5]\d)(?:ish)?$", r"\1 at \g<h>"),
    (rf"\b(?!done by )({_ANY_DEED}) (?:just after|just before|after|before|by|about|around) (?P<h>{_HOUR})$",
     r"\1 at \g<h>"),
    (rf"^{_ABOUT_AT}(?P<h>{_HOUR})(?:ish)?,? (?P<d>{_FIRE_DEED})$", r"\g<d> at \g<h>"),
    (rf"^{_ABOUT_AT}(?P<h>\d{{1,2}}[.:][0-5]\d)(?: ?[ap]m)?,? (?P<d>{_ANY_DEED})$", r"\g<d> at \g<h>"),
    # a date is one with its weekday: «tuesday, 4 october»
    (rf"\b({WEEKDAY}), (?=\d{{1,2}}(?:st|nd|rd|th|\.)? ?(?:of )?{MONTH}|{MONTH}[a-z]*\.? \d|the \d{{1,2}}(?:st|nd|rd"
     rf"|th)|\d{{1,2}}[/.]\d{{1,2}}\b)", r"\1 "),
    (r"^((?:a )?(?:quarter|half) (?:to|past) \w{1,6}|(?:1[0-2]|[1-9])(?:[.:]\d\d| ?[ap]m)) (?:that|it) was\b(?! \d)",
     r"did it at \1"),
    (r"\bas of (?=\d)", "since "),
    (r"\b(?:thru|through) (?=(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*\b)", "until "),
    (rf"\b({SPAN}) back\b(?! (?:at|to|up|on|in)\b)", r"\1 ago"),
    (r"(?<=\w),? (?:but )?(?:the )?(?:actual |real )?time was (?:more like|about|around|nearer)? ?(?=\d)", " at "),
    (r"(?<=[a-z]) ?(?:a bit )?earlier, (?=(?:at|around|about)? ?\d)", " "),
    (r"^(on|off) at (\d{1,2}[:.]\d\d(?: ?[ap]m)?),? (?=pit|core|meat|with|\d)", r"\1 at \2, "),
    (r"\b(took|takes|for|within|after|over|in|about|only) (\d{1,2}) ?h(?:rs?|ours?)? ?([0-5]\d)(?: ?m(?:ins?)?)?\b",
     lambda m: f"{m[1]} {60 * int(m[2]) + int(m[3])} min"),
    (r"\b(\d{1,2})h([0-5]\d)\b(?! ago)", r"\1:\2"),
    (rf"\b(?P<b>at|since|til|till|until|around|by|from|before) (?P<h>1?\d|2[0-3]) (?P<m>[0-5][05])\b{UNIT_NEXT}",
     r"\g<b> \g<h>:\g<m>"),
    (rf"\b({WEEKDAY}) in (?:a|1|one) week\b|(?<!for )\b(?:a|1|one) week (?:on|from) ({WEEKDAY})\b",
     lambda m: f"{m[1] or m[2]} week"),
    (r"(?<=\d)( ?[ap]m)?,? (?:sharp|on the dot|no later|(?:at the )?latest)(?:,? no later)?$", r"\1"),
    (rf"\b({DAY}), (?=(?:at )?(?:(?:1[0-2]|[1-9])(?:[:.][0-5]\d)? ?[ap]m\b|(?:[01]?\d|2[0-3])[:.][0-5]\d\b))", r"\1 "),
    (rf"(?<!bottom )(?<!top )(?<!beef )(?<!eye )(?<!of )\bround (?={CLOCK}$)", "around "),
    (r"\b(?:when|if) im (?:up|awake)\b", "in the morning"),
    (r"\b((?:1[0-2]|[1-9])(?:[:.][0-5]\d)?)(?: oclock)? in the (morning|evening|afternoon)\b",
     lambda m: f"{m[1]} {'am' if m[2] == 'morning' else 'pm'}"),
    (rf"\b((?:{WEEKDAY})(?: week)?) (?:about|prob|probs|probably|maybe|like|say) (?:at )?(?=(?:1[0-2]"
     rf"|[1-9])\b{UNIT_NEXT})", r"\1 at "),
    # «sunday brunch 1030», «eat 715», «sat 430»: behind a meal any hour, behind a day one that nobody reads off a pit
    (rf"\b({MEAL}|meal|eat|eating),? (?:at )?(1[0-2]|[1-9])([0-5]\d)\b{UNIT_NEXT}", r"\1 at \2:\3"),
    (rf"\b((?:{WEEKDAY})(?: \w+ing)?),? (?:at )?(1[0-2]|[1-9])(15|30|45)\b{UNIT_NEXT}", r"\1 at \2:\3"),
    # «sat 1900», «at like six», «party 21st»
    (rf"\b({WEEKDAY}|today|tomorrow|tonight|\d{{1,2}}(?:st|nd|rd|th)),? (?:at )?(?!20[2-9]\d)([01]\d"
     rf"|2[0-3])([0-5]\d)(?: ?h(?:rs?|ours)?)?\b(?! ?(?:g|gr|kg|ml|ppm|grams?)\b)", r"\1 at \2:\3"),
    (r"\b(at|since) (?:like|around|about|maybe|say|roughly) (?=(?:1[0-2]|[1-9])\b)", r"\1 "),
    (r",? ?\b(?:at )?(?:the )?(?:same|usual) (?:hour|time)(?: as (?:before|planned))?(?: please| pls)?$", ""),
    (r"\bthis am\b", "this morning"),
    (r"\b(last ni(?:ght|te)|this morning|yesterday) ?s (flips?|turns?)\b", r"the \2 \1"),
    (r"^(?:(?:i|sorry|oops|wait) )*meant (?:at )?(\d{1,2}(?:[.:][0-5]\d)? ?[ap]m),? not (?:\d{1,2} ?)?[ap]m$",
     r"it was at \1"),
    # «20.3. 12h», «sat 13h»: an hour behind its day
    (rf"((?<![\d.])\d{{1,2}}\.\d{{1,2}}\.|\b{WEEKDAY},?|\b\d{{1,2}}\.? {MONTH}[a-z]*,?) (1\d|2[0-3]|[7-9]) ?h\b",
     r"\1 at \2:00"),
    (r"\b(\d{1,2}|an?|two|three|four|five|six) (weeks?|days?) from (?:now|today)\b", r"in \1 \2"),
    (r"^(\d{1,2}[.:][0-5]\d),? (?:it was|it read|it said|was) (?=\d)", r"at \1 it was "),
)  # fmt: skip
