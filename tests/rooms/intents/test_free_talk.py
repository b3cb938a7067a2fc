"""What is told with words around it: each statement of a line is taken or asked about. Phrasings are invented."""

import pytest

from bot.intents.intents import Reading, StepDone, StepMissed, Unclear
from bot.intents.read import read
from tests.rooms.intents.shorthand import short
from tests.talk_lines import context

_LAST_CORE = {"cooking": 64.0, "resting": 92.0, "chilling": 50.0}


def _read(text: str, phase: str) -> list:
    batches = () if phase == "none" else (("x", "Flat"),)
    return read(text, context(phase, last_core_c=_LAST_CORE.get(phase), batch="x", batches=batches))


@pytest.mark.parametrize(
    ("text", "phase", "meant"),
    [
        ("papered it 12:40 was 158 then", "cooking", "done wrap @00:40 & read core 158f"),
        ("foiled it ten to 1", "cooking", "done wrap @00:50"),
        (
            "pit 228 core 151 gonna do paper at 160 and my brother mike has it from 4",
            "cooking",
            "read pit 228f, core 151f & set wrap=paper & hand mike",
        ),
        (
            "202 like butter took it off its sitting in the cooler w towels",
            "cooking",
            "read core 202f & done off & done rest",
        ),
        ("203 pulled it resting in the oven at 150", "cooking", "read core 203f & done off & done rest"),
        ("kids are driving me nuts wrapped it in foil", "cooking", "done wrap"),
        ("forget the foil its going naked all the way", "cooking", "set wrap=none"),
        ("gonna leave it naked no foil", "cooking", "set wrap=none"),
        ("gonna do butcher paper instead of foil", "cooking", "set wrap=paper"),
        ("smells unreal took it off", "cooking", "done off"),
        ("197 now prob tender smoke ring looks mint", "cooking", "read core 197f"),
        ("missed the 12 check, its 157 now", "cooking", "read core 157f"),
        ("its crawling 153 pit holding at 250 no wrap yet", "cooking", "read core 153f, pit 250f"),
        ("pulling them", "cooking", "done off"),
        ("it came off at 203", "cooking", "read core 203f & done off"),
        ("driving ask again at half past", "cooking", "later @08:30"),
        ("call me back in a quarter hour", "cooking", "later @08:45"),
        ("hold that thought 15 min", "cooking", "later @08:45"),
        ("dang 152 i flipped the numbers", "cooking", "fix 152"),
        ("scrap that it was 145", "cooking", "fix 145"),
        ("four more comin so thats 12 will it stretch", "cooking", "ask feed"),
        ("only eating 4 now", "cooking", "ask feed"),
        ("135 core 200 pit pushing dinner to 7", "cooking", "meal sat19:00 & read core 135f, pit 200f"),
        ("reading 155 on the thermometer", "cooking", "read core 155f"),
        ("151 or 251 cant tell suns on the screen", "cooking", "ask"),
        ("in a meeting hit me up in 45", "curing", "later @09:15"),
        ("try me 8:30 tonite", "curing", "later @20:30"),
        ("nag me in the mornin", "curing", "later @08:00"),
        ("havent touched it since monday sorry", "curing", "missed flip"),
        ("been 3 days since i last turned it my bad", "curing", "missed flip"),
        ("totally spaced the flip last night, turned it just now", "curing", "missed flip & done flip"),
        ("slept thru last nites turn sorry did it at 6 this mornin", "curing", "missed flip & done flip @06:00"),
        ("overslept, flipped at 7 instead of 6", "curing", "fix @07:00"),
        ("dog tried to get at it again flipped em both", "curing", "done flip"),
        ("take that out i only looked at it", "curing", "undo"),
        ("can we make it two oclock theres a christening before", "curing", "meal sat14:00"),
        ("meals sunday not saturday now", "curing", "meal sun13:00"),
        ("gonna have to push it back", "curing", "ask"),
        ("changed my mind want it for sandwiches cold", "curing", "set purpose=cold"),
        ("my nan is coming she's 83", "curing", "set risk=True"),
        ("my pregnant sister in law is joining us", "curing", "set risk=True"),
        ("wife has the bag this weekend", "curing", "hand wife"),
        ("only ping me if something's wrong", "curing", "pause"),
        ("flyin out tomorrow back tuesday night my boy jake is minding it", "curing", "hand jake & pause"),
        ("injected again and turned fridge at 35", "curing", "set method=inject & done flip & read fridge 35f"),
        ("2,5 on the wee celsius thermometer next to it", "curing", "read fridge 2.5c"),
        ("flipped, 37, smells great, guests now 9", "curing", "done flip & read fridge 37f & ask feed"),
        ("another bacon same as last time", "curing", "start bacon"),
        ("not doing pastrami anymore just smoke it plain", "curing", "ask"),
        ("39 or 40", "curing", "ask"),
        ("couldnt wait put it in already", "waiting", "done into_cure"),
        ("smokes gone thin and blue so i threw it on", "drying", "done meat_on"),
        ("chimney's going", "drying", "done light"),
        ("pepper n coriander on every side back in the fridge no cover", "drying", "done rub & done dry"),
        ("smoker on, aiming 200", "drying", "done light & set pit=93c"),
        ("ok its in now", "resting", "ask"),
        ("155 now chucking it in the ice", "resting", "done chill & read core 155f"),
        ("165 now still in towels eating at 8 instead", "resting", "meal sat20:00 & read core 165f"),
        ("came off at 4:45 really", "resting", "done off @04:45"),
        ("ice water did the trick 84 in the middle", "chilling", "read core 84f"),
        ("ran out of ice round 6:20 only just noticed", "chilling", "ask"),
        ("ice all melted a while back n i forgot about it what now", "chilling", "ask"),
        ("95 core water 38 more ice in", "chilling", "read core 95f"),
        (
            "turkey breast 3 and 3/4 lb i have the 6.25 stuff need it thurs noon",
            "none",
            "start turkey 1.701kg thu12:00",
        ),
        ("boneless ham 9 lb. cure is 6.25. want it sunday at 2", "none", "start ham ham_boned 4.082kg sun14:00"),
        ("20lb ham bone in six in thru the middle sunday 5 pm", "none", "start ham ham_bone_in 9.072kg 152mm sun17:00"),
        (
            "7 lb flat pastrami pink salt for mar 20 1pm",
            "none",
            "start pastrami brisket_flat 3.175kg sat13:00 ?strength",
        ),
    ],
)
def test_what_is_told_freely(text: str, phase: str, meant: str) -> None:
    """Deeds, readings, wishes and second thoughts, as one says them in passing."""
    assert short(_read(text, phase)) == meant


@pytest.mark.parametrize(
    ("text", "phase"),
    [
        ("should i leave it naked no foil", "cooking"),
        ("my uncle says wrap at 150 but i dont trust him", "cooking"),
        ("dont pull it yet", "cooking"),
        ("is thin and blue smoke right", "drying"),
        ("thinking of throwing it on at 9", "drying"),
        ("havent wrapped it", "cooking"),
        ("keep the fridge under 40", "curing"),
        ("what if the ice all melts", "chilling"),
        ("does like butter mean done", "cooking"),
        ("which is right 151 or 251?", "cooking"),
    ],
)
def test_what_is_asked_or_denied_is_no_deed_and_no_reading(text: str, phase: str) -> None:
    """The same words, asked, denied or told of somebody else."""
    assert not any(isinstance(one, StepDone | StepMissed | Reading) for one in _read(text, phase))


def test_a_remark_is_no_part_that_tells() -> None:
    """What smells off is never lost over a deed beside it."""
    for text in ("the bag smells sour flipped it", "flipped it smells sour", "smells sour flipped it"):
        asked, *_ = _read(text, "curing")
        assert isinstance(asked, Unclear)
        assert asked.why == "spoiled"
    assert not any(isinstance(one, StepDone) for one in _read("the bag is open flipped it", "curing")[1:])


def test_two_batches_in_a_line_without_a_comma() -> None:
    """What stands behind a name is that one's, up to the next name."""
    two = context("curing", batch="b", batches=(("b", "Bacon"), ("f", "Flat")))
    said = read("flat flipped fridge 38 bacon was leaking so new bag for that", two)
    assert [(type(one).__name__, one.batch) for one in said] == [("StepDone", "f"), ("Reading", "f"), ("Happened", "b")]
    (put_in,) = read("put the bacon in with the flat", context("waiting", batch="b", batches=two.batches))
    assert put_in.batch == "b"
