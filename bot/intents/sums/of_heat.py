"""What a line tells of heat: a fall, a rise, a fire that went out, a core that climbs slowly, one that was held."""

from itertools import pairwise
from typing import Final

from bot import measures
from bot.intents.sums.told import Told, told
from core import patterns as re
from core.units import Celsius, Hours

RATE: Final = re.compile(  # «3 degrees an hour», «8 per hour»
    r"(?<![\d.])(\d{1,2}(?:\.\d)?) ?(?:(?:degrees?|deg|[cfk]) (?:an?|per|every|each)? ?(?:1 )?"
    r"|(?:an?|per|every|each|/) ?(?:1 )?)h(?:ou)?r\b(?! ago)"
    r"|(?<![\d.])(\d{1,2}(?:\.\d)?) ?(?:degrees?|deg|[cfk])? ?(?:in|over) (?:the )?(?:last |past )"
    r"(?:1 |an )?h(?:ou)?r\b"
)
_DROPS: Final = re.compile(  # «dropping 5 an hour»
    r"\b(?:drop(?:s|ping|ped)?|los(?:es|ing|t)|fall(?:s|ing)?|fell|going down|comes? down|sinks?|sinking|cool(?:s|ing))"
    r"(?: (?:by|at|about|around|only|some|roughly))* (?=\d)"
)
_NOW_FIRST: Final = re.compile(r"^\D{0,12}\b(?:woke(?: up)?|now)\b\D{0,8}\d")  # «woke 5:20 … 141 at 3:50»
_ON_THE_FIRE: Final = re.compile(
    r"\b(?:at \d{3}|on|smoker|smok(?:ed|ing)|pit|grill|fire|cook(?:ed|ing)?|oven|in and"
    r"|after \d+ ?(?:h|hrs?|hours?)|reach|get to|hit|climb\w*)\b"
)
_SAT: Final = re.compile(r"\b(?:sat|sits|sitting|stood|left|lay|lying)\b")  # «sat at 100 F for 3 h»: on no fire by that
_AT_ITS_CORE: Final = re.compile(r"\bat \d{3}\b")
_OFF_THE_FIRE: Final = re.compile(
    r"\b(?:out|off|died|dead|cool\w*|chill\w*|ice|fridge|freezer|counter|table|held|hold\w*|rest\w*|kept|thaw\w*"
    r"|brine|cure|cured|woke|asleep)\b"
)
_ON_FOR: Final = re.compile(  # so long on the fire, and at no one temperature
    r"\bafter \d+ ?(?:h|hrs?|hours?)\b"
    r"|\b(?:been on|on since|on for|(?:h|hrs?|hours?) (?:on|in)\b|took .*\b(?:to|until|till?)\b|start(?:ed)? (?:at|it))"
)
_FELL: Final = re.compile(  # «fell under 140», «been below 140»
    r"\b(?:fell|falling|dropped|went|sank|been|was|is) (?:\w+ )?(?:under|below)\b"
)
_BACK_UP: Final = re.compile(r"\b(?:back|again|recovered|up (?:at|to))\b")
_LAST_NIGHT: Final = re.compile(r"\b(?:last night|over ?night|yesterday)\b")
TIMED: Final = re.compile(r"\b(?:since|left out|sat out|freezer|counter|power|room temp\w*|on the table)\b")
_COOLING: Final = re.compile(r"\b(?:cool\w*|chill\w*|overnight|next morning|took|down to)\b")
_TIME_ASKED: Final = re.compile(
    r"\b(?:how (?:long|many (?:min\w*|sec\w*|logs?))|what time|(?:minutes|time|mins) (?:needed|required|at)"
    r"|hold(?:ing)? time|(?:secs?|seconds?)(?=\W*$))\b"
)
_INTO_THE_COLD: Final = re.compile(r"\b(?:ice|chill\w*|cool(?:ing|ed|s)?(?! box\b)|cold|fridge|freezer)\b")
_IN_A_BOX: Final = re.compile(r"\b(?:cooler|esky|cool box|box(?:ed)?|towels?|blankets?|rest\w*|hold\w*|held|wrapped)\b")
_IN_THE_COLD: Final = re.compile(r"\b(?:ice|iced|fridge|freezer|chill\w*|cooling|cooled)\b")
_FIRE_LOST: Final = re.compile(
    r"\b(?:fire|died|dead|power|(?:went|ran|burn\w*|gone) out|coals?|gas|flames?|smoker|pit)\b"
)
_TAKEN_OFF: Final = re.compile(
    r"^(?:came |come |went )?off\b|\bpulled\b(?! pork)|\b(?:took|taken|pulled|came|take) (?:it |them |the \w+ )?off\b"
)
_DIED: Final = re.compile(r"\b(?:fire|died|dead|power|gas|coals?|flames?|(?:went|ran|burn\w*|gone|shut) (?:out|off))\b")
_TOOK_TO: Final = re.compile(r"\btook\b.*\bto (?:reach|get (?:up )?to|hit|come (?:up )?to|be)\b")
_PIT_TOLD: Final = re.compile(
    r"\b(?:pit|smoker|grill|cooker|fire|kamado)(?: (?:temp|is|was|reads?|says|at|now|only"
    r"|down to|fell to|dropped to|had been|been|its|it|stone|cold))*"
    r" (\d{2,3})\b(?! ?(?:min|h\b|hrs?|hours?|kg|lbs?))"
)
_FIRE_DIED: Final = re.compile(
    r"\b(?:fire|coals?|charcoal|flames?|pit|smoker|grill|cooker|kamado|kettle|burner|gas|propane|pellets?)"
    r" (?:.{0,14}\b)?"
    r"(?:died|dead|(?:went|goes|gone|is|was|ran|been|burn(?:ed|t)|shut|switched) (?:out|off)|stone cold|empty)\b"
    r"|\b(?:fire|smoker|grill|cooker|burner) (?:out|off)\b|\b(?:lost|no) (?:the |my )?(?:fire|flame)\b|\bflamed? ?out\b"
    r"|\b(?:power|current|electric\w*) (?:.{0,14}\b)?(?:cut|outage|fail\w*|out|off|killed|tripped)\b"
    r"|\b(?:tripped|blew) the (?:breaker|fuse)\b|\b(?:auger|hopper) (?:.{0,8}\b)?(?:jam\w*|stuck|empty)\b"
)
_READ_NOW: Final = re.compile(r"\b(?:now|still|reads?|says|shows|its|is)\b")
_AGO_READ: Final = re.compile(r"\b(?:was|were|last|then|when|before)\b")
_BY_WHEN: Final = re.compile(  # until when something has to be cold
    r"\b(?:when|what time|by when|how long|deadline|latest)\b.*\b(?:need\w*|must|ha(?:ve|s) (?:to|got)|should"
    r"|supposed|under|below|reach\w*|be|gotta|due|down to|till?|until|to hit)\b|\b(?:deadlines?|latest)\b"
    r"|\b(?:must|has to|needs to|should) (?:be|get|reach|hit)\b.*\b(?:by|until|till) when\b"
)
_COLD_ASKED: Final = re.compile(
    r"\b(?:cold|chilled|cool(?:ed|ing)(?: down)?|fridge cold"
    r"|(?:coming|going|on (?:its|the) way) down|dropping|falling)\b"
)
_BEGINS_COLD: Final = 54.4  # °C, 130 °F; from there down the rules of cooling count
_COLD_GOAL: Final = 30.0
HOTTEST_PIT_C: Final = 180.0
LOW_PIT_F, LOW_PIT_C = 200.0, 93.0  # of a pit that has left its cook. Judgement
A_NIGHT: Final = 6.0  # h; a fire that died «overnight» has been out for longer than any rule lets meat lie. Judgement
LONGEST_BELOW: Final = 2.0  # h; sooner the core may still be on its way up, and what it was before is asked for
_AGO: Final = re.compile(r"\bago\b|\bwas\b")
_BOXED: Final = re.compile(r"\b(?:cooler|esky|cool ?box|warm(?:ing)? drawer)\b")
RAISED_FROM: Final = 15.0  # °C; a core that has begun to climb
COOLEST_PIT: Final = 90.0  # °C; from there on it is the pit that is told
HOTTEST_MEAT: Final = 100.0
HOT_CORE: Final = 60.0  # °C, 140 °F: from there on no clock of a climb runs


IS_IT_ENOUGH: Final = re.compile(  # of the core that was read last
    r"(?:so |and )*(?:is|will|would) (?:that|this|it)(?: be)? (?:hot )?enough[ ?.!]*$"
)


CAN_WE_EAT: Final = re.compile(  # of what is still on the fire
    r"\b(?:can|may|should|shall|could) (?:i|we|they) (?:serve|eat|carve|dish (?:it )?up)"
    r"(?: (?:it|them|this|now|yet|already))*[ ?.!]*$"
)


def since_the_first(line: Told) -> list[Hours]:
    """Hours from the first clock that is told to each, each after the one before: «5pm», «6», «9am» are 0, 1 and 16."""
    out, since, is_open = [0.0], line.clocks[0], line.open_halves[0]
    for to, to_is_open in zip(line.clocks[1:], line.open_halves[1:], strict=True):
        out.append(out[-1] + _later((since, is_open), (to, to_is_open)))
        is_open = is_open and to_is_open
        since = (since + out[-1] - out[-2]) % 24.0 if to_is_open else to
    return out


def _later(since: tuple[Hours, bool], to: tuple[Hours, bool]) -> Hours:
    """The hours from one clock to the next, each with whether the half of its day is open.

    An open one is the next that reads so. From an open one to one of the morning the evening before is as likely as
    the same morning, and longer: nobody is told that meat was cold in time by the shorter.
    """
    (began, began_open), (ended, ended_open) = since, to
    if not (began_open or ended_open):
        return (ended - began) % 24.0
    near = (ended - began) % 12.0
    same_morning = began_open and not ended_open and ended < 12.0 and near <= ended
    return near + 12.0 if same_morning else near


def between(line: Told) -> float | None:
    """The hours from the first hour of the day that is told to the last, else the time that is told. [h]"""
    if len(line.clocks) < 2:
        return line.hours
    round_ = 12.0 if line.half_told else 24.0
    first, last = line.clocks[0], line.clocks[-1]
    if line.half_told and _LAST_NIGHT.search(line.text) and first <= last <= round_:  # «8 last night», and 9 of today
        return last - first + round_
    if _NOW_FIRST.search(line.text):
        return (first - last) % round_
    return _later((first, line.open_halves[0]), (last, line.open_halves[-1]))


def steps_down(line: Told) -> tuple[Celsius, ...]:
    """The temperatures of a line, one that is told twice in a row once: «203 to 130, then 130 to 75»."""
    hot = line.temperatures
    return tuple(t for n, t in enumerate(hot) if n == 0 or abs(t - hot[n - 1]) > 0.01)


def falls(line: Told) -> bool:
    """Temperatures of which each is colder than the one before, with how long it took."""
    hot = steps_down(line)
    lower = len(hot) > 1 and all(a > b for a, b in pairwise(hot))
    return lower and (len(line.clocks) > 1 or line.has("hours")) and hot[0] <= 105.0


def kept_hot(line: Told) -> bool:
    """A fall that ends at 60 °C or above, of a piece that nobody chills: it is kept for the table."""
    return falls(line) and line.temperatures[-1] >= HOT_CORE and not _INTO_THE_COLD.search(line.text)


def cools(line: Told) -> bool:
    """A fall, or one reading that is colder than hot meat, hours after a first clock."""
    one = len(line.temperatures) == 1 and line.temperatures[0] < 45.0
    timed = len(line.clocks) > 1 or (line.has("hours") and bool(_COOLING.search(line.text)))
    return falls(line) or (one and timed)


def rises(line: Told) -> bool:
    """Two readings and what is wanted, or one with how fast it rises."""
    if RATE.search(line.text):
        hot = told(RATE.sub(" ", line.text), line.reads_f).temperatures
        return len(hot) == 2 and hot[0] < hot[1]
    hot = in_time(line)
    return len(hot) > 2 and hot[0] < hot[1] < hot[-1]


def drops(line: Told) -> tuple[Celsius, Celsius] | None:
    """A core of meat that is kept hot and how much it loses in an hour: «168 at 1pm dropping 5 an hour»."""
    found = RATE.search(line.text) if _DROPS.search(line.text) else None
    if found is None:
        return None
    bare = told(RATE.sub(" ", line.text), line.reads_f)
    hot = [core for core in bare.temperatures if HOT_CORE < core <= HOTTEST_MEAT]
    units = {m.unit for m in measures.find(line.text) if m.kind == "temperature"}
    celsius = "c" in units or " c " in found[0] or not (units or line.reads_f)
    kelvin = float(found[1] or found[2]) / (1.0 if celsius else 1.8)
    return (hot[0], kelvin) if len(hot) == 1 and len(bare.temperatures) <= 2 and kelvin else None


def in_time(line: Told) -> tuple[Celsius, ...]:
    """The temperatures of a line in the order of their times: «160 now, was 152 an hour ago, want 195»."""
    hot = tuple(t for t in line.temperatures if t <= HOTTEST_MEAT)  # none of the pit beside them
    now_first = len(hot) == 3 and hot[0] > hot[1] and _AGO.search(line.text)
    return (hot[1], hot[0], hot[2]) if now_first else hot


def went_out(line: Told) -> bool:
    """Two readings that do not rise, or one and that it fell or the heat was lost, with the time that it took."""
    timed = len(line.clocks) > 1 or line.has("hours")
    fell = len(line.temperatures) == 1 and abs(line.temperatures[0] - HOT_CORE) < 1.0 and bool(_FELL.search(line.text))
    meat = (len(line.temperatures) > 1 or fell) and max(line.temperatures) <= HOTTEST_MEAT
    boxed = kept_hot(line) and _IN_A_BOX.search(line.text) and not _FIRE_LOST.search(line.text)
    chilled = _IN_THE_COLD.search(line.text) and not _FIRE_LOST.search(line.text)
    return meat and timed and not (rises(line) or boxed or chilled or _taken_off(line))


def _taken_off(line: Told) -> bool:
    """A fall of what was taken off the fire on purpose: «off at 2, 140, now 85»."""
    return falls(line) and bool(_TAKEN_OFF.search(line.text)) and not _DIED.search(line.text)


def beside_a_cold_pit(line: Told) -> Celsius | None:
    """The one core of a line that tells of a pit gone cold or low, or of a fire that died, and for how long.

    «pit 95, core 118 for 3 h», «fire died around 2, its 5 now and 118».
    """
    pits = [float(found[1]) for found in _PIT_TOLD.finditer(line.text)]
    hours = A_NIGHT if between(line) is None and _LAST_NIGHT.search(line.text) else between(line)
    if not (pits or _FIRE_DIED.search(line.text)) or hours is None:
        return None
    bare = told(_PIT_TOLD.sub(" ", line.text), line.reads_f)
    cores = [core for core in bare.temperatures if RAISED_FROM <= core <= HOTTEST_MEAT]
    f = line.reads_f or any(pit > HOTTEST_PIT_C for pit in pits)
    low = not pits or pits[-1] < (LOW_PIT_F if f else LOW_PIT_C)
    known = low and len(cores) == 1 and not RATE.search(line.text)
    if known and not pits and cores[0] >= HOT_CORE and (_AGO_READ.search(line.text) or not _READ_NOW.search(line.text)):
        return None  # «fire died 3 h ago, core was 158» says nothing of now
    judged = known and (cores[0] >= HOT_CORE or hours > LONGEST_BELOW)
    return cores[0] if judged else None


def cold_by(line: Told) -> bool:
    """Whether it is asked until when a core must be cold that was read hot at one hour: «140 at 3, when is 80 due»."""
    *goals, hot = sorted(line.temperatures) or [0.0]
    cold = all(goal <= _COLD_GOAL for goal in goals) and bool(goals or _COLD_ASKED.search(line.text))
    fall = cold and _BEGINS_COLD <= hot <= HOTTEST_MEAT
    return fall and len(line.clocks) == 1 and not line.durations and bool(_BY_WHEN.search(line.text))


def back_up(line: Told) -> bool:
    """Whether the last of its readings is one of a core that came back over 140 °F."""
    return line.temperatures[-1] >= HOT_CORE and bool(_BACK_UP.search(line.text))


def climbs(line: Told) -> bool:
    """One reading of a core that is no meal yet, so long after it went on the fire."""
    cores = [t for t in line.temperatures if t < COOLEST_PIT]
    reached = bool(_TOOK_TO.search(line.text))  # «took 8 h to reach 140»: the time is its way there
    one = (
        len(cores) == 1 and cores[0] >= RAISED_FROM and (cores[0] < HOT_CORE or (reached and cores[0] < HOT_CORE + 0.1))
    )
    timed = len(line.clocks) == 2 or (line.hours or 0.0) >= 1.0
    off = _OFF_THE_FIRE.search(line.text) or _FIRE_DIED.search(line.text)
    told_of = _AT_ITS_CORE.sub(" ", line.text) if _SAT.search(line.text) else line.text
    return one and timed and bool(_ON_THE_FIRE.search(told_of)) and not off


_PIT_AT: Final = re.compile(
    r"\b(?:pit|smoker|grill|cooker|oven|kettle) (?:(?:is|set|runs?|running|going|at|to|on) )+\d"
)


def held(line: Told) -> bool:
    """One temperature of a core, for a time or to ask for how long."""
    one = len(line.temperatures) == 1 and 45.0 <= line.temperatures[0] <= 80.0
    timed = line.has("hours") or bool(_TIME_ASKED.search(line.text))
    of_a_piece = line.has("meat") and not (line.species and (line.hours or 9.0) < 3.0)
    boxed = (line.hours or 0.0) >= 1.0 and bool(_BOXED.search(line.text))  # kept for the table, and no kill
    on_its_way = boxed or bool(_TOOK_TO.search(line.text)) or (climbs(line) and bool(_ON_FOR.search(line.text)))
    away = on_its_way or TIMED.search(line.text) or _PIT_AT.search(line.text)
    return one and timed and not of_a_piece and not away
