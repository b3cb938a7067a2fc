"""Weights, thicknesses and corrections that leave something open: asked about, or read as they can only be meant."""

import pytest

from bot.intents.intents import Change, Correct, Start, Unclear
from bot.intents.read import read
from core.batch.events import Probe
from tests.rooms.intents.shorthand import short
from tests.talk_lines import KILOS, POUNDS, context

LB = 0.45359237


@pytest.mark.parametrize(
    ("text", "mass", "pieces"),
    [
        ("2 flats 4 lb each", 8 * LB, 2),
        ("duck breasts x4 about 350g each", 1.4, 4),
        ("trouts six pieces, 300 gramm the fish", 1.8, 6),
        ("pork belly 3x2lb", 6 * LB, 3),
        ("4 trout, 1.4 kg", 1.4, 0),  # of each it would be no trout
        ("2 hams 10 kg in all", 10.0, 0),
        ("belly slab 11 x 8 in 2in thick 4lb", 4 * LB, 0),
        ("half a pigs shoulder four n a half pound", 4.5 * LB, 0),
        ("turkey breast 2.5 kilo brine thurs", 2.5, 0),
    ],
)
def test_a_weight_for_several_pieces(text: str, mass: float, pieces: int) -> None:
    """A count beside a weight multiplies it where it is said to be that of each, and never where it is a size."""
    (start,) = read(text, context("none", POUNDS))
    assert isinstance(start, Start)
    assert start.said["mass"] == pytest.approx(mass, abs=1e-6)
    assert len(start.pieces) == pieces


@pytest.mark.parametrize(
    ("text", "slot"),
    [
        ("pastrami 4 lb each", "each"),
        ("2 bellies 3 lb and 4", "mass"),
        ("2 hams 5kg", "share"),
        ("2 flats 7 lb", "share"),
        ("brisket 7.5 lb maybe 8", "mass"),
        ("flat 6 lb i think 7", "mass"),
    ],
)
def test_a_weight_that_is_asked_about(text: str, slot: str) -> None:
    """Of each or of all, the one number or the other: the cook's to say, since the dose hangs on it."""
    (start,) = read(text, context("none", POUNDS))
    assert isinstance(start, Start)
    assert "mass" not in start.said
    assert slot in [one.split(":")[0] for one in start.unclear]


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("1 3/4 at the fat end", [44.45]),
        ("thick end is 2 1/4", [57.15]),
        ("50 at the thickest", [50.0]),
        ("2in one end 1 in the other", [50.8, 25.4]),
        ("1.6in i think maybe 1.7", [43.18, 40.64]),
        ("4.5cm thick side 3 thin side", [45.0, 30.0]),
    ],
)
def test_a_thickness_in_other_words(text: str, millimetres: list[float]) -> None:
    """The thickest spot counts where it is named; of two numbers the cook taps one; no number is a core."""
    (found,) = read(text, context("waiting", POUNDS))
    options = found.options if isinstance(found, Unclear) else (found,)
    assert all(isinstance(option, Change) for option in options)
    assert [1000 * option.changes["thickness"] for option in options] == pytest.approx(millimetres)


def test_a_thickness_by_the_hand_is_no_measure() -> None:
    """Fingers are of no known width."""
    assert read("thick as 2 fingers", context("waiting", POUNDS, asked="thickness")) == [
        Unclear("ruler", "thick as 2 fingers")
    ]


@pytest.mark.parametrize(
    ("text", "unit", "was"),
    [
        ("lbs not kg sorry", "lb", "kg"),
        ("KILOS not lbs!!", "kg", "lb"),
        ("its inches i put cm", "in", "cm"),
        ("i meant kg", "kg", None),
    ],
)
def test_a_unit_put_right(text: str, unit: str, was: str | None) -> None:
    """Of the piece, and of no reading."""
    assert read(text, context("waiting")) == [Correct(unit=unit, unit_was=was)]


def test_a_strength_put_right_is_offered() -> None:
    """No strength is taken without its percent sign."""
    for text in ("just read the jar, 5.88 not 6.25", "its 6.25"):
        (asked,) = read(text, context("waiting"))
        assert isinstance(asked, Unclear)
        assert isinstance(asked.options[0], Change)


def test_another_cut_before_the_cure() -> None:
    """The meat that is meant, and none that is denied."""
    assert read("pork loin not belly my bad", context("waiting")) == [
        Change({"product": "back_bacon", "cut": "pork_loin"})
    ]


@pytest.mark.parametrize("text", ["want to start tmrw, flat 7 lb", "flat 7 lb start saturday"])
def test_the_day_it_begins_is_no_meal(text: str) -> None:
    """Nobody eats on the day on which a cure begins."""
    (start,) = read(text, context("none"))
    assert isinstance(start, Start)
    assert "deadline" not in start.said


def test_a_unit_said_once_holds_for_all() -> None:
    """«in c» at the end is of every number."""
    where = context("cooking", POUNDS, last_core_c=60.0)
    assert short(read("pit 120 meat 66 in c", where)) == "read pit 120c, core 66c"
    assert short(read("core 62 pit 107 both celcius", where)) == "read core 62c, pit 107c"


def test_a_lone_number_in_the_other_unit_is_asked() -> None:
    """«7» in the cure is a fridge, a brine, an hour or a size, unless the fridge was called for."""
    assert short(read("7", context("curing", KILOS))) == "ask"
    assert short(read("its 7", context("curing", KILOS, due_step="fridge_check/3"))) == "read fridge 7c"
    assert short(read("7", context("curing", POUNDS))) == "ask"
    assert short(read("7", context("curing", KILOS, due_step="flip/3"))) == "ask"
    assert short(read("38", context("curing", POUNDS, probe_asked=Probe.FRIDGE))) == "read fridge 38f"
    assert short(read("7", context("curing", KILOS, due_step="flip/3", probe_asked=Probe.FRIDGE))) == "ask"
    assert short(read("72", context("curing", POUNDS, probe_asked=Probe.FRIDGE))) == "ask"
    brine = context("waiting", POUNDS, brine_made=True, probe_asked=Probe.BRINE)
    assert short(read("37", brine)) == "read brine 37f"
    assert short(read("60", context("chilling", POUNDS, last_core_c=31.0))) == "ask"
    assert short(read("60", context("chilling", POUNDS, last_core_c=31.0, due_step="chill_check/2"))) == "read core 60f"


@pytest.mark.parametrize(
    ("text", "phase", "meant"),
    [
        ("not injecting after all", "waiting", "ask"),
        ("gonna slice hot not cold", "curing", "set purpose=hot"),
        ("hold off wrapping", "cooking", "later"),
        ("lets go 275 on the pit", "cooking", "set pit=135c"),
        ("pulled it out the brine", "curing", "done out"),
        ("turned it bit of juice in the tray", "curing", "done flip & happened leaked"),
        ("flipped fridge 3c push dinner to 3", "curing", "done flip & read fridge 3c & meal sat15:00"),
        ("79 at 8.30 after the ice bath", "chilling", "read core 79f"),
        ("ice bath 34", "chilling", "ask"),
        ("ice bath, went in at 138", "resting", "done chill & read core 138f"),
        ("breast 158 thigh 171", "cooking", "read core 158f, core 171f"),
        ("3.5lb corned beef from the shop in the pouch just wanna smoke it", "none", "ask"),
        ("4 more coming", "curing", "ask"),
        ("4 more bodies, makes 16", "curing", "ask feed"),
        ("how much brisket do i get for 14 grown men, sandwiches", "none", "ask sum"),
        ("my brothers got it til i land tues", "curing", "hand brother"),
        ("dont wake me unless fires out", "cooking", "settings quiet"),
        ("stuck at work, home round nine", "curing", "pause"),
        ("the darn thing finally says like 171 mate", "cooking", "ask"),
    ],
)
def test_kinds_of_talk_that_were_misread(text: str, phase: str, meant: str) -> None:
    """One line of each kind: what is denied, run together, beside the ice, or said of others."""
    cores = {"cooking": 65.5, "chilling": 30.0, "resting": 72.0}
    assert short(read(text, context(phase, POUNDS, last_core_c=cores.get(phase)))) == meant


@pytest.mark.parametrize(
    ("text", "phase", "due", "meant"),
    [
        ("resting in the oven at 150", "resting", None, "done rest & ask"),
        ("meats on 8.15", "drying", None, "done meat_on @08:15"),
        ("dinners at 6 not 5", "curing", "flip/3", "meal sat18:00"),
        ("make it 5pm", "curing", "flip/3", "meal sat17:00"),
        ("bagged n in ice", "resting", "chill", "done chill"),
        ("3 days", "curing", "flip/3", "ask"),
        ("12 g", "waiting", None, "ask"),
        ("fridge 5 c since lunch", "curing", None, "read fridge 5c"),
        ("that reading was the grate", "cooking", None, "fix"),
        ("wrong day its sunday", "curing", None, "meal sun13:00"),
        ("flip at 7 and 7 from now on", "curing", None, "settings flips"),
        ("flat 2.9kg cure #1 dry sunday lunch", "none", None, "start brisket_flat 2.9kg dry sun ?strength"),
        ("pork shoulder 4 lb bone in bacon", "none", None, "start shoulder shoulder_bone_in 1.814kg"),
        ("brisket flat 6 lb already thawed need it thurs noon", "none", None, "start brisket_flat 2.722kg thu12:00"),
    ],
)
def test_an_hour_is_no_reading_and_a_meal_no_flip(text: str, phase: str, due: str | None, meant: str) -> None:
    """What a number belongs to is told by the words about it."""
    cores = {"cooking": 65.5, "resting": 72.0}
    assert short(read(text, context(phase, POUNDS, last_core_c=cores.get(phase), due_step=due))) == meant


@pytest.mark.parametrize(
    ("text", "phase", "due", "meant"),
    [
        ("on at 7.10 pit 235", "drying", None, "done meat_on @07:10 & read pit 235f"),
        ("no flip today was out", "curing", None, "question"),
        ("left it out", "curing", None, "happened left_out"),
        ("68 68 69 last 3 readings", "cooking", None, "read core 68c, core 68c, core 69c"),
        ("lower the pit to 225", "cooking", None, "set pit=107c"),
        ("wrong temp its 152", "cooking", None, "fix 152"),
        ("that flip was this morning not last night", "curing", None, "fix @08:00"),
        ("i weighed it wrong its 6.4", "waiting", None, "set mass=2.903kg"),
        ("change 7 to 7.5 lb", "waiting", None, "set mass=3.402kg"),
        ("i only used half the cure", "waiting", None, "ask"),
        ("it says 0.6 on the bag", "waiting", None, "ask"),
        ("quiet til 8", "curing", None, "pause"),
        ("oh its the other flat", "curing", None, "ask"),
        ("out", "cooking", None, "ask"),
        ("out", "drying", "out", "done out"),
        ("sorry i meant friday", "curing", None, "ask"),
        ("flat 7lbs 3oz 2.25 thick", "none", None, "start brisket_flat 3.26kg 57mm"),
    ],
)
def test_what_is_put_right_or_asked(text: str, phase: str, due: str | None, meant: str) -> None:
    """What was said before is put right in one's own words; a dose by half is asked in grams."""
    units = KILOS if text.startswith("68") else POUNDS
    where = context(phase, units, last_core_c={"cooking": 65.5}.get(phase), due_step=due, mass=3.175)
    assert short(read(text, where)) == meant


@pytest.mark.parametrize(
    ("text", "phase", "due", "meant"),
    [
        ("2.1 in the middle 1.6 ends", "waiting", None, "ask"),
        ("meat went on 8ish", "drying", None, "done meat_on @08:00"),
        ("pit at 300 closed the vents", "cooking", None, "read pit 300f"),
        ("flipped but bag has a hole", "curing", None, "done flip & happened leaked"),
        ("flip + fridge 36", "curing", None, "done flip & read fridge 36f"),
        ("ask me tomorrow", "curing", "flip/3", "later @09:00"),
        ("guests now 6.30", "cooking", None, "meal sat18:30"),
        ("change date to the 5th", "curing", None, "meal fri13:00"),
        ("too low", "cooking", None, "ask"),
        ("it was the fridge not the pit", "cooking", None, "fix"),
        ("i flipped it yesterday not today", "curing", None, "fix day"),
        ("i meant 5 lb", "waiting", None, "set mass=2.268kg"),
        ("only 15g went in", "waiting", None, "set put_in_cure=15g"),
        ("take back the flip", "curing", None, "undo"),
        ("smoked trout 6 of em about 12 oz", "none", None, "start trout ?share"),
        ("10 pounder flat", "none", None, "start brisket_flat 4.536kg"),
        ("tomorrow", "curing", "flip/3", "ask"),
        ("just checked its 37", "curing", None, "read fridge 37f"),
    ],
)
def test_more_of_what_a_number_belongs_to(text: str, phase: str, due: str | None, meant: str) -> None:
    """An hour after a deed, a thickness before the cure, a weight of each."""
    where = context(phase, POUNDS, last_core_c={"cooking": 65.5}.get(phase), due_step=due, mass=3.175)
    assert short(read(text, where)) == meant


@pytest.mark.parametrize(
    ("text", "phase", "due", "meant"),
    [
        ("smoked chicken 2 birds 4lb ea sunday 2pm", "none", None, "start chicken 3.629kg sun14:00"),
        ("duck breast x4 1.4kg total", "none", None, "start duck 1.4kg"),
        ("turkey breast 3kg for sat 5ish", "none", None, "start turkey 3kg sat17:00"),
        ("bout 2 and a quarter thick", "waiting", None, "set thickness=57mm"),
        ("jar just says pink curing salt no number", "waiting", None, "ask"),
        ("add a 3lb flat to the same tub", "curing", None, "ask"),
        ("grate 238 lid says 270", "cooking", None, "read pit 238f"),
        ("37 bottom shelf 43 in the door", "curing", None, "read fridge 37f, fridge 43f"),
        ("missed 2 days of flips soz done now", "curing", "flip/3", "missed flip & done flip"),
        ("flip done bags leaking", "curing", None, "done flip & happened leaked"),
        ("chucked it. smelt off", "curing", None, "cancel"),
        ("they want fri nite now not sat", "curing", None, "meal fri20:00"),
        ("pull it at 185 this time", "cooking", None, "set target_c=85.0"),
        ("ignore the last 1 probe was on the bone", "cooking", None, "undo"),
        ("pink in the middle", "resting", None, "ask"),
        ("a bit more?", "curing", None, "ask"),
        ("4.25 lb out of 7", "stored", None, "debrief"),
    ],
)
def test_what_the_first_look_at_another_set_taught(text: str, phase: str, due: str | None, meant: str) -> None:
    """Kinds of talk of a hand that nobody here had read: a weight of each, the dial of the lid, what is thrown away."""
    where = context(phase, POUNDS, last_core_c={"cooking": 65.5}.get(phase), due_step=due, mass=3.175)
    assert short(read(text, where)) == meant


@pytest.mark.parametrize(
    ("text", "phase", "due", "meant"),
    [
        ("duck breast 2 pcs a 380 gr", "none", None, "start duck 0.76kg"),
        ("pastrami a 6 lb flat", "none", None, "start pastrami brisket_flat 2.722kg"),
        ("got 2.8k of silverside to corn", "none", None, "start corned_beef beef_round 2.8kg"),
        ("packet reads 5.88 nitrite", "waiting", None, "ask"),
        ("never frozen, butcher cut it this morning", "waiting", None, "set frozen=False"),
        ("6 or 7 i reckon", "waiting", None, "ask"),
        ("cooker wont go past 190 ive got everything open", "cooking", None, "read pit 190f"),
        ("sory fat thumbs 147", "cooking", None, "fix 147"),
        ("gonna run it at 275 from here", "cooking", None, "set pit=135c"),
        ("👍 7.40", "curing", "flip/3", "done @07:40"),
        ("the probe was on the bench", "curing", None, "question"),
        ("dog ate it", "resting", None, "question"),
        ("gone a funny grey", "curing", None, "ask"),
        ("partys off no date any more, keep curing", "curing", None, "set deadline=None"),
    ],
)
def test_what_the_first_look_at_a_wilder_set_taught(text: str, phase: str, due: str | None, meant: str) -> None:
    """A slangy hand: the figures first, and no incident where only the probe lay about."""
    where = context(phase, POUNDS, last_core_c={"cooking": 65.5, "resting": 72.0}.get(phase), due_step=due, mass=3.175)
    assert short(read(text, where)) == meant


@pytest.mark.parametrize("hour", ["8", "at 8", "@ 8", "8ish", "around 8", "7.40", "at 7.40", "0740", "about 7.30"])
@pytest.mark.parametrize(
    ("phase", "deed"),
    [
        ("drying", "lit it"),
        ("drying", "meat on"),
        ("cooking", "wrapped it"),
        ("cooking", "pulled it"),
        ("waiting", "meat in"),
    ],
)
def test_an_hour_beside_a_deed_is_no_temperature(phase: str, deed: str, hour: str) -> None:
    """Before it or after it, with a comma or without."""
    where = context(phase, KILOS, last_core_c={"cooking": 66.0}.get(phase))
    for line in (f"{deed} {hour}", f"{deed}, {hour}", *([f"{hour} {deed}"] if hour[0] in "a@" else [])):
        assert "read" not in short(read(line, where)), line


def test_in_the_brine_at_eight() -> None:
    """Put in at eight, or eight degrees in there: asked about."""
    for line in ("in the brine 8", "at 8 in the brine"):
        assert short(read(line, context("waiting", KILOS))) == "ask"
