"""Wishes in one breath, another meat, two places of one fridge, wood put on with the lid open, and more of what."""

import pytest

from bot.intents.intents import Ask, Debrief, MoveDeadline, Unclear
from bot.intents.read import read
from tests.rooms.intents.shorthand import short
from tests.talk_lines import POUNDS, context, wall


@pytest.mark.parametrize(
    ("text", "phase", "meant"),
    [
        ("guests coming sunday now not sat", "curing", "meal sun13:00"),
        ("everyone is coming sunday", "curing", "meal sun13:00"),
        ("they're coming sunday instead", "curing", "meal sun13:00"),
        ("people coming fri now", "curing", "meal fri13:00"),
        ("family coming on sunday not saturday", "curing", "meal sun13:00"),
        ("move it to the coming sunday", "curing", "meal sun13:00"),
        ("can we have it saturday at one instead, and use foil", "curing", "meal sat13:00 & set wrap=foil"),
        ("can we eat at 3 and wrap it in paper", "curing", "meal sat15:00 & set wrap=paper"),
        ("can we push it to 3, and make it dry", "curing", "meal sat15:00 & set method=dry"),
        ("can we do dinner at 6 instead, foil not paper", "curing", "meal sat18:00 & set wrap=foil"),
        ("can we eat at 3? how long left", "curing", "meal sat15:00"),
        ("dinner at one", "curing", "meal sat13:00"),
        ("lunch at one please", "curing", "meal sat13:00"),
        ("swap salmon for trout", "waiting", "set product=trout & set cut=trout"),
        ("make it trout", "waiting", "set product=trout & set cut=trout"),
        ("got trout instead of salmon", "waiting", "set product=trout & set cut=trout"),
        ("change to trout", "waiting", "set product=trout & set cut=trout"),
        ("its trout now", "waiting", "set product=trout & set cut=trout"),
        ("replace the flat with the point", "waiting", "set cut=brisket_point"),
        ("use pork loin instead", "waiting", "set product=back_bacon & set cut=pork_loin"),
        ("trout rather than salmon", "waiting", "set product=trout & set cut=trout"),
        ("switch to duck", "waiting", "set product=duck & set cut=duck_breast"),
        ("38 in the fridge 41 in the door", "brining", "read fridge 38f, fridge 41f"),
        ("fridge 38, door 41", "brining", "read fridge 38f, fridge 41f"),
        ("top shelf 41 bottom 37", "brining", "read fridge 41f, fridge 37f"),
        ("fridge 37 at the back and 41 at the front", "brining", "read fridge 37f, fridge 41f"),
        ("38 on the bottom shelf 42 up top", "brining", "read fridge 38f, fridge 42f"),
        ("fridge 38 to 41", "brining", "ask"),
        ("door of the fridge left open, 41", "brining", "happened warm_fridge & ask"),
        ("38 in the fridge 41 in the door", "curing", "read fridge 38f, fridge 41f"),
        ("fridge back 36 front 39", "curing", "read fridge 36f, fridge 39f"),
        ("fridge door 44 shelf 38", "curing", "read fridge 44f, fridge 38f"),
        ("2c on the bottom shelf and 5c in the door", "curing", "read fridge 2c, fridge 5c"),
        ("fridge 38 to 41", "curing", "ask"),
        ("put more in", "curing", "ask"),
        ("added some more to it", "curing", "ask"),
        ("can i add more", "curing", "ask"),
        ("chucked a bit more in", "curing", "ask"),
        ("spritzed n added a split", "cooking", "happened lid"),
        ("spritzed it and put a log on", "cooking", "happened lid"),
        ("added a split", "cooking", "ask"),
        ("used 10% like it says", "waiting", "ask"),
        ("10% pump like the recipe", "waiting", "set pump_fraction=10%"),
        ("turkey140 pastrami", "none", "question"),
        ("added two chunks and mopped it", "cooking", "happened lid"),
        ("how much charcoal, i added two chunks", "cooking", "ask sum"),
        ("put more charcoal in", "cooking", "ask"),
        ("added charcoal, pit 250", "cooking", "read pit 250f"),
        ("opened it up, chucked a log on and basted", "cooking", "happened lid"),
        ("theyre coming friday instead", "curing", "meal fri13:00"),
        ("topped it up with coals", "cooking", "ask"),
        ("how much fuel", "cooking", "ask fuel"),
        ("do i need more charcoal", "cooking", "ask fuel"),
        ("its 37 now can it go in", "brining", "read brine 37f"),
        ("brine 39 may i put it in", "brining", "read brine 39f"),
        ("37 now, can it go in", "brining", "read brine 37f"),
        ("gonna put it in tmrw am instead", "brining", "later @09:00"),
        ("ill take it out tomorrow instead", "curing", "question"),
        ("my kid turned the fridge up its 46", "curing", "read fridge 46f"),
        ("somebody turned the fridge off, now its 52", "curing", "read fridge 52f"),
        ("took it out by mistake put it back", "curing", "happened left_out"),
        ("pulled it out of the bag, put it straight back", "curing", "happened left_out"),
        ("its at 158 dropped from 160", "cooking", "read core 158f"),
        ("158 down from 160", "cooking", "read core 158f"),
        ("pit 240 down from 260", "cooking", "read pit 240f"),
        ("204 in the fat 190 in the lean", "cooking", "read core 190f"),
        ("its 190 now should i wrap it", "cooking", "read core 190f & ask wrap"),
        ("gonna eat it hot wednesday", "cooking", "set purpose=hot & meal wed13:00"),
        ("hot pls", "waiting", "set purpose=hot"),
        ("hot not cold", "curing", "set purpose=hot"),
        ("meant cold not hot", "curing", "set purpose=cold"),
        ("sorry i meant hot", "waiting", "set purpose=hot"),
        ("hot, 6pm", "waiting", "set purpose=hot & meal sat18:00"),
        ("hot dinner at 6", "curing", "set purpose=hot & meal sat18:00"),
        ("eat it hot at 6pm", "curing", "set purpose=hot & meal sat18:00"),
        ("serving cold at 2", "curing", "set purpose=cold & meal sat14:00"),
        ("warm sandwiches please", "waiting", "set purpose=hot"),
        ("its hot", "cooking", "ask"),
        ("not hot", "cooking", "question"),
        ("how we doin", "cooking", "ask catch_up"),
        ("how are we doing", "curing", "ask catch_up"),
        ("moved to fridge at 2", "chilling", "ask"),
        ("moved it to the fridge at 2", "chilling", "ask"),
        ("moved it to the fridge at 2pm", "chilling", "ask"),
        ("91 down from 120", "chilling", "read core 91f"),
        ("96 in the thick bit 41 water", "chilling", "read core 96f"),
        ("96 core, water 41", "chilling", "read core 96f"),
        ("water 40 meat 90", "chilling", "read core 90f"),
        ("40 water", "chilling", "ask"),
        ("124/45", "chilling", "read core 124f & ask"),
        ("my son is doing tonights flip", "curing", "hand son"),
        ("dad is doing the morning flip", "curing", "hand dad"),
        ("bob will do tomorrows flip", "curing", "hand bob"),
        ("can we do tomorrow", "curing", "question"),
        ("got 5 lb belly what now", "none", "start bacon 2.268kg"),
        ("have a 7 lb flat, now what", "none", "start brisket_flat 3.175kg"),
        ("left probe 156 right probe 152", "cooking", "read core 156f, core 152f"),
        ("pit swinging 240-265", "cooking", "ask"),
        ("not there yet 180", "cooking", "read core 180f"),
        ("not cold yet 46", "brining", "read brine 46f"),
        ("46 not cold enough yet", "brining", "read brine 46f"),
        ("cook to 203", "waiting", "set target_c=95.0"),
        ("pull at 195 and slice", "curing", "set target_c=90.5555555556"),
        ("cook at 250", "waiting", "set pit=121c"),
        ("thin 1.5 thick 2.2", "waiting", "ask"),
        ("its tapered 1.25 to 2", "waiting", "ask"),
        ("3.2 kg sorry not lbs", "waiting", "set mass=3.2kg"),
        ("154 thick 160 thin", "cooking", "read core 154f, core 160f"),
        ("i meant 250 pit", "cooking", "fix 250"),
        ("40 water 88 meat", "chilling", "read core 88f"),
        ("smoke w hickory", "waiting", "set wood=hickory"),
        ("its 2 and 1/4 in", "waiting", "set thickness=57mm"),
        ("150>155", "cooking", "read core 155f"),
        ("no change, 150", "cooking", "read core 150f"),
        ("int 154 amb 251", "cooking", "read core 154f, pit 251f"),
        ("140->99", "chilling", "read core 99f"),
        ("its only for 4 people", "waiting", "ask feed"),
        ("fridge bounces 38-43", "curing", "ask"),
        ("fridge swinging between 37 and 44", "curing", "ask"),
        ("fridge 38 avg", "curing", "ask"),
        ("a hair under 165", "cooking", "ask"),
        ("pit at 245 now was 280", "cooking", "read pit 245f"),
        ("pit 300 for a bit now 260", "cooking", "read pit 260f"),
        ("middle 99 outside 60", "chilling", "read core 99f"),
        ("core 70f surface 45", "chilling", "ask & read core 70f"),
        ("edge 45", "chilling", "ask"),
        ("no foil no paper", "waiting", "set wrap=none"),
        ("gonna use the drum", "curing", "settings cooker"),
        ("not pastrami corned beef", "waiting", "set product=corned_beef"),
        ("hot pastrami sandwiches", "waiting", "set purpose=hot"),
        ("i misread its 145", "cooking", "fix 145"),
        ("bark is set at 161", "cooking", "read core 161f"),
        ("color is nice, 158", "cooking", "read core 158f"),
        ("wrap at 165 in paper", "waiting", "set wrap=paper"),
        ("ill use the oven", "waiting", "settings cooker"),
        ("vac bag not brine", "waiting", "set method=dry"),
        ("start thursday instead of now", "waiting", "later @09:00"),
        ("cant start til thursday", "waiting", "later @09:00"),
        ("1pm sharp no later", "waiting", "meal sat13:00"),
        ("12.9 g cure not 12.6 went in", "curing", "set put_in_cure=12.9g"),
        ("move it to saturday", "curing", "meal sat13:00"),
        ("moved it to the other fridge at 38", "curing", "read fridge 38f"),
        ("duck breasts 4 abt 2lb all in hot smoke friday", "none", "start duck 0.9072kg fri"),
        ("trout fillets 6, 1.2kg smoked saturday", "none", "start trout 1.2kg sat"),
        ("can we do it sunday instead", "curing", "meal sun13:00"),
        ("gonna eat it hot tonight", "cooking", "set purpose=hot & meal mon20:00"),
        ("ill put it in tonight at 9", "brining", "later @21:00"),
        ("well put the meat in the brine on wednesday", "brining", "later @09:00"),
        ("got 3 bellies 4 4 and 5 lb", "none", "start bacon 5.897kg"),
    ],
)
def test_wishes_and_places(text: str, phase: str, meant: str) -> None:
    """A brine that cools is «brining»: no number of a fridge beside it is its own."""
    told = {"brine_made": True} if phase == "brining" else {}
    where = "waiting" if phase == "brining" else phase
    core = {"cooking": 65.5}.get(phase)
    assert short(read(text, context(where, POUNDS, last_core_c=core, mass=3.175, **told))) == meant


@pytest.mark.parametrize(
    ("text", "kilos"),
    [
        ("pink through, bit salty, 5.1 lb", 2.313),
        ("no grey, 8/10, 2.2kg", 2.2),
        ("pink all the way, salt spot on, 5 lb", 2.268),
        ("a bit bland, pink through, 2 kg", 2.0),
        ("pink through, bit salty, 15 lb", None),
    ],
)
def test_a_weight_beside_what_the_slice_showed(text: str, kilos: float | None) -> None:
    """Told with the slice, a weight that can be left of the piece is kept; a weight that cannot be is not."""
    found = read(text, context("stored", POUNDS, mass=3.175))
    masses = [intent.mass for intent in found if isinstance(intent, Debrief)]
    assert masses == [pytest.approx(kilos, abs=1e-3) if kilos else None]


@pytest.mark.parametrize(
    ("text", "change"), [("used 10% like it says", "method"), ("used 12% like it says", "pump_fraction")]
)
def test_a_share_that_is_no_strength(text: str, change: str) -> None:
    """Ten percent is no strength of a curing salt: the pickle that is pumped in is offered, and nothing is taken."""
    (asked,) = read(text, context("waiting", POUNDS))
    assert isinstance(asked, Unclear)
    assert [list(option.changes) for option in asked.options] == [[change]]


@pytest.mark.parametrize(
    "text",
    ["eating now", "we're eating", "its on the table", "serving it now", "dishing up", "we're all sitting down to eat",
     "dinner is on the table", "tucking in now", "plating up", "eating it now"],
)  # fmt: skip
def test_at_the_table(text: str) -> None:
    """Of meat that is cooked and cold it is the meal; of meat that still chills how hot it has to be is told."""
    assert short(read(text, context("stored", POUNDS))) == "done serve"
    assert short(read(text, context("chilling", POUNDS, last_core_c=4.0))) == "done serve"
    assert short(read(text, context("chilling", POUNDS, last_core_c=60.0))) == "ask"


@pytest.mark.parametrize(
    "text", ["eating at 3", "are we eating now", "eating now?", "when are we eating", "only 6 eating now"]
)
def test_not_at_the_table(text: str) -> None:
    """A question, an hour to come or a number of guests is no meal that has begun."""
    assert "serve" not in short(read(text, context("stored", POUNDS)))


@pytest.mark.parametrize(
    "text", ["how is it", "hows it doing", "how are they today?", "so how is everything coming along"]
)
def test_how_it_stands(text: str) -> None:
    """Asked of nothing else, it is what the batch is at."""
    assert short(read(text, context("curing", POUNDS))) == "ask catch_up"


def test_a_meal_that_is_asked_for_twice() -> None:
    """A wish and a question: the meal moves, beside the fire to that hour of today, and the question is answered."""
    moved, asked = read("can we eat at 3? and how long left", context("cooking", POUNDS))
    assert moved == MoveDeadline(to=wall(3, 1, 15))
    assert isinstance(asked, Ask)
