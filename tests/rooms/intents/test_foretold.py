"""What is planned, asked for or told of another meat: nothing of it is done, and nothing read of this one."""

from typing import Any

import pytest

from bot.intents.intents import Change, HandOver, Question, Reading, Settings, Start, StepDone, Unclear
from bot.intents.read import read
from tests.rooms.intents.shorthand import short
from tests.talk_lines import POUNDS, context, wall

CORE_C = {"cooking": 64.4, "chilling": 25.6}  # read last


def _read(line: str, phase: str) -> list[Any]:
    return read(line, context(phase, POUNDS, last_core_c=CORE_C.get(phase), last_pit_c=121.0))


@pytest.mark.parametrize(
    ("line", "phase", "expected"),
    [
        ("gonna wrap at 165 in paper", "cooking", "set wrap=paper"),
        ("wrap at 165", "cooking", "ask wrap"),
        ("aim for 198 pls", "cooking", "set target_c=92.2222222222"),
        ("put chicken thighs on too theyre 120", "cooking", "ask"),
        ("sam put more charcoal on at quarter to ten", "cooking", "ask"),
        ("forget chilling were eating it now hot", "chilling", "ask"),
        ("can it go in the fridge yet", "chilling", "ask chill"),
        ("at what time do you expect the meat to be finished?", "cooking", "ask eta"),
        ("missed the 9 oclock reading, was asleep", "cooking", "missed reading"),
        ("rain and a gale here, pit wont go over 90 c", "cooking", "set wind_m_s=7.0 & read pit 90c"),
        ("core jumped to 240??", "cooking", "read core 240f"),
        ("meat 65 grill 120", "cooking", "read core 65c, pit 120c"),
        ("core 66 pit 250", "cooking", "ask"),
        ("4 c in the middle, done?", "chilling", "read core 4c & ask eta"),
        ("measured again its 2.5 in at the fat end", "curing", "set thickness=64mm"),
        ("it sat on the counter from 11 last nite til now", "curing", "happened left_out"),
        ("bag on its other side now", "curing", "done flip"),
        ("fridge went up to 47 when i loaded it, 38 again now", "curing", "read fridge 38f & happened warm_fridge"),
        ("the salt i used was 5.9 percent nitrite i think", "curing", "ask"),
        ("mate at number 12 does the flips til thursday", "curing", "question"),
        ("change it to a hot meal", "curing", "set purpose=hot"),
        ("put the foil round it at 10 to", "cooking", "done wrap @07:50"),
        ("grease fire, its out now", "cooking", "happened flare"),
        ("added the ribs on the top rack", "cooking", "ask"),
        ("core 41 water 34", "chilling", "read core 41f"),
        ("changed the ice twice already", "chilling", "ask"),
        ("took it out of the water to dry it, back in 10", "chilling", "later 10m"),
        ("its 40 on the outside", "chilling", "ask"),
        ("50 an hour ago, didnt look since", "chilling", "read core 50f"),
        ("ok its cold cold", "chilling", "ask"),
        ("sliced 3 slices to test, great", "chilling", "ask"),
        ("weighed the bag 5.2 kg total", "curing", "question"),
        ("whole tub weighs 6 kg", "curing", "question"),
        ("put it in the freezer for an hour by mistake", "curing", "ask"),
        ("took the bag out to show my mate for 10 min", "curing", "happened left_out"),
        ("door was ajar all night, 46 in there", "curing", "read fridge 46f & happened warm_fridge"),
        ("flip reminder at 7:30 instead of 8", "curing", "settings flips"),
        ("ping jo as well", "curing", "invite"),
        ("151 at the last look, 10 mins ago", "cooking", "read core 151f"),
        ("i have to leave at noon for 2 hrs", "cooking", "ask bed"),
        ("lid been off for 15 min", "cooking", "happened lid"),
        ("moved it out of the ice at 60 to the fridge", "chilling", "ask & read core 60f"),
        ("its 60! can i slice", "chilling", "read core 60f & question"),
        ("reminders off after 8pm", "none", "settings quiet"),
        ("dad flipped, dunno when", "curing", "done flip"),
        ("half the brine leaked when i opened it today", "curing", "happened leaked"),
        ("was it 12 or 13 grams you said", "curing", "ask dose"),
        ("remind wife not me", "curing", "hand wife"),
        ("added bay leaves", "curing", "ask"),
        ("took it off for 20 min to fix the fire, back on now", "cooking", "question"),
        ("150 since 7", "cooking", "read core 150f"),
        ("its falling?? 146", "cooking", "read core 146f"),
        ("core 71 c, bath 35f", "chilling", "read core 71c"),
        ("we ate a third warm, rest is in the ice", "chilling", "ask & done chill"),
        ("water is warm again", "chilling", "ask"),
        ("its in the sink but no ice left in the house", "chilling", "ask"),
        ("i am sorry to say that i forgot to turn the bag last night.", "curing", "missed flip"),
        ("actual cure was 12 g not 12.6", "curing", "set put_in_cure=12g"),
        ("we put in 13", "curing", "ask"),
        ("cancel the flip tonight", "curing", "skip"),
        ("had it at 275 for the last hour", "cooking", "read pit 275f"),
        ("core 65 pulled out of ice", "chilling", "read core 65f"),
        ("39 in the fat 44 in the middle", "chilling", "read core 44f"),
        ("we will slice tomorrow at 9", "chilling", "later @09:00"),
        ("3 trout 11 oz each brined already, smoke tomorrow", "none", "ask"),
        ("poured the brine out by accident", "curing", "happened leaked"),
        ("bag ok no leaks", "curing", "greet"),
        ("20 minutes on the bench while i cleaned", "curing", "happened left_out"),
        ("jo is on till 2 then me", "cooking", "hand jo"),
        ("grill stopped for 10 min, its back", "cooking", "happened fire_out"),
        ("put it in foil w beer at 160", "cooking", "done wrap & read core 160f"),
        ("core: 153, ambient: 251", "cooking", "read core 153f, pit 251f"),
        ("it reads 38 but that might be the bath", "chilling", "ask"),
        ("in the fridge uncovered since 7", "chilling", "set chill=rack"),
        ("half a ham", "none", "start ham"),
        ("anything going?", "none", "ask now"),
        ("im over in denver", "none", "settings zone"),
        ("i have an offset smoker that burns oak, and i do not own a fridge thermometer.", "none", "settings cooker"),
    ],
)
def test_what_is_meant(line: str, phase: str, expected: str) -> None:
    """A plan is a change, a wish an answer, and what is open is asked."""
    assert short(_read(line, phase)) == expected


def test_half_cooked_to_finish_tomorrow_is_a_danger() -> None:
    """However it is typed, the answer is sought by the words that make it grave, and no step is marked."""
    (asked,) = _read("took it off at 149 outta time finish tmrw?", "cooking")
    assert isinstance(asked, Question)
    assert "tomorrow" in asked.text


def test_a_hand_over_keeps_the_hour_that_stands_before_it() -> None:
    """«my shift starts at 14:00, my sister takes over then» is at 14:00."""
    (handed,) = _read("my shift starts at 14:00, my sister takes over the smoker then", "cooking")
    assert isinstance(handed, HandOver)
    assert (handed.to, handed.at) == ("sister", wall(3, 1, 14))


def test_is_it_safe_reads_nothing() -> None:
    """«is 149 safe to eat» was read on no thermometer; «149, safe?» was."""
    assert not [i for i in _read("is 149 safe to eat", "cooking") if isinstance(i, Reading)]
    assert [i for i in _read("149, is it safe?", "cooking") if isinstance(i, Reading)]


@pytest.mark.parametrize(
    ("line", "product", "pieces"),
    [
        ("duck breasts 2 of em 14oz each pastrami style", "duck", 2),
        ("turkey breast pastrami 3.2 lb no bone", "turkey", 0),
        ("4 boneless turkey breasts 1.8kg each, smoked", "turkey", 4),
        ("can i make bacon got like 3 lb of pork belly no skin", "bacon", 0),
        ("pastrami 3 kg flat", "pastrami", 0),
    ],
)
def test_the_meat_that_was_named_is_planned(line: str, product: str, pieces: int) -> None:
    """A bird in the manner of a pastrami is a bird: its own floor of heat, and no cut of beef is asked for."""
    (start,) = _read(line, "none")
    assert isinstance(start, Start)
    assert (start.said["product"], len(start.pieces)) == (product, pieces)
    assert "mass" in start.said


def test_a_strength_of_the_cupboard_and_a_cooker_are_kept_without_a_batch() -> None:
    """Both are told before anything is begun."""
    (strength,) = _read("my curing salt says 0.6% nitrite", "none")
    assert strength == Change({"cure_nitrite_fraction": pytest.approx(0.006)})
    assert _read("i have an offset smoker", "none") == [Settings({"cooker": "offset"})]


def test_wrapped_is_no_plan() -> None:
    """«wrapped at 162» is done, and 162 was read."""
    done, reading = _read("wrapped at 162", "cooking")
    assert isinstance(done, StepDone)
    assert isinstance(reading, Reading)
    assert not isinstance(done, Unclear)
