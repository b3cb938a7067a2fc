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


RULES: Final = rules(
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
