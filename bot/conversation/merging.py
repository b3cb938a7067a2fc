"""Several things said in one message are done together, and answered in one."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.reply import Reply
from bot.wording import general

A_SENTENCE: Final = 40  # characters; a shorter line may well stand twice
LONGEST: Final = 900  # characters; what is longer, as a whole plan, stands alone


def together(replies: Sequence[Reply]) -> list[Reply]:
    """The replies with those that follow each other about one batch made one; a question stands last, with its taps."""
    out: list[Reply] = []
    for reply in sorted(replies, key=_asks):
        if out and (reply.text, reply.about) == (out[-1].text, out[-1].about):
            continue  # two deeds of one line wait for the same answer
        joined = _joined(out[-1], reply) if out else None
        if joined is None:
            out.append(reply)
        else:
            out[-1] = joined
    return out


def _asks(reply: Reply) -> bool:
    return reply.facts.get("answer_kind") == "asked_back"


def _joined(one: Reply, two: Reply) -> Reply | None:
    plain = one.kind == two.kind == "reply" and not _encloses(one) and not _encloses(two) and one.to == two.to
    length = len(one.text) + len(two.text)
    if not plain or length > LONGEST or (one.about != two.about and one.about and two.about):
        return None
    facts = {**one.facts, **two.facts, "intents": [*_intents(one), *_intents(two)]}
    first, _, last = one.text.rpartition("\n")
    asked_anew = bool(first) and two.text.endswith(last)  # the same question: once, at the end
    text = general.at_once((first if asked_anew else one.text, _news(two.text, one.text)))
    taps = (*one.buttons, *two.buttons) if _asks(one) and _asks(two) and not asked_anew else two.buttons
    return replace(two, text=text, buttons=taps, facts=facts, about=two.about or one.about)


def _news(text: str, before: str) -> str:
    """A text without the sentences that were said before it, as a verdict is; its last line, a question, stays."""
    said = {line for line in before.split("\n") if len(line) >= A_SENTENCE}
    *lines, last = text.split("\n")
    return "\n".join([*(line for line in lines if line not in said), last])


def _encloses(reply: Reply) -> bool:
    return reply.picture is not None or reply.document is not None


def _intents(reply: Reply) -> list[str]:
    return list(reply.facts.get("intents") or [reply.facts.get("intent", "")])
