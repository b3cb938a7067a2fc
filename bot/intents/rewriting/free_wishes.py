"""What is wished, and what is put right, told with words around it."""

from typing import Final

from bot.intents.rewriting.words import DAY, rules
from core import patterns as re

_LEAD: Final = (
    r"^(?:(?:no|nah|nope|wait|oops|sorry|hang on|hold on|dang|damn|dammit|ugh|argh?|gah|crap|scrap that|scratch that"
    r"|actually|ok|so|right|well),? )*"
)
_NAKED: Final = r"(?:naked|nakid|bare|nude|unwrapped|open|commando|as it is|alone)"
_IM: Final = (
    r"(?:(?:im|ill|i|we|well|were|we are|its|it is|gonna|going to|going|will|lets|just|so|think|rather|and|then|she"
    r"|he|thats)[, ]+)*"
)
_TO_THE_END: Final = r"(?: (?:all the way|the whole way|to the end|till (?:its )?done|this time|today|now|after all))*"
_FIGURES: Final = r"(?:numbers?|digits|figures|temps|readings|two)"
_ONLY_LOOKED: Final = (
    r"(?:(?:i|we) (?:only|just) (?:looked|checked|peeked|had a (?:look|peek)|opened|meant|thought|touched)"
    r"|(?:i|we) (?:didnt|havent|never|hadnt)|it (?:wasnt|didnt|hasnt|never))\b"
)


def _undone(found: re.Match[str]) -> str:
    """«take that out i only looked at it»: the flip that was none."""
    return "take back the flip" if re.search(r"look|check|peek|turn|flip|touch", found[0]) else "undo"


def _evening(hour: int) -> int:
    """The hour of the evening that is meant: 9 is 21, and 12 is midnight."""
    return (hour + 12) % 24 if hour <= 12 else hour


RULES: Final = rules(
    (r"^(?:(?:i|im|we|we are|ok|so|ill|well) )*(?:gonna|going to|will|wanna|want to|rather) (?:do|have|eat"
     r"|serve) (?:it|this|this one)"
     r" (hot|cold)(?:,? (?:and )?not (?:hot|cold))?(?:,? (?:so |and )?(?:no chill|no chilling"
     r"|without the chill))?$", r"eat it \1"),
    (r"^(?:the |my )?(?:smoker|grill|pit|kettle|cooker)s? (?:has |is )?(?:broke|broken|busted|died|dead"
     r"|packed up),? (?:so )?(?:(?:im|i am|we are|were|ill|i will|well|going to|gonna) )*(?:do|cook|finish|doing"
     r"|cooking|finishing) it in the oven$", "use the oven"),
    # another hour of the meal
    (r"^(?:can|could|may) we (?:do|make|eat|say|have(?= (?:it|at|breakfast|brunch|lunch|dinner|supper|tea)\b))"
     r"(?: it| at)* (?P<m>breakfast |brunch |lunch |dinner |supper |tea )?(?:at )?"
     r"(?P<h>\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?) instead(?: of (?:at )?\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?)?[ ?]*$",
     lambda m: f"{(m['m'] or 'meal').strip()} at {m['h']}"),
    (r"^(breakfast|brunch|lunch|dinner|supper"
     r"|tea) (?:at )?(\d{1,2}[:.]\d\d) not \d{1,2}(?:[:.]\d\d)?\b[^\d]*$", r"\1 at \2"),
    # a call put off, with why behind it
    (r"^(half (?:an )?h(?:ou)?r|an hour|\d{1,2} ?min(?:ute)?s?|\d hours?) (?:pls|please"
     r"|plz),? [^\d?]+$", r"remind me in \1"),
    (r"^in (10|15|20|25|30|40|45|50)(?: ?min\w*)?,? (?=(?:hands|busy|im |i am |driving|cooking|kids|in |at |on "
     r"|bathing|baby)"
     r"\b)[^\d?]+$", r"remind me in \1 min"),
    (r"^(?:quit|stop|dont|do not|no) (?:buzz|ping|text|messag|bug|bother)\w*(?: me| us)? after (\d{1,2})(?:[:.](\d\d))?"
     r"(?: ?pm| at nite?| at night| in the evening)* (?:un)?till? (\d{1,2})(?:[:.](\d\d))?(?: ?am| in the morning)*$",
     lambda m: f"quiet from {_evening(int(m[1]))}:{m[2] or '00'} to {int(m[3])}:{m[4] or '00'}"),
    # how many eat, how thick it is, what it weighs without what was on it
    (r"^(?:\d{1,2}|a few|some) more (?:are |people |guests )?(?:coming|now)?,? (?:so )?(?:thats |its |were |we are )?"
     r"(\d{1,2}) (?:all told|in all|altogether|in total|total)$", r"now \1 guests"),
    (r"^.*\bthickest (?:bit|part|spot|point|end)(?: is| was| reads)? (\d) and an? (quarter|half)(?: inch\w*)?$",
     lambda m: f"{m[1]}.{'25' if m[2] == 'quarter' else '5'} in thick"),
    (r"^(?:hang on|wait|hold on|oops|sorry|no|oh),? (?:that |the )?\d[\d.]* ?(?:lb"
     r"|kg)s?(?: \d{1,2} ?oz)? was with (?:the |its )?"
     r"(?:fat|bone|skin|bag|tray|wrap\w*|tub|rind)(?: cap)?(?: (?:still )?on(?: it)?)?,? (?:and )?its (?:now )?"
     r"(\d[\d.]* ?(?:lb|kg)s?(?: \d{1,2} ?oz)?)(?: now)?$", r"it weighs \1"),
    # who it is, told behind what they do
    (r"\bmy ((?:big |little |older |younger )?(?:sister|brother|neighbou?r|friend|mate|cousin|uncle|aunt(?:ie)?|son"
     r"|daughter|wife|husband|partner|mum|mom|dad|nephew|niece|lodger|flatmate|room ?mate))\b"
     r"(?! [a-z]{2,14} (?:does|has))([^?.;]*?)[?,.;]* (?:(?:she|he|they) ?(?:s|is|are|re) (?:called|named)"
     r"|(?:her|his|their) names?(?: is)?) ([a-z]{2,14})$", r"my \1 \3\2"),
    # what is wished
    (rf"{_LEAD}(?:forget|skip|scrap|leave off|leave out|leave|bin|ditch|drop|no|never ?mind|not doing|sod"
     rf"|screw)(?: about)? "
     rf"(?:the |any |with the )?(?:foil|paper|wrap(?:ping)?)\b[,.; ]+{_IM}(?:(?:leave|leaving|keep|keeping|go|going|run"
     rf"|running|cook|cooking|staying|stay|stays|do|doing) )*(?:(?:it|her|this) )?{_NAKED}{_TO_THE_END}$", "no wrap"),
    (rf"{_LEAD}{_IM}(?:leave|leaving|keep|keeping|go|going|run|running|cook|cooking|staying|stay)(?: (?:it|her|this))? "
     rf"(?:naked|nakid|bare|nude|unwrapped|commando)(?: the whole way| all the way)?"
     rf"(?:,? (?:no|without|and no|without any) (?:foil|paper|wrap)(?: (?:or|and|no) (?:foil|paper))?)?{_TO_THE_END}$",
     "no wrap"),
    (r"\b(?:gonna|going to|will|ill|plan(?:ning)? (?:to|on)|thinking(?: of)?|want to|wanna) (?:do(?:ing)?|us(?:e"
     r"|ing)|go"
     r"|go for|go with|try(?:ing)?) (?:the |some |butcher |pink )*(paper|foil) (?:at|when it hits|around"
     r"|once its at|from) "
     r"(?=1\d\d\b)", r"gonna wrap in \1 at "),
    (r"\b(?:will|does|would|should|is) (?:it|that|there) (?:stretch|go round|go around|feed (?:us|them"
     r"|everyone)(?: all)?"
     r"|be enough for (?:all|everyone))\b", "is it enough"),
    (r"\bin (?:through|thru|at|across) the (?:middle|thick\w*|fat\w*|deep\w*|widest)\b(?: (?:part|end|bit|spot"
     r"|point))?",
     "inch thick"),
    (r"\b(?:a |1 )?quarter (?:of an )?hour\b", "15 min"),
    (r"^(?:hold|keep) (?:that thought|your horses|fire|the line|on)(?: for)?,? (?=\d|half|an? )", "remind me in "),
    (r"^(?:ok |so )?(?:the |our )?(meal|dinner|lunch|supper|party|bbq)s? (?:(?:is|are|now|on|will be) )*"
     rf"(?P<to>{DAY}),? (?:and )?not (?:on )?(?:{DAY})(?: now| any ?more)?$", r"move the \1 to \g<to>"),
    (rf"{_LEAD}(?:changed my mind,? )?{_IM}(?:do|doing|use|using|go|go with|going with|try"
     rf"|wrap(?:ping)?(?: it)? in|have) (?:the "
     r"|some )?(?:butcher |pink )?(paper|foil) (?:instead of|not|rather than|over) (?:the |butcher )?(paper|foil)$",
     r"\1 instead of \2"),
    (r"\b(?:the )?(?:weight|label|sticker|packet|scales?)(?: on the (?:label|packet|sticker|scales?))? (?:was|is"
     r"|says|said|read"
     r"|reads) (\d{1,2}(?:\.\d{1,2})?)(?: (?:lbs?|pounds?|kg|kilos?))? (?:and )?not (?=\d{1,2}(?:\.\d{1,2})?\b(?! ?%))",
     r"weight is \1, not "),
    (r"^(?:(?:oh|so|and|its|were|we are|there are|just) )*only eating (\d{1,2})(?: now)?$", r"only \1 eating now"),
    (r"^(?:(?:my|our|a|the|got) )*pregnant [a-z ]{3,24}? (?:is |are |will be )?(?:joining|coming|eating)(?: us"
     r"| too| as well"
     r"| over)*$", "a pregnant guest is eating"),
    (r"\b(?:dont|do not|no need to) (?:bug|ping|text|call|bother|message|nag|remind|pester|hassle) (?:me"
     r"|us) for (?=an?\b|\d"
     r"|half)", "remind me in "),
    (r"^(?:(?:im|i am|we are|gonna|going to|ill) )*skip(?:ping)? (?:the )?(tomorrow|this|tonight)(?: (morning"
     r"|evening|night))?s"
     r"?(?: one| flip| turn)?$", lambda m: f"skip the flip {m[1]} {m[2] or ''}".strip()),
    (r"\b(?:we will|there will) be (?=\d{1,2}(?:$| (?:on|for|now|of us|then|in all)\b))", "well be "),
    (r"(?:^|(?<=, )|(?<=and ))(?:can|could|would) (?:you|u) (?:please |pls )?(?:switch|change|set|put|turn) (?:me"
     r"|it|us|this"
     r"|everything) (?:over )?"
     r"(?:to|into|in) (metric|imperial|celsius|fahrenheit|pounds|kilos)(?: please| pls)?\W*$", r"use \1"),
    # what was said before
    (rf"{_LEAD}(?:scrap|scratch|strike|forget|ignore) (?:that|it),? (?:(?:it|thats|that|the|core|meat|was|is|its"
     rf"|should|be|really"
     r"|actually|meant|i) )+(?=\d{2,3}(?: ?[cf])?$)", "no, "),
    (rf"{_LEAD}(\d{{2,3}}(?:\.\d)?(?: ?[cf])?),? (?:(?:sorry|i|ive|got|had|the|my) )*(?:flipped|swapped|switched"
     rf"|mixed|mixed"
     rf" up|jumbled|transposed|reversed|muddled) (?:up )?(?:the |my |those )?{_FIGURES}(?: (?:a?round|up|about))?$",
     r"no, \1"),
    (rf"{_LEAD}(?:(?:i|ive|got|had) )*(?:flipped|swapped|switched|mixed|mixed up|jumbled|transposed|reversed"
     rf"|muddled) (?:up )?"
     rf"(?:the |my |those )?{_FIGURES}(?: (?:a?round|up|about))?,? (?:its |it is |should be |meant )*(?=\d{{2,3}}\b)",
     "no, "),
    (r"\b(at \d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?),? (?:it )?(?:was ?nt|was not|isnt|and not|rather than) (?:at )?"
     r"(?=\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?$)", r"\1 not "),
    (rf"{_LEAD}(?:take|strike|scrap|scratch|lose|delete|undo|bin|forget|remove) (?:that|it)(?: (?:out|off|away"
     rf"|back|one|again"
     rf"))?,? (?={_ONLY_LOOKED}).*$", _undone),
)  # fmt: skip
