"""A full sentence as its telegram: «I am afraid I have not managed it yet» is «havent managed it yet».

Used for a second look, where the line as it stands was not understood. What is taken out says only how somebody feels
about it, or is courtesy; negations, numbers, hours, days and every «if» stay.
"""

from typing import Final

from bot.intents.rewriting.words import rewritten, rules
from core import patterns as re

_WHO: Final = r"(?:i|we|you|he|she|they)"
_ADVERBS: Final = r"(?:already|just|now|all|both|finally|carefully|again|properly|well|nicely|indeed|duly)"
_PASSIVE: Final = (
    r"(?:flipped|turned(?: over)?|rinsed|washed|soaked|rubbed|wrapped|lit|sliced|carved|eaten|served|sealed|bagged"
    r"|patted dry|dried|mixed|made|weighed|measured|thawed|defrosted|drained|checked|seasoned|injected|trimmed)"
)
_THING: Final = (
    r"(?:(?:the|my|our|both|all|all of|two|each of|of|these|those) )*(?:it|they|them|meat|beef|piece|pieces|bag|bags"
    r"|flats?|briskets?|joint|joints|lot|slabs?|ham|belly|both|everything)"
)
_PAST: Final = {
    "flipping": "flipped", "turning": "turned", "lighting": "lit", "wrapping": "wrapped", "rinsing": "rinsed",
    "putting": "put", "taking": "took", "pulling": "pulled",
}  # fmt: skip
OF_ONE: Final = {"are": "is", "were": "was", "do": "does", "have": "has"}
_RULES: Final = re.Rules(rules(
    # courtesy, and how somebody feels about it
    (r"\b(?:would|could|will|can) you (?:please |kindly |possibly |perhaps )*(?:be (?:so kind as|kind enough|able) to "
     r"|mind )?(?=(?:remind|ping|ask|wake|tell|send|move|push|shift|postpone|delay|cancel|undo|stop|pause|show|switch"
     r"|use|change|set|skip|delete|write|give|only)\b)", ""),
    (r"\b(?:may|might|could|can) i (?:just )?ask(?: you)?,? (?:please )?", ""),
    (r"\b(?:do you know|can you tell me|could you tell me|tell me|i wonder|i was wondering|i would like to know"
     r"|id like to know),? (?=(?:if|whether|how|what|when|why)\b)", ""),
    (rf"\b(?:{_WHO} (?:am|are|is|m) |im )?(?:afraid|sorry|ashamed|happy|pleased|glad|sad) (?:to (?:say|report|tell you)"
     rf"|that)?,? ?", ""),
    (r"\b(?:forgive me|i beg your pardon|pardon me|excuse me|my apologies|i apologi[sz]e"
     r"|with apologies)\b[,.]? ?", "sorry "),
    (rf"\b{_WHO} (?:rather |really |do |also )*(?:think|believe|notice|noticed|see|saw|find|found|suppose|guess|reckon"
     rf"|fear|hope|gather|understand|must (?:say|admit|confess)|can (?:see|tell|say)|have to (?:say"
     rf"|admit))(?: now)?,?(?: that)? (?=\w)", ""),
    (r"\b(?:it (?:seems|appears|looks)|seemingly|apparently|i see)(?: to me)?(?: that| as if| like)?,? ", ""),
    (rf"\b{_WHO} (?:have |ve )?(?:just )?(?:had|took|taken|have) a (?:quick |good |closer )?look(?: at (?P<what>the \w+"
     rf"|it))?(?:,)? and (?:it |that )?", lambda m: f"{m['what'] or ''} "),
    (r"\b(?:please|kindly|dear|my dear|sir|madam|if you please|if you would|if possible|if (?:that|it) is (?:all right"
     r"|alright|okay|ok|possible)(?: with you)?|if (?:it|that) can be done|if you (?:can|could|dont mind|do not mind)"
     r"|as you (?:asked|said|told me|suggested)|as (?:requested|instructed|asked|told)|for me|ever so much|so much"
     r"|so to (?:say|speak)|at the moment|as of now|at last|by now|to be honest|honestly|in fact|of course|after all"
     r"|i promise|in there|altogether|exactly|precisely|completely|quite|rather|actually|really|simply|merely|perhaps"
     r"|somewhere|somewhat|slightly|indeed|therefore|unfortunately|sadly|luckily|happily|fortunately)\b,? ?", " "),
    # what is wished
    (rf"\b(?:{_WHO} )?(?:should|would|d) (?:like|prefer|love)(?: you)? to (?:have )?", ""),
    (r"\b(?:i|we) (?:want|wish|need|intend|plan|mean) (?:to )?(?=(?:stop|cancel|undo|share|invite|move|change|pause"
     r"|eat|see)\b)", ""),
    (rf"\b{_WHO} (?:shall|will|ll) (?:have|need) to (?=(?:skip|leave|miss|pass)\b)", "i will "),
    (r"\bwhat would you have me do\b|\bwhat (?:am i|are we) (?:supposed|meant) to do\b", "what should i do"),
    (r"\b(?:what|how|when|why) is it that\b", lambda m: m[0].split()[0]),
    # the long forms
    (r"\bought to\b", "should"),
    (r"\b(i|you|we|they|it|he|she|that|what|there) (?:shall|will)\b", r"\1 will"),
    (r"\b(i|we) (?:shall|will) be\b", r"\1ll be"),
    (r"\bwill be (looking|minding|watching|taking|doing|handling|having)\b", r"is \1"),
    (r"\bi am\b", "im"), (r"\b(i|we) have\b(?= \w+(?:ed|t|n|ne)\b)", r"\1ve"),
    (r"\b(it|that|what) is\b|\b(it) has\b", lambda m: f"{m[1] or m[2]}s"),
    (r"\b(did|do|does|have|has|had|is|are|was|were|could|would|should) not\b", r"\1nt"),
    (r"\b(?:cannot|can not)\b", "cant"),
    (r"\bwill not\b", "wont"), (r"\bdo (?=feel|look|seem|have)", ""), (r"\bdoes (feel|look|seem)\b", r"\1s"),
    (r"\bhow much of the\b", "how much"),
    # what is being done at this moment
    (rf"\b(?:im |i am |we are |were |just )*(flipping|turning|lighting|wrapping|rinsing|putting|taking|pulling) "
     rf"({_THING}|the (?:fire|charcoal|coals|smoker|grill))((?: (?:on|off|in|over|out))?) (?:right |just )?now\b",
     lambda m: f"{_PAST[m[1]]} {m[2]}{m[3]}"),
    # who was told is no matter: «the meat has been turned» is «turned it»
    (rf"\b(?:the |my )?(brine|cure|rub|fire|charcoal|coals?)s? (?:has|have|had|is|are|was|were|s) (?:{_ADVERBS} )*"
     rf"(?:been )?(?:{_ADVERBS} )*(made|mixed|lit|weighed|measured)\b", r"\2 the \1"),
    (rf"\b{_THING} (?:has|have|had|is|are|was|were|s)? ?(?:{_ADVERBS} )*(?:been )?(?:{_ADVERBS} )*({_PASSIVE})\b"
     r"(?! (?:it|them|the)\b)", r"\1 it"),
    # several pieces are one batch
    (r"\b(are|were|do|have) they\b", lambda m: f"{OF_ONE[m[1]]} it"),
    (r"\bthey (look|feel|seem|smell|taste|read|come|need)\b", r"it \1s"),
    (r"(?<!of )\b(?:they|them)\b", "it"),
))  # fmt: skip
_REQUEST: Final = re.compile(
    r"^(?:please |sorry |hello |hi |and |so )*(?:would|could|will|can) you (?:please |kindly |possibly "
    r"|perhaps )*(?:be (?:so kind as|kind enough|able) to )?(?:remind|ping|ask|wake|send|move|push|shift|postpone|delay"
    r"|cancel|undo|stop|pause|switch|use|change|set|skip|delete|write|only)\b"
)
_TAIL: Final = re.compile(
    r",? (?:in case|so that|because|since (?=(?:i|we|my|the|it)\b)|as (?=(?:i|we|my|the) )|although|though|even though"
    r"|which (?:is|was)|just so) [^\d?;.]*$"
    r"|,? (?:theres|there is|weve got|ive got|we have|we got) (?:an? |the |my |our )?[a-z ]{3,24} (?:before|first|then"
    r"|beforehand|that day|that morning|after|on)$"
)
_SPACES: Final = re.compile(r"\s+(?=[,.;?!])|(?<=\s)\s+")


def telegram(text: str) -> str:
    """A plain line in fewer words; the same where nothing of the kind is in it."""
    if _REQUEST.search(text):
        text = text.rstrip(" ?")
    text = _TAIL.sub("", rewritten(text, _RULES))
    return _SPACES.sub("", text).strip(" ,")
