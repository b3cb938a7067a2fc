"""A line of talk in, what is meant by it out: one intent, or several in their order; never an exception.

The order of the readers is the grammar: the answer to what was asked, second thoughts, a new batch, settings, a meal
that is moved, a question, then clause by clause what was done, read, changed or went wrong. What nobody knows is a
question for the entries; what may be several things is asked about.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import Final

from bot import measures
from bot.intents import greetings, questions
from bot.intents.again import read_again
from bot.intents.asked import read_answer
from bot.intents.asked_beside import read_asking, read_before
from bot.intents.asked_more import beside_answer, beside_the_meal
from bot.intents.asked_topic import asked_topic
from bot.intents.away_hours import read_away_hours
from bot.intents.bare import lone_number, read_bare, signs_only
from bot.intents.brine_stands import brine_stands
from bot.intents.brinings import read_still_in
from bot.intents.buttons import carried
from bot.intents.by_name import added, by_number, read_named
from bot.intents.called import asked_after, by_meat, set_about
from bot.intents.changes import HOW_EATEN, who_eats
from bot.intents.clause import about, addressed, is_nothing, named_batch, to_batch
from bot.intents.clauses import as_it_happened, sentences, several, without_plans
from bot.intents.cold_smoked import read_cold_smoked
from bot.intents.composed import composed
from bot.intents.context import SHOWN, Context
from bot.intents.corrected_numbers import tells_deed
from bot.intents.corrections import read_correction
from bot.intents.cures import read_cures
from bot.intents.dangers import grave_only_so, read_danger, warned
from bot.intents.deviations import read_told
from bot.intents.frozen import read_frozen
from bot.intents.gone_in import gone_in
from bot.intents.guests import read_guests, with_guests
from bot.intents.half_hours import HALF_HOUR, either_way
from bot.intents.heard import unheard
from bot.intents.households import invitation_in, read_household
from bot.intents.impossible import read_impossible
from bot.intents.in_doubt import read_in_doubt
from bot.intents.in_plain_words import in_plain_words
from bot.intents.intents import Ask, Correct, Greet, Intent, Join, Question, Settings, Start, StepDone, Unclear
from bot.intents.left_over import left_over
from bot.intents.meal_hours import read_day_kept, read_made
from bot.intents.meats import as_named
from bot.intents.merged import merged
from bot.intents.moves import read_move
from bot.intents.normal import normal
from bot.intents.own_hours import caught_up
from bot.intents.pauses import read_one_of_two, read_pause
from bot.intents.placed import begun_there
from bot.intents.put_off import read_after
from bot.intents.rewriting.polite import telegram
from bot.intents.run_on import beyond, is_loose, run_on
from bot.intents.served import read_served
from bot.intents.settings import read_plainly_set, read_settings, read_units, wrong_clock
from bot.intents.severally import read_begun
from bot.intents.small import ASKS
from bot.intents.standing import read_standing
from bot.intents.sums.which import read_sum, read_sum_first
from bot.intents.supposed import is_to_come, read_beforehand, read_repeated, read_supposed, read_to_come
from bot.intents.temperatures.cold_places import asked_where
from bot.intents.temperatures.readings import read_reading
from bot.intents.temperatures.started import read_held
from bot.intents.together import each
from bot.intents.undone import read_undone
from bot.intents.unsure import unsure
from bot.intents.vague import read_vague
from bot.intents.whereabouts import read_may_cool
from bot.intents.withdrawn import read_taken_back
from core import patterns as re

LONGEST: Final = 500  # characters; a message of the trade has a tenth of it
_THUMBS: Final = re.compile("^[\U0001f44d\u2705\u2714\U0001f44c\U0001f197\U0001f3fb-\U0001f3ff\ufe0f\u200d ]+$")
_ANYTHING: Final = re.compile(r"[^\W_]")
_YES_BESIDE: Final = re.compile(  # «yes and fridge 37»
    r"^(?:yes|yep|yeah|yup)\b,? ?(?:and |n |& )?(?=(?:the )?(?:fridge|brine|pit)\b[^,;]{0,16}\d"
    r"|\d{1,3}(?:\.\d)?(?: ?[cf])? (?:in|on) the (?:fridge|brine|pit)"
    r"|\d{1,3}(?:\.\d)?(?: ?[cf])? in fridge)"
)
_WHEN_TO: Final = re.compile(
    r"^(?:so |and |ok )?(?:when|what time|how (?:early|late|soon)|at what time) (?:do|should|must|shall|can|to)\b"
)


def read(text: str, context: Context) -> list[Intent]:
    """What a line means.

    Parameters
    ----------
    text
        As typed: any characters, any length.
    context
        The time, the person, and where their batch stands.

    Returns
    -------
    At least one intent. Question or Unclear where nothing else fits.
    """
    if len(text) > LONGEST:
        return [Unclear("too_long", text[:SHOWN])]
    shown = text.strip()
    if _THUMBS.match(shown) and shown:
        return [StepDone()]
    if code := invitation_in(shown):  # its letters are no words that could be mended
        return [Join(code)]
    plain = _plain(shown, context)
    if (stands := brine_stands(plain, context)) != plain:
        plain = shown = stands
    if not _ANYTHING.search(plain):
        return [signs_only(shown)]
    found: list[Intent] = []
    for line in (lines := each(plain, [name for _, name in context.batches])):
        named = named_batch(line, context)[0] if len(lines) > 1 else None
        told = [to_batch(one, named) for one in _whole(line, shown, context)]
        if found and is_loose(told) and not ASKS.search(line):  # a remark about the other one
            continue
        told += left_over(line, told, context, partial(_whole, shown=shown, context=context))
        found += warned(told, line, shown, context)
    return [_as_typed(_offered(unsure(intent, plain, context)), shown) for intent in found]


def _whole(line: str, shown: str, context: Context) -> list[Intent]:
    """A line with what each of its clauses tells."""
    found = _looked_at_twice(line, shown, context)
    if is_loose(found) and not read_danger(line, shown, context):
        found = as_it_happened(merged(run_on(line, context)), line) or found
    return with_guests(line, caught_up(beyond(composed(line, found, context), line, context)), context)


def _looked_at_twice(plain: str, shown: str, context: Context) -> list[Intent]:
    """A line as it stands, and where that says nothing, without its courtesies."""
    found = _read(plain, shown, context)
    fewer = telegram(plain) if all(map(_is_open, found)) and not is_to_come(plain, context) else plain
    again = _read(fewer, shown, context) if fewer and fewer != plain else found
    found = found if any(map(_is_open, again)) else again
    return read_before(plain, found, context, lambda rest: _read(rest, rest, context)) or found


def _is_open(intent: Intent) -> bool:
    return isinstance(intent, Question) or is_nothing(intent)


def batch_named(text: str, context: Context) -> str | None:
    """The batch that a line names and is about, where there are several; «that was for the bacon» is not about it."""
    plain = _plain(text[:LONGEST], context)
    named, _ = named_batch(plain, context)
    moved = read_correction(plain, context) if named else None
    return None if isinstance(moved, Correct) and moved.to_batch else named


def said_too(text: str, context: Context) -> str | None:
    """The batch that a line adds to what was just said of another."""
    return added(_plain(text[:LONGEST], context), context) if len(context.batches) > 1 else None


def _plain(text: str, context: Context) -> str:
    """A line as the readers want it, each batch by its own name, however it is called."""
    plain = as_named(
        normal(text, context.language, context.units.temperature == "c"), (name for _, name in context.batches)
    )
    known = context.of_what or [(name.lower(), "", "") for _, name in context.batches]
    plain = set_about(asked_after(by_meat(plain, context.of_what), known), known)
    if len(context.batches) != 1:
        return by_number(
            plain, [name for _, name in context.batches], dict(context.batches).get(context.batch or "", "")
        )
    return re.sub(rf"^{re.escape(context.batches[0][1].lower())}: ?(?=[^\W\d])", "", plain)  # no other can be meant


def _as_typed(intent: Intent, shown: str) -> Intent:
    """A question with the words of the person, not with ours; a greeting by the whole of its line."""
    if isinstance(intent, Greet):
        return intent if intent.kind in greetings.FELT else greetings.greeting(shown.lower())
    if isinstance(intent, Question) and intent.text and intent.text in shown:
        return intent  # what was asked, without the deeds beside it
    at = shown.lower().find(intent.text) if isinstance(intent, Ask) and intent.text else -1
    if isinstance(intent, Ask) and at > 1:
        return replace(intent, text=shown[at : at + len(intent.text)])
    asked = isinstance(intent, Ask | Question) and not grave_only_so(intent.text, shown)
    return replace(intent, text=shown) if asked else intent  # type: ignore[call-arg]


def _offered(intent: Intent) -> Intent:
    """An Unclear with those options only that a button can carry."""
    if not isinstance(intent, Unclear):
        return intent
    return replace(intent, options=tuple(option for option in intent.options if carried(option)))


def _read(plain: str, shown: str, context: Context) -> list[Intent]:
    named, rest = addressed(plain, context)
    if named is not None:
        here = replace(context, asked=None) if context.asked == "batch" else context
        return [to_batch(intent, named) for intent in _read(rest, shown, about(named, here))]
    plain = _YES_BESIDE.sub("done, ", plain) if _called_for_a_deed(context) else plain
    plain = in_plain_words(plain, context)
    if half := HALF_HOUR.search(plain):
        return either_way(half, shown[:SHOWN], lambda line: _read(line, shown, context))
    if danger := read_danger(plain, shown, context):
        return [danger]
    if placed := begun_there(plain, context):
        line, clock, there = placed
        begun = _read(line, shown, there)
        if any(isinstance(intent, Start) for intent in begun):
            return [clock, *begun]
    if put_in := gone_in(plain, context, lambda line: _read(line, shown, context)):
        return put_in
    for reader in _FIRST:
        if found := reader(plain, context):
            said = beside_answer(found, plain, context) if reader is read_answer else [found]
            return beside_the_meal(said, plain, context)
    named, rest = named_batch(plain, context)
    here = about(named, context)
    for reader in _THEN:
        if found := reader(rest, here):
            return [to_batch(found, named)]
    found_all = _parts(rest, shown, here)
    found_all = beside_the_meal(merged([*found_all, *unheard(rest, found_all, here)]), rest, here)
    return [to_batch(intent, named) for intent in found_all] or _nothing(plain, shown, context)


def _called_for_a_deed(context: Context) -> bool:
    """Whether a step was called for that is done, and not read off a thermometer."""
    due = (context.due_step or "").partition("/")[0]
    return bool(due) and not due.endswith("_check") and due != "reading" and context.free


def _correction(plain: str, context: Context) -> Intent | None:
    """A correction; of a number that was asked about and never noted, the reading that it was meant to be."""
    if context.unnoted and not tells_deed(plain) and (meant := read_reading(_SORRY.sub("", plain), context)):
        return meant
    asks = plain.endswith("?") or re.match(
        r"(?:(?:did|was|were|do|does|have|has|is|are) (?:i|we|you|it|that)|(?:can|could|shall) (?:i|we|it))\b", plain
    )
    return None if asks or several_corrections(plain) else read_correction(plain.rstrip(" .!"), context)


_SORRY: Final = re.compile(
    r"^(?:(?:sorry|oops|typo|no|nope|i meant|i mean|meant|make that|should be|that should be|thats)\b[,:;.]? ?)+"
)


def several_corrections(plain: str) -> bool:
    """Whether a line goes on after a correction («undo, fridge 3c»)."""
    return bool(re.match(r"^(?:undo|scratch that)[,;.] ?\w{3,}", plain)) and bool(re.search(r"\d", plain))


def _tells(plain: str, context: Context) -> Intent | None:
    """Settings, and a talk that is paused or handed over, where it is no question."""
    asks = plain.endswith("?") or questions.is_choice(plain)
    if asks or (several(plain) and not wrong_clock(plain)):
        return None if asks else read_units(plain, context)
    return read_settings(plain, context) or (None if questions.is_question(plain) else read_pause(plain, context))


def _move(plain: str, context: Context) -> Intent | None:
    """A meal that is moved, where that is all that was said."""
    more = several(plain) or " and " in plain or " ; " in plain or ". " in plain or HOW_EATEN.search(plain)
    return None if more or questions.NO_MOVE.search(plain) or _WHEN_TO.search(plain) else read_move(plain, context)


_FIRST: Final[tuple[Callable[[str, Context], Intent | None], ...]] = (
    read_day_kept, read_away_hours, read_one_of_two, read_named, read_standing, read_plainly_set, read_taken_back,
    read_undone, read_may_cool, read_beforehand, read_to_come, read_repeated, read_after, read_held, read_in_doubt,
    read_vague, read_again, read_cold_smoked, read_guests, read_household, read_cures, read_frozen, read_still_in,
    read_sum_first, read_impossible, read_told, read_served, read_answer, read_made, read_bare, greetings.read_plain,
    _correction, read_begun, read_sum, read_supposed,
)  # fmt: skip
_THEN: Final[tuple[Callable[[str, Context], Intent | None], ...]] = (_tells, _move)


def _parts(plain: str, shown: str, context: Context) -> list[Intent]:
    """The intents of each sentence and clause; nothing where no part of the line is clear."""
    if found := asked_topic(plain, context):
        return found
    if questions.is_question(plain):
        return [*who_eats(plain, context), *read_asking(plain, shown, context)]
    said = [intent for intent in sentences(plain, context) if not is_nothing(intent)]
    return asked_where(as_it_happened(merged(without_plans(said)), plain), plain, context)


def _nothing(plain: str, shown: str, context: Context) -> list[Intent]:
    """Nothing was understood: a bare word or number to ask about, or a question for the entries."""
    if context.asked == "zone" and len(plain.split()) <= 4:
        return [Settings({}, unclear=shown[:SHOWN])]
    greeted = next((intent for intent in sentences(plain, context) if isinstance(intent, Greet)), None)
    if greeted or greetings.thanked(plain):
        return [Question(shown)] if greetings.beyond_greeting(plain) else [greeted or Greet("thanks")]
    told = None if questions.is_question(plain) else lone_number(plain, context)
    if told or measures.number(plain) is not None:
        return [told or Unclear("number", shown[:SHOWN])]
    return [Unclear("word", shown[:SHOWN])] if len(plain.split()) == 1 else [Question(shown)]
