"""The scripted chat: what a line means, whose clock it is, and what is printed."""

import io
import json
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from bot.channels.lines import BadLine, Move, Press, Say, acts, instant
from bot.channels.script import ScriptedChat, Stage, perform
from bot.channels.talk import Talk
from bot.reply import Button, Document, Message, Outgoing, Picture, Reply

VIENNA = ZoneInfo("Europe/Vienna")
START = datetime(2027, 3, 1, 7, 0, tzinfo=UTC)  # 08:00 in Vienna
RECORD = Document(b"%PDF-1.7", "record-flat.pdf", "Ask for a smaller one.")
PICTURE = Picture(b"\x89PNG\r\n\x1a\nflat", "A curve that rises.", "cook")


@dataclass
class Outbox:
    """A bot of five lines: it says back what it hears, and reminds at the times that it was given."""

    stage: Stage
    heard: list[tuple[datetime, Message]] = field(default_factory=list)
    told: list[datetime] = field(default_factory=list)
    waiting: list[tuple[datetime, Reply, Message | None]] = field(default_factory=list)
    pictured: bool = False
    deaf: bool = False

    def __post_init__(self) -> None:
        self.chat = ScriptedChat(self.stage)

    @property
    def talk(self) -> Talk:
        return Talk(self.receive, self.round, self.next_due, self.told.append)

    def receive(self, message: Message, now: datetime) -> bool:
        self.heard.append((now, message))
        said = message.text or f"pressed {message.pressed}"
        later = Button("In 30 min", "later"), Button("Skip", "skip")
        self.waiting.append((now, Reply(f"heard {said}", ((Button("Done", f"done-{said}"),), later)), message))
        return True

    def next_due(self) -> datetime | None:
        return min((due for due, _, _ in self.waiting), default=None)

    async def round(self, now: datetime) -> int:
        ripe = sorted((row for row in self.waiting if row[0] <= now), key=lambda row: row[0])
        if self.deaf:
            return 0
        for row in ripe:
            self.waiting.remove(row)
            due, reply, message = row
            picture = PICTURE if self.pictured else None
            await self.chat.send(Outgoing("1", "you", due, reply, picture, answering=message.key if message else None))
        return len(ripe)

    async def plays(self, *lines: str | bytes) -> list[dict]:
        """Play lines; the objects that were printed."""
        before = len(self.stage.out.getvalue())
        await self.chat.play(lines, self.talk)
        return [json.loads(line) for line in self.stage.out.getvalue()[before:].splitlines()]


@pytest.fixture
def bot(tmp_path: Path) -> Outbox:
    return Outbox(Stage(START, VIENNA, io.StringIO(), tmp_path / "pictures", json=True))


@pytest.fixture
def plain(tmp_path: Path) -> Outbox:
    return Outbox(Stage(START, VIENNA, io.StringIO(), tmp_path / "pictures"))


def meant(*lines: str | bytes) -> list:
    return [act for _, act in acts(lines, START, VIENNA)]


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("3.2 kg brisket flat", [Say("3.2 kg brisket flat")]),
        ("   158/245  \n", [Say("158/245")]),
        ("", []),
        ("  \r\n", []),
        ("# only a comment", []),
        ("#a comment too", []),
        ("flipped   # an hour late", [Say("flipped")]),
        ("batch #2 is done", [Say("batch #2 is done")]),
        ("!Done", [Press("Done")]),
        ("! In 30 min ", [Press("In 30 min")]),
        ("!6.25 %  # as printed", [Press("6.25 %")]),
        ("as Marta: flipped", [Say("flipped", "Marta")]),
        ("as Old Ferdl: !Done", [Press("Done", "Old Ferdl")]),
        ("as usual, it is 48 mm", [Say("as usual, it is 48 mm")]),
        ("\\+1 for that", [Say("+1 for that")]),
        ("\\# not a comment # nor this", [Say("# not a comment # nor this")]),
        ("\\as Marta: she said", [Say("as Marta: she said")]),
        ("as Marta: \\!hello", [Say("!hello", "Marta")]),
        ("\\\\backslash", [Say("\\backslash")]),
        ("käse für €3 🧀".encode(), [Say("käse für €3 🧀")]),
        (b"\xef\xbb\xbfflipped\r\n", [Say("flipped")]),
        ("+30m", [Move(START + timedelta(minutes=30))]),
        ("+1h30m", [Move(START + timedelta(hours=1.5))]),
        ("+2d", [Move(START + timedelta(days=2))]),
        ("+1.5h", [Move(START + timedelta(hours=1.5))]),
        ("+1w2d3h4min5s", [Move(START + timedelta(weeks=1, days=2, hours=3, minutes=4, seconds=5))]),
        ("+30m flipped", [Move(START + timedelta(minutes=30)), Say("flipped")]),
        ("+30m\tas Marta: !Done", [Move(START + timedelta(minutes=30)), Press("Done", "Marta")]),
        ("+12h # overnight", [Move(START + timedelta(hours=12))]),
        ("+1h +30m 70c", [Move(START + timedelta(hours=1)), Move(START + timedelta(hours=1.5)), Say("70c")]),
        ("@2027-03-05T08:00", [Move(datetime(2027, 3, 5, 7, tzinfo=UTC))]),
        ("@2027-03-05T08:00:30 !Done", [Move(datetime(2027, 3, 5, 7, 0, 30, tzinfo=UTC)), Press("Done")]),
        ("@2027-03-05T08:00-06:00", [Move(datetime(2027, 3, 5, 14, tzinfo=UTC))]),
    ],
)
def test_a_line_means(line: str | bytes, expected: list) -> None:
    """Messages, moves, buttons, members and comments are told apart, and a backslash sends anything."""
    assert expected == meant(line)


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ("+", "no clock move"),
        ("+soon", "no clock move"),
        ("+30", "no clock move"),
        ("+1 for that", "no clock move"),
        ("+-3h", "no clock move"),
        ("@noon", "no local time"),
        ("@2027-03-05", "no local time"),
        ("@2027-13-05T08:00", "month"),
        ("@2027-02-28T08:00", "back in time"),
        ("@2027-03-28T02:30", "does not exist in Europe/Vienna"),
        ("+999999999w", "out of the calendar"),
        ("+9999999d", "out of the calendar"),
        ("@9999-12-31T23:59-12:00", "out of the calendar"),
        ("!", "which button"),
        ("as : hello", "as whom"),
        ("as Marta:", "what does Marta say"),
        ("as Marta: !", "which button"),
        (b"caf\xe9", "not UTF-8"),
        ("half \udcff", "not UTF-8"),
    ],
)
def test_a_line_that_cannot_be_read(line: str | bytes, why: str) -> None:
    """It is refused with its number and the reason."""
    with pytest.raises(BadLine, match=rf"line 3: .*{why}"):
        meant("# first", "flipped", line)


def test_time_goes_only_forward_within_a_script() -> None:
    """A local time before the moves so far is refused, though it lies after the start."""
    with pytest.raises(BadLine, match=r"line 2: .*already 2027-03-03T08:00"):
        meant("+2d", "@2027-03-02T08:00")


def test_a_while_is_true_time_over_the_change_of_the_clocks() -> None:
    """+12h over the spring change ends at 09:00 local, not 08:00 (Vienna: 2027-03-28, 02:00 to 03:00)."""
    _, evening, morning = 0, *meant("@2027-03-27T20:00", "+12h")
    assert morning.to.astimezone(VIENNA).isoformat() == "2027-03-28T09:00:00+02:00"
    assert timedelta(hours=12) == morning.to - evening.to


def test_an_hour_that_comes_twice_is_the_first_one_still_ahead() -> None:
    """02:30 on the day of the autumn change is the first one, from between the two the second (2027-10-31)."""
    first = datetime(2027, 10, 31, 0, 30, tzinfo=UTC)
    assert first == instant("2027-10-31T02:30", VIENNA)
    assert first + timedelta(hours=1) == instant("2027-10-31T02:30", VIENNA, first + timedelta(minutes=20))


async def test_a_message_is_received_at_the_time_of_the_clock(bot: Outbox) -> None:
    """Every message has its own key, and the time that the moves before it lead to."""
    await bot.plays("one", "+90m two", "as Marta: three")
    assert [START, START + timedelta(minutes=90), START + timedelta(minutes=90)] == [at for at, _ in bot.heard]
    messages = [message for _, message in bot.heard]
    assert [message.text for message in messages] == ["one", "two", "three"]
    assert len({message.key for message in messages}) == 3
    assert [(message.person, message.name) for message in messages] == [("you", ""), ("you", ""), ("Marta", "Marta")]
    assert {"you"} == {message.chat for message in messages}
    assert all(at == message.said_at for at, message in bot.heard)


async def test_two_runs_share_no_key(bot: Outbox, tmp_path: Path) -> None:
    """The same script on the same store is said again, not a repeated delivery of the first time."""
    other = Outbox(Stage(START, VIENNA, io.StringIO(), tmp_path))
    await bot.chat.play(["one"], bot.talk)
    await other.chat.play(["one"], other.talk)
    assert bot.heard[0][1].key != other.heard[0][1].key


async def test_a_move_delivers_in_order_what_falls_due_on_the_way(bot: Outbox) -> None:
    """Each reminder is sent at its own time, one that a reminder gives rise to as well, none from beyond."""
    for hours in (30, 5, 11):
        bot.waiting.append((START + timedelta(hours=hours), Reply(f"at {hours}", kind="reminder"), None))
    said = await bot.plays("+12h", "now")
    assert [one["text"] for one in said] == ["at 5", "at 11", "heard now"]
    expected = ["2027-03-01T13:00:00+01:00", "2027-03-01T19:00:00+01:00", "2027-03-01T20:00:00+01:00"]
    assert expected == [one["at"] for one in said]
    assert sorted(bot.told) == bot.told
    assert START + timedelta(hours=12) == bot.told[-1]


async def test_what_was_due_before_the_start_is_sent_at_the_start(bot: Outbox) -> None:
    """A script on a store that was left alone for a week begins with what was missed."""
    bot.waiting.append((START - timedelta(days=7), Reply("overdue", kind="reminder"), None))
    said = await bot.plays("hello")
    assert [(one["text"], one["at"]) for one in said][:1] == [("overdue", "2027-03-01T08:00:00+01:00")]


async def test_what_cannot_be_sent_does_not_hold_the_clock(bot: Outbox) -> None:
    """A round that sends nothing is not repeated for ever."""
    bot.waiting.append((START + timedelta(hours=1), Reply("stuck"), None))
    bot.deaf = True
    await bot.plays("+2h hello")
    assert START + timedelta(hours=2) == bot.heard[-1][0]


@pytest.mark.parametrize("label", ["In 30 min", "in 30 MIN", "in", "IN 30 min."])
async def test_a_label_presses_its_button(bot: Outbox, label: str) -> None:
    """Exactly, but for capitals, or by how it begins; the payload comes back with the message it was on."""
    await bot.plays("one", f"!{label}")
    pressed = bot.heard[-1][1]
    assert (pressed.text, pressed.pressed) == ("", "later")
    assert pressed.answers


async def test_the_latest_message_that_has_the_button_is_meant(bot: Outbox) -> None:
    """The same label on two messages is that of the later one; a label of an older one can still be pressed."""
    await bot.plays("one", "two", "!Done")
    assert bot.heard[-1][1].pressed == "done-two"
    bot.waiting.append((START, Reply("look", ((Button("Only here", "x"),),)), None))
    await bot.plays("+1m !skip", "as Marta: !only here")
    assert [message.pressed for _, message in bot.heard][-2:] == ["skip", "x"]
    assert bot.heard[-1][1].person == "Marta"


@pytest.mark.parametrize("label", ["Nope", "…"])
async def test_a_button_that_is_not_there_is_exit_2(bot: Outbox, label: str) -> None:
    """The error names the line and the labels that there are."""
    err = io.StringIO()
    assert await perform(bot.chat, ["one", "", f"!{label}"], bot.talk, err) == 2
    assert f"line 3: no single button is meant by «{label}»; there is [Done], [In 30 min], [Skip]\n" == err.getvalue()


async def test_a_beginning_of_two_labels_presses_neither(bot: Outbox) -> None:
    """What could mean two buttons of one message is not guessed."""
    bot.waiting.append((START, Reply("which?", ((Button("Foil", "f"), Button("Foil boat", "b")),)), None))
    err = io.StringIO()
    assert await perform(bot.chat, ["!fo"], bot.talk, err) == 2
    assert await perform(bot.chat, ["!foil"], bot.talk, err) == 0
    assert bot.heard[-1][1].pressed == "f"


async def test_a_mistake_in_a_file_is_found_before_anything_is_played(bot: Outbox) -> None:
    """Nothing was received when a later line cannot be read; standard input is played as it comes."""
    err = io.StringIO()
    assert await perform(bot.chat, ["one", "+x"], bot.talk, err) == 2
    assert bot.told == []
    assert (bot.heard, err.getvalue()[:27]) == ([], "line 2: +x is no clock move")
    assert await perform(bot.chat, iter(["one", "+x"]), bot.talk, err) == 2
    assert [message.text for _, message in bot.heard] == ["one"]


async def test_a_good_script_is_exit_0_and_says_nothing_on_stderr(bot: Outbox) -> None:
    """Nothing but the talk is printed."""
    err = io.StringIO()
    assert (await perform(bot.chat, [b"one\n", b"+1h\n"], bot.talk, err), err.getvalue()) == (0, "")


async def test_one_object_a_line(bot: Outbox) -> None:
    """`at, kind, to, text, buttons, picture, facts`, with an offset, and the facts as they are."""
    facts = {"cure_days_p90": 6.5, "sources": ["A", "B"], "step": None}
    bot.waiting.append((START, Reply("über\nzwei", ((Button("Done", "d"),),), facts=facts, kind="alert"), None))
    (one,) = await bot.plays("+0m")
    expected = {
        "at": "2027-03-01T08:00:00+01:00",
        "kind": "alert",
        "to": "you",
        "text": "über\nzwei",
        "buttons": ["Done"],
        "picture": None,
        "facts": facts,
    }
    assert expected == one
    assert "über" in bot.stage.out.getvalue()


async def test_to_is_who_is_named_or_answered(bot: Outbox) -> None:
    """An answer is to who spoke, a reminder to the chat, and a reply that names somebody to them."""
    bot.waiting.append((START, Reply("for Paul", to="Paul"), None))
    assert [one["to"] for one in await bot.plays("one", "as Marta: two")] == ["Paul", "you", "Marta"]


async def test_a_picture_is_saved_and_its_path_shown(bot: Outbox) -> None:
    """The path holds the very bytes; the same picture again is the same file, another one never overwrites it."""
    bot.pictured = True
    first, again = await bot.plays("one", "two")
    assert PICTURE.png == Path(first["picture"]).read_bytes()
    assert Path(first["picture"]).name == "2027-03-01-080000-cook.png"
    assert first["picture"] == again["picture"]
    await bot.chat.send(Outgoing("2", "you", START, Reply("x"), Picture(b"other", "", "../../cook.png")))
    other = json.loads(bot.stage.out.getvalue().splitlines()[-1])
    assert (b"other", bot.stage.pictures) == (Path(other["picture"]).read_bytes(), Path(other["picture"]).parent)


async def test_a_picture_that_cannot_be_saved_becomes_its_sentence(plain: Outbox) -> None:
    """A folder that cannot be made costs the picture, not the message."""
    plain.stage.pictures.write_text("a file where the folder should be")
    plain.pictured = True
    await plain.chat.play(["one"], plain.talk)
    assert "heard one\n[Done]\n[In 30 min] [Skip]\nA curve that rises.\n" in plain.stage.out.getvalue()


async def test_a_document_is_saved_under_its_own_ending(bot: Outbox) -> None:
    """The path is shown and holds the very bytes; a name that leads elsewhere stays in the folder."""
    for document in (RECORD, Document(b"a,b", "../../flat.csv", "")):
        await bot.chat.send(Outgoing("2", "you", START, Reply("x"), document=document))
    record, rows = (Path(json.loads(line)["document"]) for line in bot.stage.out.getvalue().splitlines())
    assert (record.name, record.read_bytes()) == ("2027-03-01-080000-record-flat.pdf", RECORD.content)
    assert (rows.parent, rows.suffix, rows.read_bytes()) == (bot.stage.pictures, ".csv", b"a,b")


async def test_a_document_that_cannot_be_saved_becomes_what_is_said_instead(plain: Outbox) -> None:
    """A folder that cannot be made costs the document, not the message."""
    plain.stage.pictures.write_text("a file where the folder should be")
    await plain.chat.send(Outgoing("2", "you", START, Reply("Keep it."), document=RECORD))
    assert "Keep it.\nAsk for a smaller one.\n" in plain.stage.out.getvalue()


async def test_plain_output_is_a_readable_talk(plain: Outbox) -> None:
    """The local time once a minute, what was said, the answer, its buttons row by row."""
    plain.waiting.append((START + timedelta(hours=1), Reply("Flip it.", kind="reminder"), None))
    await plain.chat.play(["one", "as Marta: !done", "+2h"], plain.talk)
    expected = """\
[Mon 2027-03-01 08:00]
> one
heard one
[Done]
[In 30 min] [Skip]

> Marta: [done]
heard pressed done-one
[Done]
[In 30 min] [Skip]

[Mon 2027-03-01 09:00]
Flip it.

"""
    assert expected == plain.stage.out.getvalue()


async def test_a_chat_can_be_played_on(bot: Outbox) -> None:
    """After a restart of the bot the clock and the buttons are where they were: a phone does not forget."""
    await bot.plays("+1d one")
    await bot.plays("!Done", "+1h")
    assert (START + timedelta(days=1), "done-one") == (bot.heard[-1][0], bot.heard[-1][1].pressed)
    assert START + timedelta(days=1, hours=1) == bot.chat.now
