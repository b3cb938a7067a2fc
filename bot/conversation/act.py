"""The table of contents of the talk: a single `match` from what was meant to what is done and said."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import zip_longest

from bot.conversation import (
    answered,
    asking,
    hot_instead,
    hours,
    households,
    marking,
    meanwhile,
    meats_in_turn,
    mending,
    out_of_turn,
    reading,
    righting,
    settling,
    several,
    starting,
    trade,
    undecided,
)
from bot.conversation.merging import together
from bot.conversation.understand import Understood, understand
from bot.intents.again import LIKE_LAST
from bot.intents.context import SHOWN
from bot.intents.intents import (
    Ask,
    Cancel,
    Change,
    Choose,
    Correct,
    Debrief,
    Greet,
    HandOver,
    Happened,
    Help,
    Intent,
    Invite,
    Join,
    Leave,
    MoveDeadline,
    Pause,
    Question,
    Reading,
    Resume,
    Settings,
    Snooze,
    Start,
    StepDone,
    StepMissed,
    StepSkipped,
    Unclear,
    Undo,
)
from bot.reply import Message, Reply
from bot.wording import general, refusals, unbegun
from core.batch.batch import Phase
from core.errors import Gone, NotKept, OverLimit, SaltbellError
from core.service import batches, chats
from core.service.turn import Turn

MEMBERSHIP = frozenset({"blocked", "moved", "added"})


def answers(turn: Turn, message: Message) -> Sequence[Reply]:
    """Everything that one message is answered with, its effect already in the turn's transaction."""
    if message.other in MEMBERSHIP:
        return _membership(turn, message)
    then, told = meats_in_turn.waiting(turn), meanwhile.waiting(turn)
    meant = understand(turn, message)
    if isinstance(meant, Reply):
        return (meant, *starting.go_on(turn, then))
    replies = _answers(turn, meant)
    for waited in out_of_turn.line_kept(turn, meant):
        replies = together([*replies, *_answers(turn, waited)])
    replies = meanwhile.taken(turn, message, told, answers) or replies
    begun = any(isinstance(intent, Start) for intent in meant.intents)  # it has taken along those that wait
    return replies if begun else (*replies, *starting.go_on(turn, then))


def _answers(turn: Turn, meant: Understood) -> Sequence[Reply]:
    if told := _story(turn, meant):
        return told
    meant = out_of_turn.one_question(out_of_turn.taken_out(turn, meant))
    replies: list[Reply] = []
    for here, intent in _in_their_order(turn, meant):
        said = (hours.with_the_other(turn, here, intent, reply) for reply in _one(turn, here, intent))
        replies.extend(_named(intent, reply) for reply in said)
    out_of_turn.keep_line(turn, meant)
    if not all(isinstance(intent, ASKING) for intent in meant.intents):
        answered.forget(turn)
    households.told(turn, replies)
    told = undecided.again(turn, meant, together(replies))
    return several.named(turn, told, sure=meant.sure, meant=meant.intents)


def _in_their_order(turn: Turn, meant: Understood) -> Iterator[tuple[Understood, Intent]]:
    """Each intent; steps that are told in a row with how the batch stood before the first of them.

    What went wrong and still asks comes last, since a reading beside it would take its question away; what tells all
    that decides comes first, since the reading would ask for it.
    """
    began, those = None, sorted(meant.intents, key=_place)
    for intent, following in zip_longest(those, those[1:]):
        goes_on = isinstance(intent, StepDone) and isinstance(following, StepDone) and intent.batch == following.batch
        if goes_on and began is None and (intent.batch or meant.batch):
            began = batches.look(turn, meant.of(intent.batch))
        yield replace(meant, goes_on=goes_on, began=began), intent
        began = began if goes_on else None


def _place(intent: Intent) -> int:
    """Where an intent comes among those of its line: what went wrong before the others, or behind them."""
    if not isinstance(intent, Happened):
        return 0
    return -1 if {"hours", "room_c"} <= intent.facts.keys() else 1


def _membership(turn: Turn, message: Message) -> Sequence[Reply]:
    """The bot was blocked, taken in, or the group has another number now."""
    match message.other:
        case "blocked":
            chats.gone(turn)
        case "moved":
            chats.moved(turn, message.text)
        case "added":
            chats.back(turn)
            return (Reply(general.hello(turn.person, None)),) if message.in_group else ()
    return ()


def _story(turn: Turn, meant: Understood) -> Sequence[Reply]:
    """What an entry knows of a long line that would tell of a batch, where none is under way and none begins."""
    text, those = meant.message.text.lower(), meant.intents
    asks = all(map(_no_deed, those)) and bool(trade.ASKS.search(text))
    asks = asks or (all(map(_only_cooker, those)) and not OWN.search(text))
    tells = asks or all((isinstance(one, OF_A_BATCH) and not _of_packet(one)) or _only_named(one) for one in those)
    free = meant.asked is None or meant.asked.get("slot") == answered.SLOT
    alone = meant.batch is None and free and meant.message.pressed is None
    return trade.story(turn, meant.message.text, asks) if alone and tells and those else ()


def _no_deed(intent: Intent) -> bool:
    """Whether it names no more than a meat, or a number that nobody can place."""
    return _only_named(intent) or (isinstance(intent, Unclear) and intent.why == "number")


def _only_cooker(intent: Intent) -> bool:
    """Whether it tells of a cooker, which a question may name too («vents for 250 on a kamado»)."""
    return isinstance(intent, Settings) and intent.changes.keys() == {"cooker"}


def _of_packet(intent: Intent) -> bool:
    """Whether it is the strength of somebody's curing salt, which is kept before there is a batch."""
    return isinstance(intent, Change) and intent.changes.keys() == mending.PERSONAL


def _only_named(intent: Intent) -> bool:
    """Whether a start names a meat and neither its weight, however unclear, nor a meal; or weighs what is no meat."""
    if not isinstance(intent, Start) or {"mass", "deadline"} & intent.said.keys() or LIKE_LAST in intent.assumed:
        return False
    weighs = any(one.startswith(WEIGHTS) for one in intent.unclear)
    return not (weighs and {"product", "cut"} & intent.said.keys())


ASKING = (Ask, Question, Help, Greet, Unclear, Choose)  # after anything else «wrong» is not said of an answer
OF_A_BATCH = (
    Reading, StepDone, StepMissed, StepSkipped, Snooze, Change, MoveDeadline, Correct, Undo, Happened, Debrief, Pause,
    Resume, Unclear,
)  # fmt: skip
WEIGHTS = ("mass:", "unit:", "share:", "each:")  # a weight that has to be asked about
OWN = re.compile(  # what is said of one's own cooker, or no more than its name
    r"\b(?:i|im|ive|we|my|our|its|it|this|us(?:e|ing)|cook(?:ing|ed)?|got|have|now|here|only|on (?:gas|charcoal"
    r"|propane))\b"
    r"|^(?!.*\b(?:for|vs|or|vents?|tips?|best|temps?)\b)\W*(?:\w+\W+){0,4}\w+\W*$"
)
PRODUCT = "product "  # so begins what is gone where a product has no plan


def _one(turn: Turn, meant: Understood, intent: Intent) -> Sequence[Reply]:
    try:
        return act(turn, meant, intent)
    except NotKept:
        raise
    except SaltbellError as refusal:
        if known := _known_of(turn, meant, (intent, refusal)):
            return known
        facts = {"refused": type(refusal).__name__}
        facts |= {"answer_kind": "refused"} if isinstance(refusal, OverLimit) else {}
        return (Reply(refusals.say(refusal, turn.person), facts=facts),)


def _known_of(turn: Turn, meant: Understood, what: tuple[Intent, SaltbellError]) -> Sequence[Reply]:
    """An entry that knows it, where there is no batch that it could be about, or no plan for such a meat."""
    intent, refusal = what
    if not isinstance(refusal, Gone):
        return ()
    if refusal.what.startswith(PRODUCT):
        return trade.unplanned(turn, refusal.what.removeprefix(PRODUCT), meant.message.text)
    if meant.batch is not None:
        return ()
    if half := (meant.asked or {}).get("said"):
        danger = trade.mishap(turn, _what(intent), meant.message.text)
        return (*danger, *meanwhile.keep(turn, meant.message, intent, half))
    sure = trade.instead(turn, meant.message.text)
    sure = sure or trade.mishap(turn, _what(intent), meant.message.text)
    said = "" if sure else unbegun.say_of(intent, meant.message.text.strip()[:SHOWN], turn.person)
    return (Reply(said, facts={"answer_kind": "asked_back", "refused": type(refusal).__name__}),) if said else sure


def _what(intent: Intent) -> str:
    """What went wrong, or that somebody eats of it who is at risk: what an entry knows without a batch."""
    match intent:
        case Happened(what=what):
            return what
        case Change(changes={"at_risk_eaters": True}) | Start(said={"at_risk_eaters": True}):
            return "at_risk_eaters"
        case _:
            return ""


def _named(intent: Intent, reply: Reply) -> Reply:
    """The reply with the name of what was understood among its facts."""
    return replace(reply, facts={"intent": _name(intent), **reply.facts})


def _name(intent: Intent) -> str:
    letters = (f"_{c.lower()}" if c.isupper() else c for c in type(intent).__name__)
    return "".join(letters).lstrip("_")


def act(turn: Turn, meant: Understood, intent: Intent) -> Sequence[Reply]:
    """One intent done and answered; raises what the core refuses."""
    match intent:
        case Start():
            at_risk = trade.mishap(turn, _what(intent), meant.message.text)
            return (*at_risk, *hot_instead.begin(turn, meant, intent))
        case Choose():
            return settling.choose(turn, meant, intent)
        case Reading():
            return reading.take(turn, meant, intent)
        case StepDone() | StepMissed() | StepSkipped() | Snooze():
            return marking.mark(turn, meant, intent)
        case Change() | MoveDeadline():
            return mending.change(turn, meant, intent)
        case Correct() | Undo():
            told = righting.first_told(turn, meant, intent)
            return marking.mark(turn, meant, told) if told else mending.correct(turn, meant, intent)
        case Happened() | Debrief():
            return marking.note(turn, meant, intent)
        case Unclear(options=(Change(changes=said),)) if _told_before(meant, said):
            return mending.change(turn, meant, Change(said))
        case Unclear(why="spoiled") if meant.a is not None and meant.a.batch.phase is not Phase.WAITING:
            return marking.note(turn, meant, Happened("spoiled"))  # no remark: the record has to know it
        case Ask() | Question() | Help() | Greet() | Unclear():
            return asking.answer(turn, meant, intent)
        case Invite() | Join() | Leave() | HandOver():
            return households.household(turn, meant, intent)
        case Settings() | Pause() | Resume() | Cancel():
            return settling.settle(turn, meant, intent)


def _told_before(meant: Understood, said: Mapping[str, object]) -> bool:
    """Whether the strength that would be asked about was told before: «curing salt 0.5 i mean», after «0.5 %»."""
    known = meant.a.batch.setup.cure_nitrite_fraction if meant.a is not None else None
    return known is not None and said == {"cure_nitrite_fraction": known}
