"""What asks for nothing: a greeting, thanks, a nod; and a call for help."""

from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Ask, Greet, Help, Intent
from bot.intents.questions import is_question
from core import patterns as re

_HELP: Final = re.compile(
    r"^(?:units|language|options)$|^(?:whats|what is) (?:this|that bot|this bot)$|^what can (?:you|u) make$"
    r"|^/?(?:help|hilfe|commands?|menu|\?+|what (?:can you|you can) (?:do"
    r"|help with)(?: for (?:me|us))?"
    r"|what (?:can|do|could|should) i (?:say|type|write|tell you|ask)(?: (?:here|now|to you|next|you))*"
    r"|how (?:does this|do you) work|how do i use (?:this"
    r"|you))\b[ ?!.]*(?:me)?$"
)
_NEW: Final = re.compile(  # «hi, first time here»
    r"^(?:(?:hi+|hey+|hello|hallo|hiya|howdy|moin|so|ok|there|well)[ ,.!]*)*"
    r"(?:(?:this is |its |it is |i am |im |we are |were )?"
    r"(?:my |our |the |all |a )*(?:(?:first|1st|1) time(?:r| user)?|new|newbie|beginner)"
    r"(?: (?:here|to (?:this|curing|smoking|all (?:of )?this|it)|at this|doing this|trying this|and))*"
    r"|how are (?:you|things)|hows it going|(?:are )?you there|anyone (?:there|home)|whats up|wie gehts(?: dir)?"
    r"|(?:ich bin )?neu hier|zum ersten mal hier)(?: (?:today|please|then))?[ .!?]*$"
)
_HOW_GOES: Final = re.compile(  # asked of the batch, where one is under way
    r"^(?:(?:hi+|hey+|hello|so|ok|and|bot)[ ,.!]*)*(?:hows (?:it|things)(?: going| doing)?|how are things)[ .!?]*$"
)
_THANKED: Final = re.compile(r"^(?:thanks?|thank you|many thanks)\b[^\d?]*$")
_GREET: Final = re.compile(
    r"^/start\b|^(?:(?:hi+|hey+|hello|hallo|yo|hiya|howdy|servus|moin|good (?:morning|evening|afternoon)"
    r"|guten (?:morgen|tag|abend)|thanks?|thank you|ty|ta|tks|tnx|thx|danke|cheers|great|cool|nice|"
    r"perfect|awesome|lovely|brilliant|super|bye|good ?night|cu|there|so much|a lot|bot|all|and|ok(?:ay)?|k"
    r"|(?:ive |i |i have )?got (?:it|this|everything|it all|all of it|the lot)|i have it"
    r"|gotcha|(?:both|all|everything)(?: (?:are|is|looks?|still|all))* (?:good|fine|ok|okay|well)"
    r"|(?:(?:that |it |this )?(?:sounds|looks|seems) )(?:good|great|right|fine|perfect)(?: to me)?"
    r"|ok(?:ay)? good|alright|very|much|mate|will do|roger|understood|noted|(?:going|off) to bed|(?:it was "
    r"|its )?(?:delicious|tasty|great|amazing)|yum|yummy|wow|lecker|lol|haha)[ ,.!]*)+$"
)
_SO: Final = r"(?:(?:so+|very|really|quite|a bit|a little|getting|totally|super|rather|just|too|all|absolutely|bit) )*"
_I: Final = r"^(?:(?:oh|ugh|wow|man|god|gosh|well|and|but|ok|we|i|im|i am|ive|were|we are|feel(?:ing)?|got|was),? )*"
_WEARY: Final = re.compile(  # how somebody feels, and nothing of the meat
    rf"{_I}{_SO}(?:tired|exhausted|knackered|shattered|sleepy|beat|nervous|worried|anxious|scared|stressed|nerves"
    r"|a wreck)(?:(?: about)? (?:it|this|now|today|already|tonight|all this|that))*$"
    r"|^(?:what a|its been a|been a|such a)(?: long| crazy| mad| hard)* (?:day|week|night)$"
    rf"|{_I}(?:fingers crossed|keeping (?:my|our) fingers crossed|(?:really |so )*hop(?:e|ing) (?:it|this|that)"
    r" (?:(?:all|will|turns? out|works?(?: out)?|comes? out|goes|is) )*(?:ok|okay|well|good|right|works?(?: out)?"
    r"|turns? out)(?: in the end)?)$"
)
_GLAD: Final = re.compile(
    rf"{_I}{_SO}(?:excited|chuffed|proud(?: of (?:it|this|myself|ourselves))?|happy(?: with (?:it|this|that))?|thrilled"
    r"|over the moon)(?: (?:now|already|about (?:it|this)))*$"
    r"|^(?:(?:i|we|just) )*(?:cant wait|cannot wait|love (?:it|this|you|this bot))"
    r"(?: (?:to (?:try|eat|taste) it|for it))?$"
    r"|^(?:(?:it|the \w+|that|this|its|oh|wow|god|man|house|kitchen) )*(?:(?:all|already) )?smell(?:s|ing)?"
    r" (?:(?:so+|really|just|absolutely|amazingly) )*(?:amazing|divine|heavenly|delicious|incredible|great|gorgeous"
    r"|fantastic|wonderful|lovely)(?: (?:already|now|in here|out here))*$"
    r"|^(?:happy (?:thanksgiving|turkey day|easter|holidays|new year|birthday|(?:st|saint) \w+ day)"
    r"|merry (?:christmas|xmas))(?: (?:to|you|all|buddy|mate|everyone|everybody|bot|friend|my|and|yours))*$"
    r"|^(?:(?:bloody|absolutely|just|simply|so+|its|it is|that is|thats|looks?|looking) )*(?:beautiful|gorgeous"
    r"|stunning|magnificent|a beauty|fantastic|marvellous|wonderful)$"
    r"|^(?:(?:it|its|that|this|they|really|just|so+|all|absolutely|the \w+) )*look(?:s|ing)? (?:(?:so+|really"
    r"|absolutely|just) )*(?:lovely|amazing|delicious|incredible|divine)(?: (?:already|now))*$"
)
FELT: Final = frozenset(("glad", "weary"))
BEYOND: Final = 4  # words: more than «for the help»
_THANKS: Final = re.compile(r"\b(?:thanks?|ty|ta|tks|tnx|thx|danke|cheers)\b")
_HELLO: Final = re.compile(
    r"^/start\b|\b(?:hi+|hey+|hello|hallo|yo|hiya|howdy|servus|moin|good (?:morning|evening|afternoon)"
    r"|guten (?:morgen|tag|abend))\b"
)


def read_plain(text: str, context: Context) -> Intent | None:
    """A greeting or a call for help."""
    if _HELP.search(text):
        return Help()
    if context.phase != "none" and _HOW_GOES.match(text):
        return Ask("catch_up", text=text)
    if felt := _felt(text.strip(" .!,")):
        return Greet(felt)
    return greeting(text) if _GREET.search(text) or _NEW.search(text) else None


def _felt(text: str) -> str:
    """How somebody says that they feel, glad or weary; "" where the line says anything else."""
    return "weary" if _WEARY.match(text) else "glad" if _GLAD.match(text) else ""


def thanked(text: str) -> bool:
    """Whether a line that nobody understood begins as thanks, and asks and tells no number."""
    return bool(_THANKED.match(text))


def beyond_greeting(text: str) -> bool:
    """Whether a line says something beside its greeting, in a sentence of its own («got it. do both go in one tub»)."""
    parts = [part for part in re.split(r"(?<=[.;!?]) ", text) if not _GREET.search(part) and not _THANKED.match(part)]
    return any(is_question(part) or len(part.split()) >= BEYOND for part in parts)


def greeting(text: str) -> Greet:
    """A greeting, thanks or a nod, whichever wants an answer most."""
    return Greet("thanks" if _THANKS.search(text) else "hello" if _HELLO.search(text) or _NEW.search(text) else "nod")
