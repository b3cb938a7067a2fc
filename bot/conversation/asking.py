"""Questions of a person: about their batch, answered from it; about the trade, with a source or honestly not."""

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from bot.conversation import (
    answered,
    curing,
    filing,
    households,
    last_resort,
    of_batch,
    out_of_turn,
    sums,
    trade,
    two_asked,
)
from bot.conversation import which_batch as which
from bot.conversation.closer import closer
from bot.conversation.half import pack
from bot.conversation.in_units import said_in
from bot.conversation.spoons import by_spoon
from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.asked_cure import SECOND_KIND
from bot.intents.dangers import PUT_IN, needs_no_sum
from bot.intents.intents import Ask, Greet, Help, Intent, Question, Reading, Unclear, Undo
from bot.intents.normal import normal
from bot.intents.sums.which import sum_left
from bot.reply import PictureWanted, Reply, Subject
from bot.wording import (
    answers,
    asking,
    cautions,
    general,
    log,
    plans,
    privacy,
    safety,
    settings,
    supposed,
    unclear,
    yard,
)
from bot.wording import batches as several
from bot.wording import last_resort as things
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Incident, Read
from core.service import batches, people
from core.service.turn import Turn

ANY_WORDS = frozenset({"number", "word"})  # nobody knows what they are about
LAST = frozenset({"word"})  # asked about by the things of the phase
OF_WHAT = frozenset({"number", "other", "more", "moved", "late"})  # asked in words of their own, with the same taps
ANSWERED = frozenset({"entry", "batch", "computed"})
# «safe» says it itself
NO_LEAVE = frozenset({"safe", "batches", "who", "export", "record", "law", "help", "settings", "journey"})
OF_AN_ENTRY = re.compile(  # whom or what looks an entry speaks of, before the verdict of the batch
    r"\b(?:pregnant|expecting|bab(?:y|ies)|toddlers?|grand(?:ma|pa|mother|father|ad)|gran|nan|elderly|chemo\w*|transplant"
    r"|immun\w+|year old|brown\w*|gr[ea]y\w*|colou?r|cloudy|foam\w*|bubbl\w*|spots?|sticky|stiff|dark\w*|rainbow)\b"
)
OK_ALONE = re.compile(
    r"^ *(?:is|are) (?:it|this|that|they|everything|all)(?: still)?(?: all)? (?:ok(?:ay)?|(?:al)?right|fine|good)\W*$"
)
JUST_TOLD = timedelta(hours=1)  # what was read or went wrong so lately is what is asked about
COOLS = frozenset({Phase.RESTING, Phase.CHILLING})
SUBJECTS: dict[str, Subject] = {"cook": "cook", "cure": "cure", "chill": "chill"}


def answer(turn: Turn, meant: Understood, intent: Ask | Question | Help | Greet | Unclear) -> Sequence[Reply]:
    """A question answered; of a batch that is to be thrown away, that comes first."""
    if every := two_asked.of_every(turn, meant, intent, answer):
        return every
    replies = two_asked.of_two(turn, meant, intent, _asked) or _answered(turn, meant, intent)
    if meant.a is None or not meant.a.ledger.thrown:
        return replies
    first = safety.still_thrown(meant.a)
    return tuple(replace(r, text=f"{first}\n{r.text}") if _might_be_eaten_by(r) else r for r in replies)


def _might_be_eaten_by(reply: Reply) -> bool:
    """Whether somebody could take an answer for leave to eat, keep or cool what is to be thrown away."""
    about, asked = reply.facts.get("topic", reply.facts.get("entry")), reply.facts.get("asked")
    return asked == "clean_smell" or (reply.facts.get("answer_kind") in ANSWERED and about not in NO_LEAVE)


def _answered(turn: Turn, meant: Understood, intent: Ask | Question | Help | Greet | Unclear) -> Sequence[Reply]:
    match intent:
        case Ask():
            return _asked(turn, meant, intent)
        case Question(text):
            dosed = () if needs_no_sum(text) else curing.dose_asked(turn, meant, text)
            return dosed or _question(turn, meant, text)
        case Help():
            return (Reply(general.help_(meant.a), facts={"answer_kind": "entry", "entry": "help"}),)
        case Greet(kind):
            return (Reply(general.hello(kind, meant.a)),)
        case Unclear():
            return _unclear(turn, meant, intent)


def _question(turn: Turn, meant: Understood, text: str) -> Sequence[Reply]:
    """Of the batch in hand, where it is likelier meant than any entry; else of the trade."""
    if meant.a is None or needs_no_sum(text):
        return trade.done_of_none(turn, meant, text) or trade.answer(turn, meant, text)
    if SECOND_KIND.search(normal(text, turn.person.language)):  # of the packet, before any strength is taken from it
        return trade.told(turn, "cure-types", text)
    if found := of_batch.topic_of(turn, text, meant.a.batch.phase.value):
        return _asked(turn, meant, found)
    if kind := sum_left(normal(text, turn.person.language), turn.person.units.temperature == "f"):
        return sums.answer(turn, Ask("sum", kind, text))
    return trade.answer(turn, meant, text)


def _of_the_trade(turn: Turn, meant: Understood, text: str) -> Sequence[Reply]:
    """«came out too salty, what now» is no question for the next step."""
    phase = meant.a.batch.phase.value if meant.a is not None else "none"
    if len(text.split()) <= trade.SHORTEST or of_batch.topic_of(turn, text, phase) is not None:
        return ()
    return trade.known(turn, text)


def _asked(turn: Turn, meant: Understood, intent: Ask) -> Sequence[Reply]:
    if meant.a is not None:
        intent = closer(turn, intent, meant.a.batch.phase.value)
    if intent.topic == "now" and meant.reading_says_it:
        return ()
    if intent.topic == "now" and meant.a is not None and (sure := _of_the_trade(turn, meant, intent.text)):
        return sure
    if intent.topic == "safe" and meant.a is not None and _ok_in_which_way(turn, meant.a, intent):
        return _unclear(turn, meant, Unclear("is_ok", intent.text, (Ask("safe"), Ask("now"))))
    if intent.topic == "safe" and meant.a is not None and OF_AN_ENTRY.search(intent.text.lower()):
        return (*trade.known(turn, intent.text), _from_the_record(turn, meant, intent))
    if intent.topic in curing.topics():
        return curing.answer(turn, meant, intent)
    if intent.topic == "sum":
        return sums.answer(turn, intent)
    if found := _of_the_person(turn, intent):
        return found
    if intent.topic in filing.TOPICS:
        return filing.answer(turn, meant, intent)
    if intent.topic == "cautions" and intent.batch is None and meant.batch is None:
        return (Reply(cautions.without_a_batch(), facts={"answer_kind": "entry", "entry": "cautions"}),)
    if intent.batch is None and meant.batch is None:
        if sure := trade.instead(turn, intent.text):
            return sure
        return (Reply(general.no_batch(), facts={"answer_kind": "asked_back"}),)
    if intent.topic == "batches" or (intent.topic in ("now", "catch_up") and not meant.sure):
        return which.every(turn, intent.text)
    if intent.topic == "agenda":
        return which.on_a_day(turn, meant, intent)
    if found := of_batch.answer(turn, meant, intent):
        return found
    return (_from_the_record(turn, meant, intent),)


def _from_the_record(turn: Turn, meant: Understood, intent: Ask) -> Reply:
    """A question answered from what the batch is and was."""
    a = said_in(batches.look(turn, meant.of(intent.batch)), intent.text)
    if intent.topic == "who":
        return households.who(turn, a)
    text = households.of_dose(turn, a, _about(a, intent)) if intent.topic == "dose" else _about(a, intent)
    picture = _picture(a, intent.about) if intent.topic == "picture" else None
    if intent.topic != "why":
        answered.remember(turn, f"batch:{intent.topic}", intent.text)
    rows = _rows(a, intent.topic)
    body = facts(a) | {"answer_kind": "batch", "topic": intent.topic}
    reply = Reply(text, buttons=rows, picture=picture, facts=body, about=a.batch.id)
    return out_of_turn.with_the_brine(reply, a, intent.text) if intent.topic == "dose" else reply


def _of_the_person(turn: Turn, intent: Ask) -> Sequence[Reply]:
    """What is asked about oneself and about the talk, and of no batch."""
    match intent.topic:
        case "forget" if under_way := people.open_ones(turn):
            return (Reply(privacy.forgotten(under_way), facts={"answer_kind": "declined"}),)
        case "forget":
            turn.ask({"slot": "forget"})
            text, rows = privacy.sure()
            return (Reply(text, buttons=rows, facts={"answer_kind": "asked_back", "asked": "forget"}),)
        case "settings":
            text = settings.standing(turn.person, turn.now, intent.about)
            return (Reply(text, facts={"answer_kind": "entry", "entry": "settings"}),)
        case "renamed":
            names = sorted(row.name for row in batches.open_here(turn))
            return (Reply(several.go_by(names), facts={"answer_kind": "declined"}),)
        case "journey":
            return (Reply(settings.journey(intent.about), facts={"answer_kind": "asked_back"}),)
        case _:
            return ()


def _picture(a: Assessment, about: str) -> PictureWanted | None:
    """The picture that is asked for; none of a cure where no nitrite went in."""
    subject = _subject(a, about)
    if subject == "cure" and a.batch.setup.nitrite_target == 0.0:
        return None
    return PictureWanted(subject, a.batch.id)


def _ok_in_which_way(turn: Turn, a: Assessment, intent: Ask) -> bool:
    """«is it ok» alone, with nothing told or read just before and no clock of the chill that runs."""
    last = next(reversed(batches.standing(turn, a.batch.id)), None)
    told = last is not None and isinstance(last.what, Read | Incident) and turn.now - last.said_at <= JUST_TOLD
    return bool(OK_ALONE.match(intent.text.lower())) and not told and a.batch.phase not in COOLS


def _rows(a: Assessment, topic: str) -> asking.Rows:
    if topic == "plan" and a.plan is not None:
        return asking.changes(a)
    return asking.fridge_stayed_cold(a) if topic == "safe" else ()


def _subject(a: Assessment, about: str) -> Subject:
    if about in SUBJECTS:
        return SUBJECTS[about]
    after: Subject = "chill" if a.chilled or "chill" in a.batch.done else "cook"
    by_phase: dict[str, Subject] = {"cooking": "cook", "resting": after, "chilling": "chill", "stored": after}
    return by_phase.get(a.batch.phase.value, "cure")


def _about(a: Assessment, intent: Ask) -> str:
    match intent.topic:
        case "plan":
            return plans.whole(a)
        case "now":
            return answers.now(a)
        case "why":
            return answers.why(a, intent.about)
        case "safe":
            return answers.safe(a)
        case "eta":
            return answers.eta(a)
        case "picture":
            return answers.picture(a, _subject(a, intent.about))
        case "on_cooker":
            return supposed.on_cooker(a, intent.about)
        case topic if topic in yard.TOPICS:
            return yard.TOPICS[topic](a)
        case topic:
            return log.of_log(a, topic)


def _unclear(turn: Turn, meant: Understood, intent: Unclear) -> Sequence[Reply]:
    """A bare thing that may be several: asked once, with the few things that it may be."""
    if meant.a is not None and intent.options == (Undo(),):
        return of_batch.answer(turn, meant, Ask("take_back", text=intent.text))
    if intent.why in ANY_WORDS and not intent.options and (heard := _long_line(turn, meant)):
        return heard
    if intent.why in PUT_IN:
        judged = by_spoon(turn, meant, intent.text)
        if judged or needs_no_sum(intent.text):
            return judged or trade.answer(turn, meant, intent.text)
    if intent.why in LAST and not intent.options:
        return last_resort.ask(turn, meant, intent.text)
    lost = (intent.why, intent.options, meant.asked) == ("number", (), None)  # what comes next puts no older one right
    if (lost or intent.why in (out_of_turn.SLOT, "smell", "pair")) and meant.batch:
        turn.ask({"slot": "pair" if lost else intent.why, "batch": meant.batch, "at": pack(meant.message.said_at)})
    body = {"answer_kind": "asked_back", "asked": intent.why}
    places = tuple(dict.fromkeys(_place(o) for o in intent.options if isinstance(o, Reading)))
    values = {o.temperatures[0].value for o in intent.options if isinstance(o, Reading)}  # «fridge 38 to 43»: either
    if intent.why in ("at", "swings") or not any(places) or len(values) > 1 or meant.batch is None:
        here = tuple(replace(o, batch=meant.batch) if _of_a_batch(o) else o for o in intent.options)
        text, rows = unclear.say(replace(intent, options=here), turn.person)
        if intent.why in OF_WHAT and not rows and meant.a is not None:
            rows = things.things(meant.a)
        return (Reply(text, buttons=rows, facts=body, about=meant.batch),)
    first = next(o.temperatures[0] for o in intent.options if isinstance(o, Reading) and _place(o))
    probes = {p.partition("/")[0] for p in places if p}
    asked = {"slot": "probe", "batch": meant.batch, "value": first.value, "at": pack(first.at or turn.said.said_at)}
    turn.ask(asked | ({"probe": probes.pop()} if len(probes) == 1 else {}))
    text, rows = asking.probe(first.value, meant.batch, tuple(p for p in places if p))
    beside = [o for o in intent.options if not isinstance(o, Reading)]
    others = [replace(o, batch=meant.batch) if _of_a_batch(o) else o for o in beside]
    rows += unclear.taps(others[:3], turn.person)  # «60» may be millimetres or minutes, too
    rows += things.something_else(meant.a) if meant.a is not None and not others else ()
    return (Reply(text, buttons=rows, facts=body | {"asked": "probe"}, about=meant.batch),)


def _long_line(turn: Turn, meant: Understood) -> Sequence[Reply]:
    """A line of several words that no reader took: of the batch in hand by likeness, or an entry surely meant."""
    text = meant.message.text
    if len(text.split()) <= trade.REMARK:
        return ()
    found = None if meant.a is None else of_batch.topic_of(turn, text, meant.a.batch.phase.value)
    return trade.known(turn, text) if found is None else _asked(turn, meant, found)


def _of_a_batch(option: Intent) -> bool:
    """Whether a tap on it must name the batch, and does not yet."""
    return getattr(option, "batch", "") is None


def _place(option: Reading) -> str | None:
    """ "probe/unit" of a reading of one number; None for one of several."""
    t = option.temperatures[0]
    return f"{t.probe.value}/{t.unit}" if len(option.temperatures) == 1 and t.probe and t.unit else None
