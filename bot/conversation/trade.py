"""Questions about the trade: answered from an entry with its source, offered where two may be meant, or declined."""

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.conversation import (
    answered,
    curing,
    last_resort,
    meats_in_turn,
    not_cleared,
    of_batch,
    of_it,
    on_the_fire,
    reasons,
    sums,
)
from bot.conversation.understand import Understood, context_of
from bot.intents import when
from bot.intents.intents import Ask, MoveDeadline, Unclear
from bot.intents.likely import likely
from bot.intents.moves import read_move
from bot.intents.normal import normal
from bot.intents.possible_deeds import out_of_place
from bot.intents.questions import is_question
from bot.intents.small import content
from bot.reply import Reply
from bot.wording import doneness, general, language, refusals, trade, unclear
from bot.wording import last_resort as things
from core.answers.dangers import grave
from core.answers.entries import Entry, entries, entry
from core.answers.find import LONGEST, Found, begins, find
from core.batch.batch import Phase
from core.service.turn import Turn

WISH = re.compile(r"\b(?:want|wanna|would like|plan\w*|start\w*|mak(?:e|ing)|going to|gonna|lets|doing|help me)\b")
STORY = 6  # words; who reports a step says it in fewer
SAYS_SO = ("other-fish", "roe")  # entries that say themselves that there is no plan
SHORTEST = 4  # words; «plan» and «how much longer» are no questions of the trade
EXACTLY = 0.9  # so like one of the ways to ask for an entry that it is that one, but for a word's ending
PLAINLY = 0.36  # so like the ways to ask for an entry that a line of three words means it
TOLD_PLAINLY = 0.23  # the same of a remark beside a batch, where two entries know of it
ASKS = re.compile(r"\?|\b(?:temps?|temperature|how|why|when|what|which|or|vs|ok|possible|wont|cant|stuck|keeps)\b")
AMENDS = re.compile(r"(?:no|nope|nah|oops|sorry|soz|wrong|wait)\b")  # what puts something right asks for no entry
REMARK = 6  # words; a longer line of a batch may be asked about it, or be told of an entry
TELLS = re.compile(  # a remark about what is at hand, and no topic of the trade
    r"^(?:(?:ok|so|well|now|just|the|my|and|but|oh) )*(?:i|ive|we|weve|it|its|hes|shes|he|she|they|theyre|that|thats"
    r"|(?:rub|salt|bag|meat|lid|fire|foil|paper|wood|ice|water|probe|brine|fridge|thing|stuff)s? (?:is|are|was|has"
    r"|went|got))\b"
)
_MAY_WE = re.compile(r"^(?:so |and |ok )?(?:can|could|shall|should|may|would) (?:we|i|you|it) (?:please )?")
PROBE_LOST = "probe-died"
NO_SOFT_SLICES_C = 82.0  # 180 °F; more is asked of soft slices, and no meat is raw at it. Judgement
LAST = "last"  # «why» and «wrong» in words mean the last answer
MISHAPS = {
    "fire_out": "fire-out", "power_cut": "power-cut", "warm_fridge": "power-cut", "warm_brine": "left-out",
    "left_out": "left-out", "leaked": "leak", "dosed_twice": "too-much-cure", "forgot_cure": "forgot-cure",
    "wrong_salt": "himalayan", "flare": "grease-fire", "thawed": "refreeze", "frozen": "froze-in-cure",
    "at_risk_eaters": "pregnant",
}  # by what happened  # fmt: skip
HOT = re.compile(r"\b(?:core|smoker|pit|grill|pellets?|cook\w*|smoking)\b")
KINDS = {"entry": "entry", "refused": "refused", "off_topic": "declined"}


def answer(turn: Turn, meant: Understood, text: str) -> Sequence[Reply]:
    """The entry that is surely meant; the two or three that may be; or that it is not known, and whom to ask."""
    asks = is_question(text.lower()) or is_question(normal(text, turn.person.language))  # «wats the salt % on this»
    tells = meant.a is not None and not asks
    short = tells and (  # «its late», «since about 4am i think», beside a batch: no answer is forced on it
        len(text.split()) < SHORTEST
        or bool(AMENDS.match(text.lower()))
        or not content(when.without_times(text.lower()))
    )
    if tells and not grave(text) and (deed := _as_told(turn, meant, text, unlike=True)):
        return deed
    found = _found(text)
    if meant.a is not None and meant.a.on_at is not None and found is not None and found.answer == PROBE_LOST:
        return of_batch.answer(turn, meant, Ask("no_probe", text=text))  # with what was read last
    if meant.a is not None and meant.a.batch.phase is Phase.COOKING and of_batch.TURNED.search(text.lower()):
        return told(turn, "turn-on-fire", text)
    if (not short or _elsewhere(found) or _exactly(found) or grave(text)) and (sure := known(turn, text)):
        return sure
    if not tells and (spelled := of_it.named(text, meant.a, language.spoken())) and (sure := known(turn, spelled)):
        return sure
    if meant.a is not None and not tells and (moved := _as_moved(turn, meant, text)):
        return moved
    if tells and (as_told := _as_told(turn, meant, text)):
        return as_told
    if tells and found is not None and found.guess and found.ranked[0][1] >= TOLD_PLAINLY:
        return (_offered(turn, found, text),)  # «juices are pink» of what two entries know
    if tells:
        answered.remember(turn, answered.UNKNOWN, text)
        return last_resort.ask(turn, meant, text, () if TELLS.match(text.lower()) else _names(found))
    if found is not None and _names(found):
        return (_offered(turn, found, text),)
    if meant.a is None and (none := of_batch.without(turn, text)):
        return none
    answered.remember(turn, answered.UNKNOWN, text)
    return (Reply(general.not_known(text, meant.a), facts={"answer_kind": "declined"}),)


def done_of_none(turn: Turn, meant: Understood, text: str) -> Sequence[Reply]:
    """«is 158 enough» with no batch: by the meat of a half start, else by the floor of each; of tender beef nothing."""
    core = on_the_fire.core_doubted(normal(text, turn.person.language), turn.person)
    made = meats_in_turn.made((meant.asked or {}).get("said") or {})
    if meant.a is not None or core is None or (not made and core > NO_SOFT_SLICES_C):
        return ()
    if not made:
        return told(turn, "is-it-cooked", text)
    return (Reply(doneness.judged(core, made, turn.person), facts={"answer_kind": "computed"}),)


def _elsewhere(found: Found | None) -> bool:
    """Whether a line is surely no matter of the trade."""
    return found is not None and found.answer is not None and entry(found.answer).kind == "off_topic"


def _exactly(found: Found | None) -> bool:
    """Whether a line is, word for word, one of the ways to ask for an entry: «its raining»."""
    return found is not None and found.answer is not None and found.ranked[0][1] >= EXACTLY


def _names(found: Found | None) -> tuple[str, ...]:
    """The entries that may be meant by a line."""
    return () if found is None else found.perhaps or tuple(filter(None, (found.answer,)))


def _as_told(turn: Turn, meant: Understood, text: str, *, unlike: bool = False) -> Sequence[Reply]:
    """The things that a told line may mean, by its likeness, to tap; nothing where none is like it.

    `unlike` looks for a deed by its words instead, that is told where it can be none.
    """
    if meant.a is None:
        return ()
    plain, context = normal(text, turn.person.language), context_of(turn, meant.message, None, meant.a)
    options = (
        out_of_place(plain, context) if unlike else likely(text, meant.a.batch.phase.value) if content(plain) else ()
    )
    if not options:
        return ()
    here = tuple(replace(option, batch=meant.batch) for option in options)  # type: ignore[call-arg]
    said, rows = unclear.say(Unclear("likely", text[:60], here), turn.person)
    rows += things.something_else(meant.a)
    return (Reply(said, buttons=rows, facts={"answer_kind": "asked_back", "asked": "likely"}, about=meant.batch),)


def _as_moved(turn: Turn, meant: Understood, text: str) -> Sequence[Reply]:
    """«can we eat it a week later?» with nothing known of it: the meal moved so, one tap away."""
    plain = _MAY_WE.sub("", normal(text, turn.person.language)).strip(" ?")
    context = context_of(turn, meant.message, None, meant.a)
    parts = (found for part in plain.split(",") if (found := read_move(part.strip(), context)))
    options = tuple(replace(one, batch=meant.batch) for one in parts if isinstance(one, MoveDeadline))
    if not options:
        return ()
    said, rows = unclear.say(Unclear("likely", text[:60], options[-1:]), turn.person)
    return (Reply(said, buttons=rows, facts={"answer_kind": "asked_back", "asked": "likely"}, about=meant.batch),)


def _offered(turn: Turn, found: Found, asked: str) -> Reply:
    """What may be meant to tap, after the answer to the likeliest where one stands out."""
    offered = tuple(entry(name) for name in found.perhaps)
    if found.guess is None:
        return _to_tap(found.perhaps)
    answered.remember(turn, found.guess, asked)
    text, rows = trade.guessed(offered[0], offered[1:], turn.person)
    return Reply(text, buttons=rows, facts={**_facts(offered[0]), "guessed": True, "offered": list(found.perhaps)})


def _to_tap(names: Sequence[str]) -> Reply:
    """The entries that may be meant, none of them said unasked."""
    text, rows = trade.perhaps(tuple(entry(name) for name in names))
    body = {"answer_kind": "asked_back", "asked": "entry", "offered": list(names)}
    return Reply(text, buttons=rows, facts=body)


def _found(text: str) -> Found | None:
    return find(text, language.spoken()) if len(text) <= LONGEST else None


def told(turn: Turn, name: str, text: str) -> Sequence[Reply]:
    """An entry by its name, for words that can mean no other."""
    answered.remember(turn, name, text)
    return (_said(turn, entry(name)),)


def known(turn: Turn, text: str) -> Sequence[Reply]:
    """The entry that is surely meant by a line that is about no batch; nothing where none is."""
    found = _found(text)
    if found is None or found.answer is None:
        return ()
    answered.remember(turn, found.answer, text)
    return (_said(turn, entry(found.answer)),)


def instead(turn: Turn, text: str, sure: bool = False) -> Sequence[Reply]:
    """The entry for a line that speaks of a batch where none is under way; nothing for a short command.

    It is `sure` where the line is known to ask.
    """
    if of_batch.of_none(text):
        return of_batch.without(turn, text)
    found = _found(text)
    words = 2 if sure and found and found.answer else SHORTEST - 1 if sure or _plainly(found) else SHORTEST
    if found is None or len(text.split()) < words or _elsewhere(found):
        return ()
    if found.answer:
        return known(turn, text)
    asks = sure or is_question(text.lower()) or len(text.split()) >= STORY
    return (_offered(turn, found, text),) if found.perhaps and asks else ()


def mishap(turn: Turn, what: str, text: str) -> Sequence[Reply]:
    """The entry of a mishap that is told where none is under way; nothing where there is none."""
    on_the_fire = what == "power_cut" and HOT.search(text.lower())
    name = MISHAPS.get("fire_out" if on_the_fire else what)
    if name is None:
        return ()
    answered.remember(turn, name, text)
    return (_said(turn, entry(name)),)


def story(turn: Turn, text: str, asks: bool = False) -> Sequence[Reply]:
    """The entry for a long or plain line that tells of deeds where none is under way: who tells it asks what of it.

    So is a short one that tells of no deed and `asks` («temp for duck pastrami»).
    """
    wished = WISH.search(text.lower()) or begins(text)
    tells = asks or len(text.split()) >= STORY or _plainly(_found(text))
    return instead(turn, text, sure=asks) if tells and not wished else ()


def _plainly(found: Found | None) -> bool:
    """Whether an entry is surely meant, and by words that ask for little else."""
    return found is not None and found.answer is not None and found.ranked[0][1] >= PLAINLY


def unplanned(turn: Turn, product: str, text: str) -> Sequence[Reply]:
    """That a meat has no plan here, and what is known of it: its own entry, or the one that the words find."""
    found, own = _found(text), product.replace("_", "-")
    name = own if own in entries() else found.answer if found else None
    if name is None or entry(name).kind == "off_topic":
        return ()
    answered.remember(turn, name, text)
    said = _said(turn, entry(name))
    return (said if name in SAYS_SO else replace(said, text=f"{refusals.no_plan_of(product)}\n{said.text}"),)


def chosen(turn: Turn, meant: Understood, slot: str, name: str) -> Sequence[Reply]:
    """An entry that was tapped: its answer, its longer part, or where it comes from."""
    if slot == "sum":
        return _gone_on(turn, meant, name)
    if slot == "wrong":
        answered.wrong(turn, "" if name == LAST else name)
        return (Reply(trade.wronged(), facts={"answer_kind": "entry", "entry": "wrong"}),)
    if name == LAST:
        name = answered.last(turn)[0]
    if name.startswith(reasons.OF_BATCH):
        said = reasons.of(turn, meant, name.removeprefix(reasons.OF_BATCH))
        return (Reply(said, facts={"answer_kind": "batch", "topic": "why"}),)
    if slot == "sum_why" or name.startswith("sum:"):
        return sums.why(name.removeprefix("sum:"))
    if name in ("", answered.UNKNOWN):
        return (Reply(trade.no_reason(), facts={"answer_kind": "declined"}),)
    e = entry(name)
    if slot == "entry":
        return (_said(turn, e),)
    text = trade.longer(e) if slot == "more" else trade.sources(e)
    return (Reply(text, facts=_facts(e)),)


def _gone_on(turn: Turn, meant: Understood, value: str) -> Sequence[Reply]:
    """A sum with what was missing: a dose by the way it was asked for, if it names one."""
    kind, text = sums.grown(turn, value)
    if not kind:
        return sums.over()
    asked = Ask("sum", kind, text)
    return (curing.dose_asked(turn, meant, text) if kind == "dose" else ()) or sums.answer(turn, asked)


def _said(turn: Turn, e: Entry) -> Reply:
    text, rows = trade.short(e, turn.person)
    return Reply("\n".join(filter(None, (not_cleared.first(turn, e), text))), buttons=rows, facts=_facts(e))


def _facts(e: Entry) -> dict[str, object]:
    return {
        "answer_kind": KINDS[e.kind],
        "entry": e.id,
        "cautions": list(e.cautions),
        "sources": [source.key for source in e.sources],
    }
