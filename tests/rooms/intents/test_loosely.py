"""Deeds, readings and wishes told loosely: what each class of them is taken for, and what is only asked about."""

from dataclasses import replace
from datetime import timedelta

import pytest

from bot.intents.intents import Correct, Happened, Pause, Reading, Settings, Start, StepDone, Unclear
from bot.intents.read import read
from core.units import celsius_from_fahrenheit
from tests.rooms.intents.shorthand import short
from tests.talk_lines import POUNDS, context, wall

COOK = context("cooking", last_core_c=celsius_from_fahrenheit(148.0), last_pit_c=121.0)
FAR = replace(COOK, target_c=celsius_from_fahrenheit(195.0))
CURE = context("curing", POUNDS)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("its gone funny", "odd"),
        ("it feels a bit sticky", "odd"),
        ("somethings not right", "odd"),
        ("its ready", "ready"),
        ("bout a spoon", "grams"),
        ("used 2 heaped teaspoons", "grams"),
        ("put the salt in", "grams"),
        ("cut it in half so its 2 bits now", "halved"),
        ("only text me if pit outside 235-270", "watch"),
        ("wake me if it drops under 225", "watch"),
        ("changed it", "which"),
        ("went green", "odd"),
        ("it smells bad", "smell"),
        ("smells like eggs", "spoiled"),
        ("meat smells like feet", "spoiled"),
        ("its slimy", "spoiled"),
        ("make it 2 people more", "guests"),
        ("dinners off", "meal_off"),
        ("we cancelled", "meal_off"),
        ("10 more", "more"),
        ("only half the salt went in so far", "grams"),
        ("got another flat 4lb chucked it in the same bag", "added"),
    ],
)
def test_what_may_be_several_things_is_asked(text: str, why: str) -> None:
    """No dose, no thickness and no verdict is guessed from a remark."""
    found = read(text, CURE)
    assert [one.why for one in found if isinstance(one, Unclear)] == [why]


@pytest.mark.parametrize("text", ["off", "its off"])
def test_off_long_before_it_is_done_is_asked(text: str) -> None:
    """At 148 °F of 195 °F it may be the fire or a smell as well; near the target, and when called for, it is done."""
    asked = read(text, FAR)[0]
    assert isinstance(asked, Unclear)
    assert asked.options == (StepDone("off"), Happened("fire_out"))
    assert read("off", replace(FAR, last_core_c=celsius_from_fahrenheit(190.0))) == [StepDone("off")]
    assert read("off", replace(FAR, due_step="off")) == [StepDone("off")]


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("pulled at 201", "read core 201f & done off"),
        ("took it off, 201", "read core 201f & done off"),
        ("grate 228 lid says 265", "read pit 228f"),
        ("265 on the lid, 228 at the grate", "read pit 228f"),
        ("lid says 265", "read pit 265f"),
        ("gonna slice it cold now so stop at 155", "set purpose=cold & set target_c=68.3333333333"),
        ("my sons watching the smoker tonite", "hand son"),
        ("im taking over from dave", "hand me"),
        ("never wrapped it", "missed wrap"),
        ("gonna be late, dinner 7 not 6", "meal sat19:00"),
        ("its been an hour at 152", "read core 152f"),
        ("151 looking good", "read core 151f"),
        ("going to bed", "ask bed"),
        ("hes taking it off at 6", "later @18:00"),
        ("eating tonite instead 7pm", "meal mon19:00"),
        ("not gonna wrap it", "set wrap=none"),
        ("off the phone", "question"),
        ("took it off the direct heat", "question"),
        ("done by 5", "question"),
        ("at 190 in 30 min", "ask"),
        ("core151pit250", "read core 151f, pit 250f"),
        ("temp fell 150 to 146 opened lid", "read core 146f & happened lid"),
        ("taking it to 200 not 195", "set target_c=93.3333333333"),
        ("guest early need it 11am", "meal sat11:00"),
        ("its been 3 hrs since last reading sorry, 151", "read core 151f"),
        ("151? is that slow", "read core 151f & ask safe"),
        ("forgot to say wrapped at 8", "done wrap @08:00"),
        ("wrapped 8.15 paper", "done wrap @08:15"),
        ("eat 8 tmrw night", "meal tue20:00"),
        ("can i bump to 300", "question"),
        ("lit at 6 on at 7", "done light @06:00 & done meat_on @07:00"),
        ("c 65 p 115", "read core 65c, pit 115c"),
        ("pit was 300 for 10 min now 245", "read pit 300f, pit 245f"),
        ("boated it at 149 pit now 275", "done wrap & read core 149f, pit 275f"),
        ("probes were mixed up its 152 meat 246 pit", "read core 152f, pit 246f"),
        ("the 140 was at 5 not 6", "fix @05:00"),
        ("155 pit 260 lid was open", "read core 155f, pit 260f & happened lid"),
        ("two probes 150 and 156", "read core 150f, core 156f"),
        ("sister has fire from 8", "hand sister"),
        ("probe wont go in", "ask tough"),
        ("pull target 200", "set target_c=93.3333333333"),
        ("resting now wrapped in towel", "done rest"),
        ("lost signal for 2 hours it reads 151 now", "read core 151f"),
        ("added 6 briquettes and a chunk", "ask"),
    ],
)
def test_beside_the_fire(text: str, meant: str) -> None:
    """What was read comes before what was done upon it; the lid does not count where the grate was read."""
    assert short(read(text, COOK)) == meant


def test_the_lid_is_heard() -> None:
    """What does not count is said beside what does, so that nobody wonders where it went."""
    found = read("core 158 grate 250 dome 275", COOK)[0]
    assert isinstance(found, Reading)
    assert [t.value for t in found.temperatures] == [158.0, 250.0]
    assert [t.value for t in found.beside] == [275.0]


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("36 in the glass of water by the bag", "read fridge 36f"),
        ("thermometer in a cup of water reads 37", "read fridge 37f"),
        ("skip the cure, plain brine", "set nitrite_target=0.0"),
        ("can u bring it fwd a day", "meal -1440m"),
        ("forgot last nights flip doin it now", "missed flip & done flip"),
        ("hold all msgs till monday", "pause"),
        ("frij says 41 is that bad", "read fridge 41f & ask safe"),
        ("its been 39 all day", "read fridge 39f"),
        ("36f all good", "read fridge 36f"),
        ("did mine this am", "done flip @08:00"),
        ("he weighs 90kg lol", "question"),
        ("i used sea salt with it as well 50g", "question"),
        ('my butcher sold me "cure 1"', "question"),
        ("i flip it yesterday also", "done flip @12:00"),
        ("did i flip yesterday", "ask log"),
        ("make that two inches not one and three quarters", "set thickness=51mm"),
        ("friday instead pls same hour", "meal fri13:00"),
        ("saturday is off, sunday at 4", "meal sun16:00"),
        ("off to spain mon-thu, neighbor flips", "pause & hand neighbor"),
        ("dont need reminders tonight", "pause"),
        ("flip 2 done", "done flip"),
        ("turned it, leak in the bag", "done flip & happened leaked"),
        ("did it fri n sat, fridge 2,5", "done flip @12:00 & done flip @12:00 & read fridge 2.5c"),
        ("flip + 36", "done flip & read fridge 36f"),
        ("turned fridge down to 36", "question"),
        ("flip / 8.05", "done flip @08:05"),
        ("there's pink water in the bag", "question"),
        ("pit will be 225 not 250", "set pit=107c"),
        ("meat weighs 3400", "set mass=3.4kg"),
        ("move to friday dinner", "meal fri18:00"),
        ("jo's turn now", "hand jo"),
        ("fridge thingy says 4.5", "read fridge 4.5c"),
        ("nope fell asleep", "missed"),
        ("brine spilled a cup", "happened leaked"),
        ("+1 day", "ask"),
        ("we're 6 now", "ask feed"),
        ("text sam not me", "hand sam"),
        ("was 43 overnite back to 37", "read fridge 43f, fridge 37f"),
        ("36 this morning 41 last nite", "read fridge 36f, fridge 41f"),
        ("41 last night 36 this morning", "read fridge 41f, fridge 36f"),
        ("dinner now not lunch, 7ish", "meal sat19:00"),
        ("last turn was 10pm not 5", "fix @22:00"),
        ("that 38 was the garage one, this ones 40", "fix 40"),
        ("gonna use pecan n foil", "set wood=pecan & set wrap=foil"),
        ("nearly forgot but done", "done"),
        ("my bad missed last night", "missed flip"),
        ("switch to foil", "set wrap=foil"),
        ("i put 12.6 g cure in like you said", "set put_in_cure=12.6g"),
        ("put in 12g", "ask"),
        ("wrapped in film", "question"),
        ("thermometer says 34 in bag", "read fridge 34f"),
        ("want it sliced thin on the machine", "set purpose=thin"),
        ("i missed monday and tuesday", "missed flip & missed flip"),
        ("im using lbs and fahrenheit", "settings units"),
        ("my grill is an electric", "settings cooker"),
    ],
)
def test_in_the_cure(text: str, meant: str) -> None:
    """The fridge by a glass of water, a step made good at once, and no step skipped where the salt is."""
    assert short(read(text, CURE)) == meant


def test_away_for_days() -> None:
    """«on holiday friday for 5 days»: from the morning of that day, for as long as it is said."""
    assert read("we go on holiday friday for 5 days", CURE) == [
        Pause(wall(3, 5, 0) + timedelta(days=5), since=wall(3, 5, 0))
    ]


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("10 lb belly slab cut in 2", "start bacon 4.536kg"),
        ("4 lb chuck for pastrami saturday", "start pastrami beef_chuck 1.814kg sat"),
        ("same again as last time but 3.1 kg", "start 3.1kg"),
        ("flat 3200g for 20.3. 12h", "start brisket_flat 3.2kg sat12:00"),
        ("two chickens 1.6 and 1.8 kg smoke sunday 5", "start chicken 3.4kg sun17:00"),
        ("pork shoulder 5kg ham for xmas", "start shoulder 5kg sat"),
        ("turkey breast 2.5k smoked for sunday", "start turkey 2.5kg sun"),
        ("brisket flat 4.1kg, 58mm, EQ 2.5% salt, serve sat 1900", "start brisket_flat 4.1kg 58mm sat19:00"),
        ("a point its um four point two pounds to eat saturday at like six", "start brisket_point 1.905kg sat18:00"),
        ("flat 6lbs, frozen solid atm, party 21st", "start brisket_flat 2.722kg frozen sun"),
        ("two-kilo slab of belly for bacon by sunday week", "start bacon 2kg sun"),
        ("pastrami for his birthday on the twentieth its six and a half pounds", "start pastrami 2.948kg sat"),
        ("5.5 lb brisket (flat) thawing now, dinner sun 6p", "start brisket_flat 2.495kg sun18:00"),
        ("8 pounds 2 ounces round", "start beef_round 3.685kg"),
        ("i live in adelaide australia", "settings zone"),
        ("arizona, no dst here. and grams", "settings zone"),
        ("same as last time", "start"),
        ("half a turkey 4,1 kilo smoked for sunday dinner", "ask"),
        ("duck breasts x4 900g all up, wanna smoke em", "start duck 0.9kg"),
        ("pastrami flat 2.8kg in the bag already since fri nite", "start pastrami brisket_flat 2.8kg"),
        (
            "frozen flat 3,2kg, pastrami on the 14th, when out of the freezer",
            "start pastrami brisket_flat 3.2kg frozen sun",
        ),
        ("flat 7lb 48mm 6.25 % brine 20 march 1 pm", "start brisket_flat 3.175kg 48mm brine sat13:00 ?percent"),
        ("loin 2 kg with cure #1 6.25%", "start back_bacon 2kg 6.25%"),
        ("6lb eye of the round, no cure", "start beef_round 2.722kg"),
        ("belly is 2.3 kilo and about two fingers thick", "start bacon 2.3kg ?thickness"),
        ("11 lb ham bone in easter sunday 2pm", "start ham ham_bone_in 4.99kg sun14:00"),
    ],
)
def test_beginning(text: str, meant: str) -> None:
    """A slab that is cut is two pieces, an unknown cut is said to be unknown, and no word is taken for a meat."""
    assert short(read(text, context("none", POUNDS))) == meant
    assert ("pieces" in getattr(read(text, context("none", POUNDS))[0], "said", {})) is (
        "cut in" in text or " x4 " in text or "two chickens" in text
    )


def test_two_places_of_the_meat() -> None:
    """«124 / 121»: no pit in °F, so two places of the meat are offered first; what no core can be is the pit."""
    cook = context("cooking", last_core_c=celsius_from_fahrenheit(98.0), last_pit_c=celsius_from_fahrenheit(180.0))
    asked = read("124 / 121", cook)[0]
    assert isinstance(asked, Unclear)
    assert short(asked.options[:1]) == "read core 124f, core 121f"
    assert short(read("more coals in, 210", cook)) == "ask fuel & read pit 210f"


def test_each_bag_has_its_dose() -> None:
    """Pieces in bags of their own are batches of their own, so nobody doses one bag for both."""
    start = read("two bellies 4.4 n 5.1 lb dry, seperate bags", context("none", POUNDS))[0]
    assert isinstance(start, Start)
    assert [round(one["mass"], 2) for one in (start.said, *start.then)] == [2.0, 2.31]
    assert "pieces" not in start.said


def test_a_weight_that_was_never_noted() -> None:
    """«1.5 kg not 1.5 lb» of a piece of 3.2 kg is asked about, since the dose hangs on it; «3.1 not 3.2» is taken."""
    noted = replace(CURE, mass=3.2)
    assert short(read("its 1.5kg not 1.5lb", noted)) == "ask"
    assert short(read("its 3.1 kg not 3.2", noted)) == "set mass=3.1kg"


def test_out_of_the_ice_is_not_out_of_the_cure() -> None:
    """What comes out of the bath in the chill mends no step of days ago, and what it weighs then is what is left."""
    chill = context("chilling", last_core_c=25.5, mass=3.4)
    assert "out" not in short(read("took it out the bath at 7, core 60", chill))
    assert short(read("weigh 4.4", chill)) == "debrief"


def test_what_is_still_to_come_ends_no_chill() -> None:
    """«40 in 3 hours» may be a hope: a tap says so, and no number of it meets the rule unasked; «140» is no hour."""
    chill = context("chilling", last_core_c=25.5)
    assert [short(read(line, chill)) for line in ("40 in 3 hours", "at 40 by 11")] == ["ask", "ask"]
    assert short(read("was 41 in 3 hours", chill)) == "read core 41f"
    assert not short(read("serving at 140", chill)).startswith("meal")


def test_no_sugar() -> None:
    """What is left out of the recipe is kept."""
    start = read("pork belly 3 kilo dry no sugar", context("none", POUNDS))[0]
    assert isinstance(start, Start)
    assert start.said["sugar_fraction"] == 0.0


def test_a_reading_that_was_none() -> None:
    """«bin the 78» takes that number out, and no other."""
    found = read("bin the 78", context("chilling", last_core_c=25.5))[0]
    assert isinstance(found, Correct)
    assert (found.was, found.gone) == (78.0, True)


def test_no_cure() -> None:
    """What is offered as «no cure» holds where it is typed, and a round of beef is no eye that hurts."""
    start = read("corned beef 6lb eye of the round, no cure", context("none", POUNDS))[0]
    assert isinstance(start, Start)
    assert start.said["nitrite_target"] == 0.0


def test_how_the_chill_comes_on() -> None:
    """In the ice bath the question is of the chill, and a number beside a fridge is asked about."""
    chill = context("chilling", last_core_c=celsius_from_fahrenheit(78.0))
    assert [short(read(line, chill)) for line in ("how long till 40", "its cold enough?")] == ["ask chill", "ask chill"]


def test_until_an_hour_of_tonight() -> None:
    """«not home till 9 tonight» is no night away."""
    assert read("not home till 9 tonight", CURE) == [Pause(wall(3, 1, 21))]


@pytest.mark.parametrize(("text", "pieces"), [("duck breast x4 1.4kg total", 4), ("9.5 lb belly, i cut it in two", 2)])
def test_how_many_pieces(text: str, pieces: int) -> None:
    """A weight for all of them, and how many they are."""
    start = read(text, context("none", POUNDS))[0]
    assert isinstance(start, Start)
    assert start.said["pieces"] == pieces


def test_a_place_within_a_start() -> None:
    """The meal is at the hour of that place."""
    clock, start = read("5 lb flat pastrami sat 1pm in chicago", context("none", POUNDS))
    assert clock == Settings({"zone": "America/Chicago"})
    assert isinstance(start, Start)
    assert start.said["deadline"] == wall(3, 6, 20)
